import type { Vec2 } from '../geometry/vector.ts';
import type { DrawnPath, Span } from './drawn.ts';

/** Highest degree that is followed. */
const MOST_DEGREE = 10;

/**
 * A point of a B-spline by de Boor's recursion (C. de Boor, "A Practical Guide to Splines",
 * 1978), for x in the knot interval k.
 */
const pointAt = (
  points: readonly Vec2[],
  knots: readonly number[],
  degree: number,
  k: number,
  x: number,
): Vec2 => {
  const knot = (i: number): number => knots[i] ?? 0;
  const d = Array.from({ length: degree + 1 }, (_, j): Vec2 => points[j + k - degree] ?? [0, 0]);
  for (let r = 1; r <= degree; r += 1)
    for (let j = degree; j >= r; j -= 1) {
      const low = knot(j + k - degree);
      const wide = knot(j + 1 + k - r) - low;
      const share = wide > 0 ? (x - low) / wide : 0;
      const [a, b] = [d[j - 1] ?? [0, 0], d[j] ?? [0, 0]];
      d[j] = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
    }
  return d[degree] ?? [0, 0];
};

/** A B-spline without weights, one span a knot interval; undefined where its numbers do not fit. */
export const splineSpans = (
  points: readonly Vec2[],
  knots: readonly number[],
  degree: number,
): DrawnPath | undefined => {
  const fits =
    degree >= 1 &&
    degree <= MOST_DEGREE &&
    points.length > degree &&
    knots.length === points.length + degree + 1 &&
    knots.every((knot, i) => Number.isFinite(knot) && knot >= (knots[i - 1] ?? knot));
  if (!fits) return undefined;
  const spans = Array.from({ length: points.length - degree }, (_, i) => i + degree).flatMap(
    (k): Span[] => {
      const [from, to] = [knots[k] ?? 0, knots[k + 1] ?? 0];
      const at = (t: number) => pointAt(points, knots, degree, k, from + (to - from) * t);
      return to > from ? [{ at, straight: degree === 1 }] : [];
    },
  );
  // Whether the ends meet is found when the curves are joined.
  return { spans, closed: false };
};
