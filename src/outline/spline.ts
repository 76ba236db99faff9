import type { Vec2 } from '../geometry/vector.ts';
import type { DrawnPath, Span } from './drawn.ts';

/** Highest degree that is followed. */
const MOST_DEGREE = 10;

/** A control point times its weight, and the weight. */
type Weighted = readonly [number, number, number];

const between = (a: Weighted, b: Weighted, share: number): Weighted => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
  a[2] + (b[2] - a[2]) * share,
];

/**
 * A point of a B-spline by de Boor's recursion (C. de Boor, "A Practical Guide to Splines",
 * 1978), for x in the knot interval k. With weights the recursion runs on weighted points and the
 * sum of the weights is divided out at the end (L. Piegl and W. Tiller, "The NURBS Book", 4.2).
 */
const pointAt = (
  points: readonly Weighted[],
  knots: readonly number[],
  degree: number,
  k: number,
  x: number,
): Vec2 => {
  const knot = (i: number): number => knots[i] ?? 0;
  const none: Weighted = [0, 0, 1];
  const d = Array.from({ length: degree + 1 }, (_, j) => points[j + k - degree] ?? none);
  for (let r = 1; r <= degree; r += 1)
    for (let j = degree; j >= r; j -= 1) {
      const low = knot(j + k - degree);
      const wide = knot(j + 1 + k - r) - low;
      d[j] = between(d[j - 1] ?? none, d[j] ?? none, wide > 0 ? (x - low) / wide : 0);
    }
  const [wx, wy, w] = d[degree] ?? none;
  return [wx / w, wy / w];
};

/** What a file says of a B-spline; without weights all are alike. */
export interface Spline {
  readonly points: readonly Vec2[];
  readonly knots: readonly number[];
  readonly degree: number;
  readonly weights: readonly number[];
}

/** A B-spline, one span a knot interval; undefined where its numbers do not fit. */
export const splineSpans = ({ points, knots, degree, weights }: Spline): DrawnPath | undefined => {
  const fits =
    degree >= 1 &&
    degree <= MOST_DEGREE &&
    points.length > degree &&
    knots.length === points.length + degree + 1 &&
    knots.every((knot, i) => Number.isFinite(knot) && knot >= (knots[i - 1] ?? knot)) &&
    (weights.length === 0 || weights.length === points.length) &&
    weights.every((weight) => Number.isFinite(weight) && weight > 0);
  if (!fits) return undefined;
  const weighted = points.map(([x, y], i): Weighted => {
    const w = weights[i] ?? 1;
    return [x * w, y * w, w];
  });
  const spans = Array.from({ length: points.length - degree }, (_, i) => i + degree).flatMap(
    (k): Span[] => {
      const [from, to] = [knots[k] ?? 0, knots[k + 1] ?? 0];
      const at = (t: number) => pointAt(weighted, knots, degree, k, from + (to - from) * t);
      return to > from ? [{ at, straight: degree === 1 }] : [];
    },
  );
  // Whether the ends meet is found when the curves are joined.
  return { spans, closed: false };
};
