import { onCircle } from '../geometry/arc.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { Item, Stroke } from '../drawing/sheet.ts';

type Stroked = Extract<Item, { stroke: Stroke }>;
type Of<K extends Item['kind']> = Extract<Item, { kind: K }>;

/** Consecutive lines of one kind, drawn as one path, or a single fill, code or text. */
export type Run =
  | { readonly kind: 'strokes'; readonly stroke: Stroke; readonly items: readonly Stroked[] }
  | Of<'fill'>
  | Of<'blocks'>
  | Of<'text'>;

/** The items of a sheet in their order: what is later lies above what is earlier. */
export const runsOf = (items: readonly Item[]): Run[] => {
  const runs: (
    Exclude<Run, { kind: 'strokes' }> | { kind: 'strokes'; stroke: Stroke; items: Stroked[] }
  )[] = [];
  for (const item of items) {
    const last = runs.at(-1);
    if (item.kind === 'fill' || item.kind === 'blocks' || item.kind === 'text') runs.push(item);
    else if (last?.kind === 'strokes' && last.stroke === item.stroke) last.items.push(item);
    else runs.push({ kind: 'strokes', stroke: item.stroke, items: [item] });
  }
  return runs;
};

/**
 * What draws lines in a format, into what it is given. Points are paper mm, y up; angles degrees,
 * anticlockwise. One pen draws all: the engine forgets what it made of a function as soon as that
 * is gone, and a pen for each line was optimised anew with every package.
 */
export interface Pen<Into> {
  readonly move: (into: Into, to: Vec2) => void;
  readonly line: (into: Into, to: Vec2) => void;
  /** From where the pen stands, anticlockwise about the centre through `sweep` of at most 360. */
  readonly arc: (into: Into, centre: Vec2, radius: number, from: number, sweep: number) => void;
}

/** Draws the straight stretches between points. */
export const traceLine = <Into>(points: readonly Vec2[], pen: Pen<Into>, into: Into): void => {
  for (let i = 0; i < points.length; i += 1)
    if (i === 0) pen.move(into, points[i] as Vec2);
    else pen.line(into, points[i] as Vec2);
};

/** Draws one item with a pen. */
export const trace = <Into>(item: Stroked, pen: Pen<Into>, into: Into): void => {
  switch (item.kind) {
    case 'line':
      pen.move(into, item.a);
      pen.line(into, item.b);
      return;
    case 'polyline':
      traceLine(item.points, pen, into);
      return;
    case 'circle':
      pen.move(into, onCircle(item.centre, item.radius, 0));
      pen.arc(into, item.centre, item.radius, 0, 360);
      return;
    case 'arc': {
      const turn = (((item.to - item.from) % 360) + 360) % 360;
      pen.move(into, onCircle(item.centre, item.radius, item.from));
      pen.arc(into, item.centre, item.radius, item.from, turn === 0 ? 360 : turn);
    }
  }
};

/** Paint of filled regions. */
export const TONES = { ink: '#000000', paper: '#ffffff', tint: '#e4e4e4' } as const;

/** A line of text as every format takes it: no line breaks, no control characters. */
export const singleLine = (text: string): string => text.replace(/\p{Cc}+/gu, ' ');
