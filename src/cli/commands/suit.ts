import { registry } from '../../../jigs/registry.ts';
import { chain } from '../../core/result.ts';
import { plain } from '../../core/units.ts';
import { suitDesign, type BladeSuit, type FamilySuit, type Suit } from '../../make/suit/suit.ts';
import { text } from '../../text/index.ts';
import { printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';
import { columns } from '../print.ts';

const words = text.virtual.suit;

const show = (value: number | null | undefined, digits = 2): string =>
  typeof value === 'number' ? plain(value, digits) : '';

/** A number as it is printed; the label of a choice as it is. */
const moved = (value: number | string): string =>
  typeof value === 'number' ? plain(value, 2) : value;

const printFamilies = (families: readonly FamilySuit[]): void => {
  const { family, verdict, line, standing, clearance, degrees, height } = words.columns;
  columns([
    [`  ${family}`, verdict, line, standing, clearance, degrees, height],
    ...families.map((one) => [
      `  ${one.label}`,
      words.verdicts[one.verdict],
      show(one.line),
      show(one.standing),
      show(one.clearance?.spare),
      show(one.sensitivity?.degrees, 3),
      show(one.sensitivity?.bevelHeight),
    ]),
  ]).forEach(printLine);
  for (const { label, cost, changed, tried, whyNot } of families) {
    printLine(`  ${label}`);
    if (cost !== '') printLine(`    ${cost}`);
    for (const { label: what, from, to } of changed)
      printLine(`    ${words.moved(what, moved(from), moved(to))}`);
    whyNot.forEach((reason) => printLine(`    - ${reason}`));
    if (tried.length > 0) printLine(`    ${words.tried(tried)}`);
  }
};

const printBlade = ({ families, byHand, sentence }: BladeSuit): void => {
  printLine(sentence);
  printFamilies(families);
  for (const { label, about, reasons } of byHand) {
    printLine(`  ${label}: ${about}`);
    if (reasons.length === 0) printLine(`    ${words.nothingAsks}`);
    reasons.forEach((reason) => printLine(`    - ${reason}`));
  }
};

const print = ({ blades, together, sentence }: Suit): void => {
  blades.forEach(printBlade);
  if (together.length > 0) {
    printLine(`${words.together}. ${sentence}`);
    printFamilies(together);
  }
  printLine(words.initial);
};

/** `suit FILE`: every family and work by hand for each blade. Ends with 0 or 2. */
export const suitFile = async (
  file: string,
  blade: string | undefined,
  json: boolean,
): Promise<ExitCode> => {
  const suit = chain(loadDesign(file), (design) => suitDesign(design, registry, blade));
  if (!suit.ok) {
    printIssues(suit.issues, json);
    return 2;
  }
  if (json) printJson(suit.value);
  else print(suit.value);
  return 0;
};
