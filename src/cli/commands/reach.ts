import { registry } from '../../../jigs/registry.ts';
import { reachOf, type ReachTable } from '../../adapt/reach.ts';
import { reachSheet } from '../../adapt/reach-sheet.ts';
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

const show = (value: number): string => plain(value, 1);

const band = ([from, to]: Interval): string => words.reachBand(show(from), show(to));

const unique = (bands: readonly Interval[]): Interval[] => [
  ...new Map(bands.map((one) => [one[0], one])).values(),
];

const print = ({ family, limits, bands, scope, step }: ReachTable): void => {
  printLine(words.reachTitle(family));
  const heights = unique(bands.map(({ height }) => height)).sort((a, b) => a[0] - b[0]);
  const rows = unique(bands.map(({ thickness }) => thickness)).map((thickness) => [
    `  ${band(thickness)}`,
    ...heights.map((height) => {
      const found = bands.find(
        (one) => one.thickness[0] === thickness[0] && one.height[0] === height[0],
      );
      const angles = found?.angles;
      return angles ? words.reachAngles(show(angles[0]), show(angles[1])) : words.reachNone;
    }),
  ]);
  if (rows.length === 0) printLine(`  ${words.reachNothing}`);
  columns([[`  ${words.reachCorner}`, ...heights.map(band)], ...rows]).forEach(printLine);
  printLine(words.reachProof(show(step)));
  printLine(words.reachScope(scope));
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
