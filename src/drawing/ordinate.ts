import type { Vec2 } from '../geometry/vector.ts';
import type { Box } from './box.ts';
import { GAP } from './dimension.ts';
import { label, line, TEXT } from './items.ts';
import type { Item } from './sheet.ts';
import { spread } from './spread.ts';

/** One running dimension from the datum: its value and the features that lie on it. */
export interface Ordinate {
  readonly text: string;
  /** Position along the axis, paper mm from the view's origin. */
  readonly at: number;
  /** Where its features lie across the axis: the nearest and the furthest, paper mm. */
  readonly low: number;
  readonly high: number;
}

export type Side = 'bottom' | 'left' | 'top' | 'right';

/** Distance between neighbouring values: letter height and white space, mm. */
const PITCH = 5.2;
/** From the contour to the bends, and over the bends to the values, mm. */
const FIRST = 5;
const BEND = 5;
const LAST = 1;

/** Depth of a row of ordinates whose values are `width` wide, from the contour outwards. */
export const rowDepth = (isEmpty: boolean): number => (isEmpty ? 0 : FIRST + BEND + LAST + GAP);

/** Room for half a value beside the extension line of an overall dimension, mm. */
const BESIDE = TEXT.normal / 2 + 1;

const positions = (row: readonly Ordinate[], low: number): number[] =>
  spread(
    row.map((o) => o.at),
    PITCH,
    low,
  );

/** Whether a row can be spread between the extension lines at both ends of its side. */
export const fitsBetween = (row: readonly Ordinate[], low: number, high: number): boolean =>
  row.every((o) => o.at > low && o.at < high) &&
  (positions(row, low + BESIDE).at(-1) ?? low) <= high - BESIDE;

/**
 * A row of running (superimposed) dimensions along one side of a view: extension lines in order,
 * bent apart to the pitch of the values, which are written at their ends. Lines of a row never
 * cross, and the row keeps to the side's own strip, so rows of neighbouring sides never meet.
 */
export const ordinates = (row: readonly Ordinate[], side: Side, view: Box): Item[] => {
  const across = side === 'bottom' || side === 'top';
  const outwards = side === 'bottom' || side === 'left' ? -1 : 1;
  const edge = { bottom: view.y0, left: view.x0, top: view.y1, right: view.x1 }[side];
  const put = (along: number, away: number): Vec2 => (across ? [along, away] : [away, along]);
  const sorted = [...row].sort((a, b) => a.at - b.at);
  const start = across ? view.x0 : view.y0;
  const spots = positions(sorted, outwards < 0 ? start : start + BESIDE);
  return sorted.flatMap((ordinate, i): Item[] => {
    const spot = spots[i] ?? ordinate.at;
    const foot = (outwards < 0 ? ordinate.low : ordinate.high) + outwards * GAP;
    const bend = edge + outwards * FIRST;
    const straight = bend + outwards * BEND;
    const end = straight + outwards * LAST;
    const text = end + outwards * GAP;
    const mid = TEXT.normal / 2;
    return [
      line(put(ordinate.at, foot), put(ordinate.at, bend), 'dimension'),
      line(put(ordinate.at, bend), put(spot, straight), 'dimension'),
      line(put(spot, straight), put(spot, end), 'dimension'),
      label(put(across ? spot + mid : spot - mid, text), ordinate.text, {
        angle: across ? 90 : 0,
        align: outwards < 0 ? 'right' : 'left',
      }),
    ];
  });
};
