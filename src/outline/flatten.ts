import type { Vec2 } from '../geometry/vector.ts';
import { MOST_POINTS, TooMuch, type Drawn, type Span } from './drawn.ts';

/** Greatest chord error as a share of the drawing's size: 0.01 mm on 200 mm. */
const CHORD_SHARE = 5e-5;
/** Places of a span that tell its size before it is flattened. */
const LOOKS = [0, 0.25, 0.5, 0.75, 1];
/** Deepest halving of a span, and the least, so that an S is not taken for its chord. */
const DEEPEST_HALVING = 14;
const LEAST_HALVING = 2;

/** An entity of the file as straight pieces. */
export interface Stroke {
  readonly points: readonly Vec2[];
  readonly closed: boolean;
}

const distanceToLine = (p: Vec2, a: Vec2, b: Vec2): number => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  return length > 0
    ? Math.abs(dx * (p[1] - a[1]) - dy * (p[0] - a[0])) / length
    : Math.hypot(p[0] - a[0], p[1] - a[1]);
};

/** The points after the first, so close that their chords leave the curve by at most `chord`. */
const pointsOf = ({ at, straight }: Span, chord: number, room: () => number): Vec2[] => {
  if (straight) return [at(1)];
  const refine = (from: number, to: number, depth: number): Vec2[] => {
    const [a, b] = [at(from), at(to)];
    const near = [0.25, 0.5, 0.75].every(
      (t) => distanceToLine(at(from + (to - from) * t), a, b) <= chord,
    );
    if (depth >= DEEPEST_HALVING || (near && depth >= LEAST_HALVING)) {
      if (room() < 0) throw new TooMuch();
      return [b];
    }
    const middle = (from + to) / 2;
    return [...refine(from, middle, depth + 1), ...refine(middle, to, depth + 1)];
  };
  return refine(0, 1, 0);
};

/** Diagonal of the box around everything drawn, units of the file. */
const sizeOf = ({ paths }: Drawn): number => {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { spans } of paths)
    for (const { at } of spans)
      for (const t of LOOKS) {
        const [x, y] = at(t);
        [x0, x1, y0, y1] = [Math.min(x0, x), Math.max(x1, x), Math.min(y0, y), Math.max(y1, y)];
      }
  return Math.hypot(x1 - x0, y1 - y0);
};

export interface Flattened {
  readonly strokes: readonly Stroke[];
  /** Most by which a stroke leaves its curve, and the size of the drawing, units of the file. */
  readonly chord: number;
  readonly size: number;
}

/** Everything drawn as strokes; what has no size or no finite place is left out. */
export const flattenDrawn = (drawn: Drawn): Flattened => {
  const size = sizeOf(drawn);
  const chord = size * CHORD_SHARE;
  let left = MOST_POINTS;
  const room = (): number => (left -= 1);
  const strokes = drawn.paths.map(({ spans, closed }) => {
    const first = spans[0]?.at(0);
    const points = first ? [first, ...spans.flatMap((span) => pointsOf(span, chord, room))] : [];
    return { points: points.filter((p) => p.every(Number.isFinite)), closed };
  });
  return { strokes, chord, size };
};
