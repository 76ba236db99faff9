import type { CheckResult } from '../check/result.ts';
import { plain } from '../core/units.ts';
import type { DialRange } from '../make/free-range/dials.ts';
import type { NumberRange } from '../make/free-range/numbers.ts';
import type { RangeEnd } from '../make/free-range/search.ts';
import { text } from '../text/index.ts';
import { printLine } from './answer.ts';

const words = text.make.range;

const show = (value: number): string => plain(value, 3);

/** What checks are called, by their ids; a reason for a refusal stays as it is. */
type Called = (id: string) => string;

/** Why an end is where it is. */
const why = ({ stop, bad, fails }: RangeEnd, called: Called): string =>
  stop === 'limit' || stop === 'far'
    ? words.stop[stop]
    : words.stop[stop](show(bad ?? NaN), fails.map(called));

/** The certified shifts of the readings, one a line. */
export const printDials = (dials: readonly DialRange[]): void => {
  printLine(words.dialsTitle);
  for (const { label, free, check } of dials)
    printLine(`  ${words.dial(label, free === null ? null : show(free), check)}`);
};

/** The free ranges of numbers with how they were found; `checks` are those of the design as it is. */
export const printNumbers = (
  numbers: readonly NumberRange[],
  checks: readonly CheckResult[],
): void => {
  const labels = new Map(checks.map(({ id, label }) => [id, label]));
  const end = (found: RangeEnd): string =>
    words.end(
      show(found.good),
      why(found, (id) => labels.get(id) ?? id),
    );
  printLine(words.numbersTitle);
  for (const { label, value, unit, down, up, tolerance } of numbers) {
    printLine(`  ${words.number(label, show(value), unit, end(down), end(up))}`);
    printLine(`        ${words.basis(show(tolerance), down.tried + up.tried)}`);
  }
};
