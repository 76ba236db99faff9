import { registry } from '../../../jigs/registry.ts';
import { reachOf, type ReachTable } from '../../adapt/reach.ts';
import { reachSheet } from '../../adapt/reach-sheet.ts';
import { axisTitle, bandWord, cellOf, notesOf } from '../../adapt/reach-words.ts';
import { chain } from '../../core/result.ts';
import { plain } from '../../core/units.ts';
import { svg } from '../../export/svg.ts';
import type { Interval } from '../../geometry/interval.ts';
import { text } from '../../text/index.ts';
import { printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';
import { columns } from '../print.ts';
import { writeNew } from '../write-file.ts';

const words = text.adapt;

const unique = (bands: readonly Interval[]): Interval[] => [
  ...new Map(bands.map((one) => [one[0], one])).values(),
];

const print = (table: ReachTable): void => {
  const { family, limits, axes, bands } = table;
  printLine(words.reachTitle(family));
  const across = unique(bands.map((band) => band.across)).sort((a, b) => a[0] - b[0]);
  const rows = unique(bands.map(({ up }) => up)).map((up) => [
    `  ${bandWord(up)}`,
    ...across.map((column) => {
      const found = bands.find((one) => one.up[0] === up[0] && one.across[0] === column[0]);
      return found ? cellOf(found) : words.reachNone;
    }),
  ]);
  if (rows.length === 0) printLine(`  ${words.reachNothing}`);
  const corner = words.reachCorner(axisTitle(axes.up), axisTitle(axes.across));
  columns([[`  ${corner}`, ...across.map(bandWord)], ...rows]).forEach(printLine);
  notesOf(table).forEach(printLine);
  printLine(words.reachLimits);
  for (const { label, unit, atLeast, atMost } of limits) {
    const limit = (value: number | undefined, say: (value: string) => string): string =>
      value === undefined ? '' : say(`${plain(value, 3)} ${unit}`);
    printLine(
      `  ${words.reachLimit(label, limit(atLeast, words.reachAtLeast), limit(atMost, words.reachAtMost))}`,
    );
  }
};

/** `reach FILE`: what the fixture, as it is built, can grind; with `picture` also as a drawing. */
export const reach = async (
  file: string,
  picture: string | undefined,
  json: boolean,
): Promise<ExitCode> => {
  const found = chain(loadDesign(file), (design) => reachOf(design, registry));
  if (!found.ok) {
    printIssues(found.issues, json);
    return 2;
  }
  const refused =
    picture === undefined ? undefined : writeNew(picture, svg(reachSheet(found.value)), '--svg');
  if (refused) {
    printIssues([refused], json);
    return 2;
  }
  if (json) printJson(found.value);
  else print(found.value);
  if (!json && picture !== undefined) printLine(words.reachDrawn(picture));
  return 0;
};
