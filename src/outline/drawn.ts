import { cos, sin } from '../core/trigonometry.ts';
import type { Vec2 } from '../geometry/vector.ts';

/** A stretch of a drawn curve: the point at 0 to 1. A straight one needs no point between. */
export interface Span {
  readonly at: (t: number) => Vec2;
  readonly straight: boolean;
}

/** Spans that follow each other, as one entity of the file; y up, units of the file. */
export interface DrawnPath {
  readonly spans: readonly Span[];
  readonly closed: boolean;
}

/** What a file draws, before anything is cleaned. */
export interface Drawn {
  readonly paths: readonly DrawnPath[];
  /** Millimetres of one unit of the file, null where it does not say. */
  readonly unit: number | null;
  /** Entities that were left out, by their name in the file. */
  readonly ignored: ReadonlyMap<string, number>;
}

/** Largest file that is read, bytes: a traced outline takes some ten thousand. */
export const LARGEST_OUTLINE = 4_000_000;
/** Most spans and flattened points, and deepest nesting of groups or blocks. */
export const MOST_SPANS = 50_000;
export const MOST_POINTS = 60_000;
export const DEEPEST = 16;

/** Thrown inside a reader when a file is beyond its limits; it never leaves `readOutline`. */
export class TooMuch extends Error {}

export const lineSpan = (a: Vec2, b: Vec2): Span => ({
  at: (t) => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t],
  straight: true,
});

/** Straight spans through points; closed back to the first where asked for. */
export const polylineSpans = (points: readonly Vec2[], closed: boolean): Span[] =>
  points.flatMap((point, i) => {
    const next = points[i + 1] ?? (closed ? points[0] : undefined);
    return next === undefined ? [] : [lineSpan(point, next)];
  });

/** An arc of an ellipse: centre, half axes as vectors, from one parameter angle to another, radians. */
export const ellipseSpan = (c: Vec2, p: Vec2, q: Vec2, from: number, to: number): Span => ({
  at: (t) => {
    const angle = from + (to - from) * t;
    const [x, y] = [cos(angle), sin(angle)];
    return [c[0] + p[0] * x + q[0] * y, c[1] + p[1] * x + q[1] * y];
  },
  straight: false,
});

/** A polynomial curve by Bernstein's form, of any degree up to three. */
export const cubicSpan = (a: Vec2, b: Vec2, c: Vec2, d: Vec2): Span => ({
  at: (t) => {
    const s = 1 - t;
    const [wa, wb, wc, wd] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    return [
      wa * a[0] + wb * b[0] + wc * c[0] + wd * d[0],
      wa * a[1] + wb * b[1] + wc * c[1] + wd * d[1],
    ];
  },
  straight: false,
});
