import { plain } from '../core/units.ts';
import { balloons } from './balloons.ts';
import { boardOf, CLEAR, isFree } from './board.ts';
import type { Body } from './bodies.ts';
import { heightOf, union, widthOf, type Box } from './box.ts';
import { withCuts } from './cut-marks.ts';
import type { Cut } from './cut-view.ts';
import { linear, type Linear } from './dimension.ts';
import { ABOVE_SIDE, SIDE } from './eye.ts';
import { bounds, move } from './items.ts';
import { columnOf, drawnOnce, extentOf, type Drawn } from './pages.ts';
import type { Row } from './parts-list.ts';
import { atScale, pictureOf } from './pictures.ts';
import type { Item } from './sheet.ts';

/** Distance of an overall dimension from the picture, mm, and of one beyond the balloons from these. */
const AWAY = 9;
const BEYOND = 2;
/** Air between two views, mm. */
const BETWEEN = 8;

/** What a box is of the real thing across, as an auxiliary dimension below it. */
const overallAcross = (box: Box, k: number): Item[] =>
  linear({
    axis: 'x',
    ...{ a: [box.x0, box.y0], b: [box.x1, box.y0], at: box.y0 - AWAY },
    text: `(${plain(widthOf(box) / k, 1)})`,
  });

/** The same upwards, left of it. */
const overallUp = (box: Box, k: number, place: Pick<Partial<Linear>, 'aside' | 'at'> = {}) =>
  linear({
    axis: 'y',
    ...{ a: [box.x0, box.y0], b: [box.x0, box.y1], at: box.x0 - AWAY },
    text: `(${plain(heightOf(box) / k, 1)})`,
    ...place,
  });

/** A level line left of a picture, broken where it would run through a balloon. */
const broken = (item: Item, others: readonly Item[]): Item[] => {
  if (item.kind !== 'line' || item.a[1] !== item.b[1]) return [item];
  const [{ a, b }, level] = [item, item.a[1]];
  for (const other of others) {
    if (other.kind !== 'circle') continue;
    const [x, y] = other.centre;
    const half = other.radius + CLEAR;
    if (x > a[0] || x < b[0] || Math.abs(y - level) > half) continue;
    return [
      { ...item, b: [x + half, level] },
      { ...item, a: [x - half, level] },
    ];
  }
  return [item];
};

/**
 * The upright overall dimension, its value moved along to where no balloon's leader runs; beyond the
 * balloons if they leave no room between, its extension lines broken where they meet one.
 */
const overallUpBeside = (box: Box, k: number, others: readonly Item[]): Item[] => {
  const board = boardOf(others);
  const isClear = (items: readonly Item[]): boolean =>
    items.every((item) => item.kind !== 'text' || isFree(board, bounds([item])));
  const near = [0, 0.12, -0.12, 0.24, -0.24, 0.34, -0.34].map((share) =>
    overallUp(box, k, { aside: share * heightOf(box) }),
  );
  const beyond = overallUp(box, k, { at: bounds(others).x0 - BEYOND });
  return near.find(isClear) ?? beyond.flatMap((item) => broken(item, others));
};

/**
 * Side view and, below it in first-angle projection, the view from above, with their overall
 * dimensions; drawn at any scale.
 */
export const elevations = (
  bodies: readonly Body[],
  rows: readonly Row[],
  cuts: readonly Cut[],
): Drawn => {
  // Bought parts are small and many: their numbers are in the exploded view.
  const made = rows.filter((row) => row.part.kind !== 'hardware');
  const pictures = [SIDE, ABOVE_SIDE].map((eye) => pictureOf(bodies, eye, made));
  const draw = (k: number): Item[] => {
    const [side = [], above = []] = pictures.map((picture, i) => {
      const { items, box, pointers } = atScale(picture, k);
      const across = i === 0 ? overallAcross(box, k) : [];
      const up = overallUp(box, k);
      const around = union(box, bounds(up));
      const drawn = [...items, ...up.filter((item) => item.kind !== 'text')];
      const { marks, numbers } = withCuts(i === 0 ? [] : cuts, box, k, drawn, (wide) =>
        balloons(pointers, union(around, wide)),
      );
      const others = [...marks, ...numbers];
      return [...items, ...across, ...overallUpBeside(box, k, others), ...others];
    });
    return [...side, ...move(above, [0, bounds(side).y0 - bounds(above).y1 - BETWEEN])];
  };
  const bare = columnOf(pictures.map(({ box }) => extentOf(box)));
  return drawnOnce(draw, bare);
};
