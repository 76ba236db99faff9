import { onCircle } from '../geometry/arc.ts';
import { scale2, type Vec2 } from '../geometry/vector.ts';
import { boardOf, crossed, isFree, joins, onto, type Board } from './board.ts';
import type { Box } from './box.ts';
import { arrow, leader, linear } from './dimension.ts';
import { hatch, hatchings, type Hatching } from './hatch.ts';
import { bounds, fill, label, line, polyline, TEXT } from './items.ts';
import type { Item, Stroke } from './sheet.ts';

/** A line or region of a section, mm in its own plane (for the belt: y right, z up). */
export interface SectionShape {
  readonly points: readonly Vec2[];
  readonly isClosed: boolean;
  readonly stroke: Stroke;
  /** How a closed region is filled; neighbours are hatched differently. */
  readonly fill: 'none' | 'tint' | 'hatch';
}

/** What is measured in a section: texts are written as they are given. */
export type SectionDimension =
  | {
      readonly kind: 'linear';
      readonly axis: 'x' | 'y';
      readonly a: Vec2;
      readonly b: Vec2;
      readonly side: 'bottom' | 'top' | 'left' | 'right';
      readonly text: string;
    }
  | {
      readonly kind: 'angle';
      readonly vertex: Vec2;
      /** Directions of the legs, degrees, anticlockwise from `from` to `to`. */
      readonly from: number;
      readonly to: number;
      /** Distance of the arc from the vertex, mm in the section. */
      readonly radius: number;
      readonly text: string;
    }
  | { readonly kind: 'note'; readonly at: Vec2; readonly text: string };

/** A section to be drawn: later shapes cover earlier ones where they are filled. */
export interface Section {
  readonly title: string;
  readonly shapes: readonly SectionShape[];
  readonly dimensions: readonly SectionDimension[];
}

const shapeItems = (
  { points, isClosed, stroke, fill: tone }: SectionShape,
  hatching: Hatching | undefined,
  k: number,
): Item[] => {
  const ring = points.map((p) => scale2(p, k));
  const outline = polyline(isClosed ? [...ring, ring[0] ?? [0, 0]] : ring, stroke);
  if (!isClosed || tone === 'none') return [outline];
  if (tone === 'tint') return [fill(ring, 'tint'), outline];
  return [fill(ring, 'paper'), ...hatch([ring], hatching), outline];
};

const shapesItems = (shapes: readonly SectionShape[], k: number): Item[] => {
  const hatched = shapes.filter((shape) => shape.isClosed && shape.fill === 'hatch');
  const chosen = hatchings(hatched.map(({ points }) => [points]));
  return shapes.flatMap((shape) => shapeItems(shape, chosen[hatched.indexOf(shape)], k));
};

/** Rows of linear dimensions stand this far apart, mm. */
const ROW = 9;

const linearAt = (
  d: Extract<SectionDimension, { kind: 'linear' }>,
  k: number,
  box: Box,
  row: number,
  beyond: 'low' | 'high',
): Item[] => {
  const away = ROW * (row + 1);
  const at = {
    bottom: box.y0 - away,
    top: box.y1 + away,
    left: box.x0 - away,
    right: box.x1 + away,
  }[d.side];
  return linear({ axis: d.axis, a: scale2(d.a, k), b: scale2(d.b, k), at, text: d.text, beyond });
};

/** Rows of dimensions beside a section in which a place is looked for. */
const ROWS = 8;

/**
 * All linear dimensions, small ones nearest to the section, each in the first row where it joins;
 * values without room stand beyond whichever end lets all of them join.
 */
const linearItems = (
  list: readonly Extract<SectionDimension, { kind: 'linear' }>[],
  k: number,
  box: Box,
  ground: Board,
): Item[] => {
  const attempt = (
    first: 'low' | 'high',
    second: 'low' | 'high',
  ): { items: Item[]; lost: number } => {
    const items: Item[] = [];
    let board = ground;
    let lost = 0;
    for (const d of list) {
      let row: Item[] = [];
      const isJoined = Array.from({ length: ROWS }).some((_, n) =>
        [first, second].some((end) => {
          row = linearAt(d, k, box, n, end);
          return joins(board, row);
        }),
      );
      if (!isJoined) lost++;
      items.push(...row);
      board = onto(board, row);
    }
    return { items, lost };
  };
  const one = attempt('high', 'low');
  const other = one.lost > 0 ? attempt('low', 'high') : one;
  return other.lost < one.lost ? other.items : one.items;
};

/** An angle by an arc between its legs, arrows from outside where the arc is short. */
const angleItems = (
  { vertex, from, to, radius, text }: Extract<SectionDimension, { kind: 'angle' }>,
  k: number,
  board: Board,
): Item[] => {
  const centre = scale2(vertex, k);
  const r = radius * k;
  const span = ((to - from + 540) % 360) - 180;
  const degreesOf = (length: number): number => (length / r) * (180 / Math.PI);
  const isShort = (Math.abs(span) * Math.PI * r) / 180 < 9;
  const spare = isShort ? degreesOf(7) : 0;
  const [start, end] = span >= 0 ? [from, from + span] : [from + span, from];
  const leg = (angle: number): Item => line(centre, onCircle(centre, r + 2, angle), 'dimension');
  const tip = (angle: number, way: number): Item =>
    arrow(onCircle(centre, r, angle), angle + way * 90);
  const drawn: Item[] = [
    leg(start),
    leg(end),
    { kind: 'arc', centre, radius: r, from: start - spare, to: end + spare, stroke: 'dimension' },
    tip(start, isShort ? -1 : 1),
    tip(end, isShort ? 1 : -1),
  ];
  const full = onto(board, drawn);
  for (const reach of [4, 6, 9, 12, 16, 21, 27, 34])
    for (const angle of [(start + end) / 2, end + spare, start - spare]) {
      const middle = onCircle(centre, r + reach, angle);
      const name = label([middle[0], middle[1] - 1.75], text, { align: 'centre' });
      if (isFree(full, bounds([name]))) return [...drawn, name];
    }
  return [
    ...drawn,
    ...noteItems({ kind: 'note', at: onCircle(vertex, radius, (start + end) / 2), text }, k, full),
  ];
};

/** A remark with a leader, where there is white space nearby. */
const noteItems = (
  { at, text }: Extract<SectionDimension, { kind: 'note' }>,
  k: number,
  board: Board,
  height: number = TEXT.normal,
): Item[] => {
  const tip = scale2(at, k);
  let best: { cost: number; items: Item[] } | undefined;
  for (const reach of [8, 12, 17, 23, 30, 40, 52, 66, 82, 100, 120])
    for (let angle = 15; angle < 360; angle += 15) {
      if (best && best.cost <= reach) break;
      if (angle % 180 === 0) continue;
      const bend = onCircle(tip, reach, angle);
      const items = leader(tip, bend, text, height);
      if (!joins(board, items)) continue;
      const landing = items[2];
      const lines =
        crossed(board, tip, bend) +
        (landing?.kind === 'line' ? crossed(board, landing.a, landing.b) : 0);
      const cost = reach + 3 * lines;
      if (!best || cost < best.cost) best = { cost, items };
    }
  return best?.items ?? [];
};

/**
 * The section `k` times as large with its dimensions, none of whose texts touches anything; its
 * remarks in letters of the given height.
 */
export const sectionItems = (
  { shapes, dimensions }: Section,
  k: number,
  height: number = TEXT.normal,
): Item[] => {
  const items = shapesItems(shapes, k);
  const box = bounds(items);
  const size = (d: Extract<SectionDimension, { kind: 'linear' }>): number =>
    d.axis === 'x' ? Math.abs(d.a[0] - d.b[0]) : Math.abs(d.a[1] - d.b[1]);
  let board = boardOf(items);
  const add = (more: readonly Item[]): void => {
    items.push(...more);
    board = onto(board, more);
  };
  const linears = dimensions.filter((d) => d.kind === 'linear').sort((a, b) => size(a) - size(b));
  add(linearItems(linears, k, box, board));
  for (const d of dimensions) if (d.kind === 'angle') add(angleItems(d, k, board));
  for (const d of dimensions) if (d.kind === 'note') add(noteItems(d, k, board, height));
  return items;
};
