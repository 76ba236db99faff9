import { registry } from '../../../jigs/registry.ts';
import { chain, ok, type Result } from '../../core/result.ts';
import { createWorkshop, type Workshop } from '../../check/workshop.ts';
import type { Design } from '../../document/schema.ts';
import { checkDesign } from '../../make/engine.ts';
import { numberRanges, parameterPaths, type NumberRange } from '../../make/free-range/numbers.ts';
import { verdictOf, type Verdict } from '../../make/report.ts';
import { printIssues, printJson, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';
import { printChecks } from '../print.ts';
import { printDials, printNumbers } from '../print-range.ts';

export interface CheckOptions {
  readonly json?: boolean;
  readonly range?: boolean;
  /** Paths of numbers, separated by commas. */
  readonly only?: string;
}

const numbersOf = (
  design: Design,
  { only }: CheckOptions,
  workshop: Workshop,
): Result<NumberRange[]> => {
  const paths = only?.split(',').map((path) => path.trim());
  return numberRanges(design, paths ?? parameterPaths(design, registry), registry, workshop);
};

const verdict = (file: string, options: CheckOptions): Result<Verdict> => {
  // One for all: a value that is tried then makes and asks anew only what it changes.
  const workshop = createWorkshop();
  return chain(loadDesign(file), (design) =>
    chain(checkDesign(design, registry, workshop), ({ fixture, checks }) => {
      const found = verdictOf(design, fixture, checks);
      if (options.range !== true || !found.passed) return ok(found);
      return chain(numbersOf(design, options, workshop), (numbers) => ok({ ...found, numbers }));
    }),
  );
};

/** `check FILE`: every check of a design with its numbers, and its free range where asked for. */
export const check = async (file: string, options: CheckOptions): Promise<ExitCode> => {
  const json = options.json === true;
  const checked = verdict(file, options);
  if (!checked.ok) {
    printIssues(checked.issues, json);
    return 2;
  }
  const { checks, dials, numbers, passed } = checked.value;
  if (json) printJson(checked.value);
  else {
    printIssues(checked.issues, false);
    printChecks(checks, true);
    if (options.range === true) printDials(dials);
    if (numbers) printNumbers(numbers, checks);
  }
  return passed ? 0 : 1;
};
