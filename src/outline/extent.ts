import type { Vec2 } from '../geometry/vector.ts';

/** Least and greatest v of a closed contour at u; null beyond it. */
export const across = (points: readonly Vec2[], u: number): readonly [number, number] | null => {
  let [low, high] = [Infinity, -Infinity];
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    if ((a[0] - u) * (b[0] - u) > 0 || a[0] === b[0]) return;
    const v = a[1] + ((b[1] - a[1]) * (u - a[0])) / (b[0] - a[0]);
    [low, high] = [Math.min(low, v), Math.max(high, v)];
  });
  return low <= high ? [low, high] : null;
};

/** Least and greatest u. */
export const extent = (points: readonly Vec2[]): readonly [number, number] =>
  points.reduce<[number, number]>(
    ([low, high], [u]) => [Math.min(low, u), Math.max(high, u)],
    [Infinity, -Infinity],
  );
