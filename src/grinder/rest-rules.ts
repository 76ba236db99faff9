import { problem, type Issue } from '../core/issue.ts';
import { gridDown, gridUp, plain } from '../core/units.ts';
import { text } from '../text/index.ts';
import type { Rest } from './schema.ts';

type Table = Extract<Rest, { kind: 'table' }>;
type Slot = Extract<Rest, { kind: 'arm' }>['slots'][number];
interface Range {
  readonly from: number;
  readonly to: number;
}

const words = text.grinder.rules;

const said = ({ from, to }: Range): string => `${plain(from, 3)} to ${plain(to, 3)} mm`;

const inside = (value: number, half: number, { from, to }: Range): boolean =>
  value - half >= from && value + half <= to;

/** The first of some values that lies outside its range, with the nearest that does not. */
const brought = (
  values: readonly (readonly [path: string, value: number, half: number, range: Range])[],
): Pick<Issue, 'mend'> => {
  for (const [path, value, half, { from, to }] of values) {
    const [low, high] = [gridUp(from + half), gridDown(to - half)];
    if (low <= high && (value < low || value > high))
      return { mend: { path, value: Math.min(high, Math.max(low, value)) } };
  }
  return {};
};

/** Issues of slots that run within `along` and lie side by side within `across`. */
const slotIssues = (slots: readonly Slot[], along: Range, across: Range, at: string): Issue[] =>
  slots.flatMap((slot, i) => {
    const path = `${at}.${i}`;
    if (slot.to <= slot.from)
      return [problem('slot-ends', `${path}.to`, words.slotEnds(slot.from, slot.to))];
    const half = slot.width / 2;
    // Slots may run out of the front or back edge of a rest, but not past its sides.
    const fits =
      inside(slot.at, half, across) && inside(slot.from, 0, along) && inside(slot.to, 0, along);
    const place = `${slot.at} mm, from ${slot.from} to ${slot.to} mm`;
    const range = `${said(across)}, ${said(along)}`;
    if (fits) return [];
    return [
      {
        ...problem('off-rest', path, words.offRest(words.slotName, place, range)),
        ...brought([
          [`${path}.at`, slot.at, half, across],
          [`${path}.from`, slot.from, 0, along],
          [`${path}.to`, slot.to, 0, along],
        ]),
      },
    ];
  });

const patternIssues = ({ pattern, width, depth, gap }: Table, at: string): Issue[] => {
  const x: Range = { from: -width / 2, to: width / 2 };
  const y: Range = { from: gap, to: gap + depth };
  if (pattern.kind === 'edges') return [];
  if (pattern.kind === 'slots')
    return pattern.axis === 'y'
      ? slotIssues(pattern.slots, y, x, `${at}.slots`)
      : slotIssues(pattern.slots, x, y, `${at}.slots`);
  const half = pattern.hole.kind === 'plain' ? pattern.hole.diameter / 2 : 0;
  return pattern.at.flatMap(([hx, hy], i) => {
    if (inside(hx, half, x) && inside(hy, half, y)) return [];
    const path = `${at}.at.${i}`;
    const why = words.offRest(words.holeName, `(${hx}, ${hy}) mm`, `x ${said(x)}, y ${said(y)}`);
    const mend = brought([
      [`${path}.0`, hx, half, x],
      [`${path}.1`, hy, half, y],
    ]);
    return [{ ...problem('off-rest', path, why), ...mend }];
  });
};

/** What holds the fields of a rest together, given every distance platen face to abrasive, mm. */
export const restIssues = (rest: Rest, stacks: readonly number[], at: string): Issue[] => {
  if (rest.kind === 'arm')
    return slotIssues(
      rest.slots,
      { from: -rest.reach, to: rest.reach },
      { from: -rest.width / 2, to: rest.width / 2 },
      `${at}.slots`,
    );
  const [least, most] = [Math.min(...stacks), Math.max(...stacks)];
  const room = rest.gap + rest.travelY;
  const gap =
    room <= least
      ? [problem('gap-too-small', `${at}.gap`, words.gapTooSmall(rest.gap, least))]
      : room <= most
        ? [problem('gap-for-some', `${at}.gap`, words.gapForSome(rest.gap, most), 'warning')]
        : [];
  return [...gap, ...patternIssues(rest, `${at}.pattern`)];
};
