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

/** What draws lines in a format. Points are paper mm, y up; angles degrees, anticlockwise. */
export interface Pen {
  readonly move: (to: Vec2) => void;
  readonly line: (to: Vec2) => void;
  /** From where the pen stands, anticlockwise about the centre through `sweep` of at most 360. */
  readonly arc: (centre: Vec2, radius: number, from: number, sweep: number) => void;
}

/** Draws one item with a pen. */
export const trace = (item: Stroked, pen: Pen): void => {
  switch (item.kind) {
    case 'line':
      pen.move(item.a);
      pen.line(item.b);
      return;
    case 'polyline':
      item.points.forEach((point, i) => (i === 0 ? pen.move(point) : pen.line(point)));
      return;
    case 'circle':
      pen.move(onCircle(item.centre, item.radius, 0));
      pen.arc(item.centre, item.radius, 0, 360);
      return;
    case 'arc': {
      const turn = (((item.to - item.from) % 360) + 360) % 360;
      pen.move(onCircle(item.centre, item.radius, item.from));
      pen.arc(item.centre, item.radius, item.from, turn === 0 ? 360 : turn);
    }
  }
};

/** Paint of filled regions. */
export const TONES = { ink: '#000000', paper: '#ffffff', tint: '#e4e4e4' } as const;

/** A line of text as every format takes it: no line breaks, no control characters. */
export const singleLine = (text: string): string => text.replace(/\p{Cc}+/gu, ' ');
