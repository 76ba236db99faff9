import type { Curve } from '../blade/curve.ts';
import type { Vec2 } from '../geometry/vector.ts';

/** How far a drawn point lies off a curve, mm: across the curve's direction at that place. */
export const offCurve = (curve: Curve, [u, v]: Vec2): number => {
  const off = Math.abs(v - curve.value(u)) / Math.hypot(1, curve.slope(u));
  return Number.isFinite(off) ? off : Infinity;
};

/** The greatest of them. */
export const deviation = (curve: Curve, points: readonly Vec2[]): number =>
  points.reduce((most, point) => Math.max(most, offCurve(curve, point)), 0);

/** Points along a line at most `step` mm apart, its own corners among them. */
export const dense = (points: readonly Vec2[], step: number): Vec2[] =>
  points.flatMap((a, i) => {
    const b = points[i + 1];
    if (b === undefined) return [a];
    const n = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / step));
    return Array.from({ length: n }, (_, k): Vec2 => [
      a[0] + ((b[0] - a[0]) * k) / n,
      a[1] + ((b[1] - a[1]) * k) / n,
    ]);
  });
