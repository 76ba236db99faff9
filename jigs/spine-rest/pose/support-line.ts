import type { Vec2 } from '../../../src/family/index.ts';

/** A line a + b x, mm and mm/mm. */
export interface Line {
  readonly a: number;
  readonly b: number;
}

/** Anticlockwise part of the hull seen from below, points in order of x. */
const lowerHull = (points: readonly Vec2[]): Vec2[] => {
  const sorted = [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const hull: Vec2[] = [];
  for (const p of sorted) {
    for (;;) {
      const [a, b] = [hull.at(-2), hull.at(-1)];
      if (!a || !b) break;
      const turn = (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
      if (turn > 0) break;
      hull.pop();
    }
    const last = hull.at(-1);
    if (last?.[0] !== p[0]) hull.push(p);
  }
  return hull;
};

/**
 * The line under all points that is highest at x = `load`, where the load acts: what a straight
 * ledge below them comes to rest on. It passes through the hull's edge under the load, or its
 * nearest edge where the load lies beside all points; level through a single point. None for no
 * points.
 */
export const lineBelow = (points: readonly Vec2[], load = 0): Line | undefined => {
  const hull = lowerHull(points);
  const beyond = hull.findIndex(([x]) => x >= load);
  const i = Math.max(1, beyond < 0 ? hull.length - 1 : beyond);
  const [left, right] = [hull[i - 1], hull[i]];
  if (left && right) {
    const b = (right[1] - left[1]) / (right[0] - left[0]);
    return { a: right[1] - b * right[0], b };
  }
  const only = hull[0];
  return only ? { a: only[1], b: 0 } : undefined;
};

/** The line above all points that is lowest at x = `load`. */
export const lineAbove = (points: readonly Vec2[], load = 0): Line | undefined => {
  const line = lineBelow(
    points.map(([x, y]): Vec2 => [x, -y]),
    load,
  );
  return line ? { a: -line.a, b: -line.b } : undefined;
};
