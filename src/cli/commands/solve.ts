import { registry } from '../../../jigs/registry.ts';
import { ok, chain } from '../../core/result.ts';
import { usesInches } from '../../document/uses-inches.ts';
import { solveDesign } from '../../make/engine.ts';
import { solutionOf } from '../../make/report.ts';
import { printIssues, printJson, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';
import { printSettings } from '../print.ts';

/** `solve FILE`: the numbers of a design. */
export const solve = async (file: string, json: boolean): Promise<ExitCode> => {
  const solved = chain(loadDesign(file), (design) =>
    chain(solveDesign(design, registry), (fixture) =>
      ok({ solution: solutionOf(design, fixture), inches: usesInches(design) }),
    ),
  );
  if (!solved.ok) {
    printIssues(solved.issues, json);
    return 2;
  }
  const { solution, inches } = solved.value;
  if (json) printJson(solution);
  else {
    printIssues(solved.issues, false);
    printSettings(solution.settings, inches);
  }
  return 0;
};
