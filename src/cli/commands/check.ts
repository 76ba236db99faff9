import { registry } from '../../../jigs/registry.ts';
import { ok, chain } from '../../core/result.ts';
import { checkDesign } from '../../make/engine.ts';
import { verdictOf } from '../../make/report.ts';
import { printIssues, printJson, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';
import { printChecks } from '../print.ts';

/** `check FILE`: every check of a design with its numbers. */
export const check = async (file: string, json: boolean): Promise<ExitCode> => {
  const checked = chain(loadDesign(file), (design) =>
    chain(checkDesign(design, registry), ({ checks }) => ok(verdictOf(design, checks))),
  );
  if (!checked.ok) {
    printIssues(checked.issues, json);
    return 2;
  }
  if (json) printJson(checked.value);
  else {
    printIssues(checked.issues, false);
    printChecks(checked.value.checks, true);
  }
  return checked.value.passed ? 0 : 1;
};
