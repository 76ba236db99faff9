import { cos, sin } from '../core/trigonometry.ts';
import { radians } from '../core/units.ts';
import { onCircle } from '../geometry/arc.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { add2, scale2 } from '../geometry/vector.ts';
import { around, grow, NOTHING, scaledBox, shifted, union, type Box } from './box.ts';
import type { Item, Stroke } from './sheet.ts';
import { textWidth } from './text-width.ts';

/** Letter heights of ISO 3098-1 in use, mm: the least, the usual, headings, titles. */
export const TEXT = { small: 2.5, normal: 3.5, heading: 5, title: 7 } as const;

type Of<Kind extends Item['kind']> = Extract<Item, { readonly kind: Kind }>;
export type TextItem = Of<'text'>;

export const line = (a: Vec2, b: Vec2, stroke: Stroke): Item => ({ kind: 'line', a, b, stroke });

export const polyline = (points: readonly Vec2[], stroke: Stroke): Item => ({
  kind: 'polyline',
  points,
  stroke,
});

export const circleItem = (centre: Vec2, radius: number, stroke: Stroke): Item => ({
  kind: 'circle',
  centre,
  radius,
  stroke,
});

export const fill = (points: readonly Vec2[], tone: Of<'fill'>['tone']): Item => ({
  kind: 'fill',
  points,
  tone,
});

const corners = (box: Box): Vec2[] => [
  [box.x0, box.y0],
  [box.x1, box.y0],
  [box.x1, box.y1],
  [box.x0, box.y1],
];

export const frameItem = (box: Box, stroke: Stroke): Item =>
  polyline([...corners(box), [box.x0, box.y0]], stroke);

export const fillBox = (box: Box, tone: Of<'fill'>['tone']): Item => fill(corners(box), tone);

export type Lettering = Partial<Pick<TextItem, 'height' | 'align' | 'angle' | 'bold'>>;

/** One line of text; `at` is on its base line. */
export const label = (at: Vec2, text: string, lettering: Lettering = {}): TextItem => ({
  kind: 'text',
  at,
  text,
  height: TEXT.normal,
  align: 'left',
  angle: 0,
  bold: false,
  ...lettering,
});

/** Characters that reach below the base line in DejaVu Sans. */
const DESCENDERS = /[gjpqy,;()[\]{}|/\\@_µQφβμ]/;

export const hasDescender = (text: string): boolean => DESCENDERS.test(text);

/** The corners of the rectangle that the ink of a text can touch, at any angle. */
export const textCorners = (item: TextItem): Vec2[] => {
  const width = textWidth(item.text, item.height, item.bold);
  const left = item.align === 'left' ? 0 : item.align === 'right' ? -width : -width / 2;
  const low = hasDescender(item.text) ? -0.33 * item.height : -0.03 * item.height;
  const high = 1.05 * item.height;
  const c = cos(radians(item.angle));
  const s = sin(radians(item.angle));
  const out = corners({ x0: left, y0: low, x1: left + width, y1: high });
  for (let i = 0; i < out.length; i += 1) {
    const [x, y] = out[i] as Vec2;
    out[i] = add2(item.at, [x * c - y * s, x * s + y * c]);
  }
  return out;
};

/** The axis-parallel box of a text. */
export const textBox = (item: TextItem): Box => around(textCorners(item));

/** An angle from 0 up to 360 degrees. */
const turned = (angle: number): number => ((angle % 360) + 360) % 360;

/** The box of everything an item can mark, line widths apart. */
export const itemBox = (item: Item): Box => {
  switch (item.kind) {
    case 'line':
      return around([item.a, item.b]);
    case 'polyline':
    case 'fill':
      return around(item.points);
    case 'circle': {
      const [x, y] = item.centre;
      return grow({ x0: x, y0: y, x1: x, y1: y }, item.radius);
    }
    case 'arc': {
      // Both ends, and the farthest points of the circle that lie between them.
      const sweep = turned(item.to - item.from);
      const { centre, radius, from, to } = item;
      const places = [onCircle(centre, radius, from), onCircle(centre, radius, to)];
      for (let at = 0; at < 360; at += 90)
        if (turned(at - from) < sweep) places.push(onCircle(centre, radius, at));
      return around(places);
    }
    case 'text':
      return textBox(item);
    case 'blocks':
      return item.boxes.reduce(union, NOTHING);
  }
};

export const bounds = (items: readonly Item[]): Box => {
  let box = NOTHING;
  for (const item of items) box = union(box, itemBox(item));
  return box;
};

const movedPoints = (points: readonly Vec2[], by: Vec2): Vec2[] => {
  const out: Vec2[] = [];
  for (const p of points) out.push(add2(p, by));
  return out;
};

const moved = (item: Item, by: Vec2): Item => {
  switch (item.kind) {
    case 'line':
      return { ...item, a: add2(item.a, by), b: add2(item.b, by) };
    case 'polyline':
    case 'fill':
      return { ...item, points: movedPoints(item.points, by) };
    case 'circle':
    case 'arc':
      return { ...item, centre: add2(item.centre, by) };
    case 'text':
      return { ...item, at: add2(item.at, by) };
    case 'blocks':
      return { ...item, boxes: item.boxes.map((box) => shifted(box, by)) };
  }
};

/** The items shifted on the paper. */
export const move = (items: readonly Item[], by: Vec2): Item[] => {
  const out: Item[] = [];
  for (const item of items) out.push(moved(item, by));
  return out;
};

const scaledPoints = (points: readonly Vec2[], k: number): Vec2[] => {
  const out: Vec2[] = [];
  for (const p of points) out.push(scale2(p, k));
  return out;
};

const scaledItem = (item: Item, k: number): Item => {
  switch (item.kind) {
    case 'line':
      return { ...item, a: scale2(item.a, k), b: scale2(item.b, k) };
    case 'polyline':
    case 'fill':
      return { ...item, points: scaledPoints(item.points, k) };
    case 'circle':
    case 'arc':
      return { ...item, centre: scale2(item.centre, k), radius: item.radius * k };
    case 'text':
      return { ...item, at: scale2(item.at, k) };
    case 'blocks':
      return { ...item, boxes: item.boxes.map((box) => scaledBox(box, k)) };
  }
};

/** Lines and shapes `k` times as large from the origin; text keeps its height. */
export const scaled = (items: readonly Item[], k: number): Item[] => {
  const out: Item[] = [];
  for (const item of items) out.push(scaledItem(item, k));
  return out;
};
