import { registry } from '../../../jigs/registry.ts';
import { problem } from '../../core/issue.ts';
import { number, type NumberParameter } from '../../core/parameter.ts';
import { chain, fail, ok, type Result } from '../../core/result.ts';
import { plain } from '../../core/units.ts';
import { solveDesign } from '../../make/engine.ts';
import type { Budget, OutputBudget } from '../../setup/budget/budget.ts';
import { text } from '../../text/index.ts';
import { issueOf, printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';
import { columns } from '../print.ts';

const words = text.setup.budgetCommand;

const parameters = {
  draws: number(words.draws, 'count', 100, 4000, 200_000, 1000),
  seed: number(words.seed, 'count', 1, 1, 2_147_483_646, 1),
} as const;

/** A whole number given by a flag, or its initial value. */
const read = (flag: string, parameter: NumberParameter, given?: string): Result<number> => {
  if (given === undefined) return ok(parameter.initial);
  const { notNumber, notWhole } = text.document.field;
  const value = given.trim() === '' ? NaN : Number(given);
  if (!Number.isFinite(value))
    return fail(issueOf('not-a-number', notNumber(parameter, given), flag));
  if (!Number.isInteger(value)) return fail(issueOf('not-whole', notWhole(parameter, value), flag));
  return value >= parameter.min && value <= parameter.max
    ? ok(value)
    : fail(issueOf('out-of-range', text.document.field.range(parameter, value), flag));
};

const draw = (
  file: string,
  draws?: string,
  seed?: string,
): Result<{ name: string; budget: Budget }> =>
  chain(read('--draws', parameters.draws, draws), (count) =>
    chain(read('--seed', parameters.seed, seed), (start) =>
      chain(loadDesign(file), (design) =>
        chain(solveDesign(design, registry), (fixture) =>
          fixture.budget
            ? chain(fixture.budget({ draws: count, seed: start }), (budget) =>
                ok({ name: design.name, budget }),
              )
            : fail(problem('no-budget', 'fixture.family', words.none(design.fixture.family))),
        ),
      ),
    ),
  );

const share = (value: number): string => `${plain(100 * value, 1)} %`;

const printOutput = (output: OutputBudget): void => {
  const { key, nominal, worst, rootSumSquare, uncertainty, simulated, dominant, effects } = output;
  const unit = words.outputs[key].unit;
  const show = (value: number): string => `${plain(value, 3)} ${unit}`;
  printLine(words.nominal(words.outputs[key].label, show(nominal)));
  printLine(words.worst(show(worst.low), show(worst.high)));
  printLine(words.spread(show(rootSumSquare), show(uncertainty)));
  printLine(words.simulated(show(simulated.low), show(simulated.high)));
  printLine(
    words.dominant(
      dominant.label,
      share(dominant.share),
      show(dominant.halved.uncertainty),
      show(dominant.halved.rootSumSquare),
    ),
  );
  columns(
    effects
      .filter(({ most }) => most > 0)
      .map(({ label, most, share: part, source }) => [
        `    ${label}`,
        words.effect(show(most)),
        share(part),
        source,
      ]),
  ).forEach(printLine);
};

/** Draws up the tolerance budget of a design and prints it. Ends with 0 or 2. */
export const budgetFile = (
  file: string,
  draws: string | undefined,
  seed: string | undefined,
  json: boolean,
): ExitCode => {
  const drawn = draw(file, draws, seed);
  if (!drawn.ok) {
    printIssues(drawn.issues, json);
    return 2;
  }
  const { name, budget } = drawn.value;
  if (json)
    printJson({ format: 'platenwright-budget', design: name, ...budget, issues: drawn.issues });
  else {
    printIssues(drawn.issues, false);
    budget.outputs.forEach(printOutput);
    printLine(words.assumed);
  }
  return 0;
};
