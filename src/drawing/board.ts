import { cos } from '../core/trigonometry.ts';
import { radians } from '../core/units.ts';
import { onCircle } from '../geometry/arc.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { crosses, grow, overlap, type Box } from './box.ts';
import { itemBox, textBox } from './items.ts';
import type { Item } from './sheet.ts';

type Stretch = readonly [Vec2, Vec2];

/** What is already drawn, as straight stretches and text boxes: the ground for placing more. */
export interface Board {
  readonly stretches: readonly Stretch[];
  readonly texts: readonly Box[];
  /** Boxes of filled shapes: arrowheads, dots, codes. */
  readonly arrows: readonly Box[];
}

/** Straight pieces of a full circle: fine enough for keeping text clear of it. */
const PIECES = 32;

const chain = (points: readonly Vec2[]): Stretch[] => {
  const out: Stretch[] = [];
  for (let i = 1; i < points.length; i += 1) out.push([points[i - 1] as Vec2, points[i] as Vec2]);
  return out;
};

const stretchesOf = (item: Item): Stretch[] => {
  switch (item.kind) {
    case 'line':
      return [[item.a, item.b]];
    case 'polyline':
      return chain(item.points);
    case 'fill':
      return item.tone === 'ink' ? chain([...item.points, item.points[0] ?? [0, 0]]) : [];
    case 'circle':
    case 'arc': {
      const from = item.kind === 'arc' ? item.from : 0;
      const to = item.kind === 'arc' ? item.to : 360;
      const sweep = to > from ? to - from : to - from + 360;
      const n = Math.max(2, Math.ceil((sweep / 360) * PIECES));
      // Just outside the curve, so that the straight pieces do not cut its corners.
      const radius = item.radius / cos(radians(sweep / n / 2));
      const points: Vec2[] = [];
      for (let i = 0; i <= n; i += 1)
        points.push(onCircle(item.centre, radius, from + (sweep * i) / n));
      return chain(points);
    }
    case 'text':
    case 'blocks':
      return [];
  }
};

export const boardOf = (items: readonly Item[]): Board => ({
  stretches: items.flatMap(stretchesOf),
  texts: items.flatMap((item) => (item.kind === 'text' ? [textBox(item)] : [])),
  arrows: items.flatMap((item) =>
    (item.kind === 'fill' && item.tone === 'ink') || item.kind === 'blocks' ? [itemBox(item)] : [],
  ),
});

export const onto = (board: Board, items: readonly Item[]): Board => {
  const more = boardOf(items);
  return {
    stretches: [...board.stretches, ...more.stretches],
    texts: [...board.texts, ...more.texts],
    arrows: [...board.arrows, ...more.arrows],
  };
};

/** White space kept around every text, mm. */
export const CLEAR = 0.6;

/** Whether a text may stand in the box. */
export const isFree = (board: Board, box: Box): boolean => {
  const wide = grow(box, CLEAR);
  for (const other of board.texts) if (overlap(wide, other)) return false;
  for (const stretch of board.stretches) if (crosses(wide, stretch[0], stretch[1])) return false;
  return true;
};

/** Whether a line may run from a to b: over other lines, but over no text. */
export const isOpen = (board: Board, a: Vec2, b: Vec2): boolean =>
  !board.texts.some((box) => crosses(grow(box, CLEAR), a, b));

/** Whether no other arrowhead or text is under an arrowhead; lines may be. */
const isOff = (board: Board, box: Box): boolean =>
  !board.texts.some((text) => overlap(text, box)) &&
  !board.arrows.some((other) => overlap(other, box));

/** Whether drawn items can join the board: text and arrows are free, lines run over no text. */
export const joins = (board: Board, items: readonly Item[]): boolean => {
  const own = boardOf(items.filter((item) => item.kind !== 'fill'));
  return (
    own.texts.every((box) => isFree(board, box)) &&
    own.stretches.every(([a, b]) => isOpen(board, a, b)) &&
    items.every((item) => item.kind !== 'fill' || isOff(board, itemBox(item)))
  );
};

/** On which side of the line from p to q a point lies, by the sign. */
const side = (p: Vec2, q: Vec2, r: Vec2): number =>
  (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);

const meet = ([a, b]: Stretch, c: Vec2, d: Vec2): boolean =>
  side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;

/** How many drawn lines a line from a to b would cross. */
export const crossed = (board: Board, a: Vec2, b: Vec2): number =>
  board.stretches.filter((stretch) => meet(stretch, a, b)).length;
