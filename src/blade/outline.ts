import { path, type PathLoop } from '../geometry/loop.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { Curve } from './curve.ts';
import type { Blade } from './schema.ts';
import { shapeOf } from './shape.ts';

/** Deepest halving of a stretch of curve. */
const DEEPEST = 14;

/** Points along a curve from one u to another that leave it by at most `tolerance` mm. */
export const follow = (curve: Curve, from: number, to: number, tolerance: number): Vec2[] => {
  const point = (u: number): Vec2 => [u, curve.value(u)];
  const off = (a: Vec2, b: Vec2, share: number): number => {
    const [u, v] = point(a[0] + (b[0] - a[0]) * share);
    const slope = (b[1] - a[1]) / (b[0] - a[0]);
    return Math.abs(v - a[1] - slope * (u - a[0])) / Math.hypot(1, slope);
  };
  const refine = (a: Vec2, b: Vec2, depth: number): Vec2[] =>
    depth >= DEEPEST || [0.25, 0.5, 0.75].every((share) => off(a, b, share) <= tolerance)
      ? [b]
      : [
          ...refine(a, point((a[0] + b[0]) / 2), depth + 1),
          ...refine(point((a[0] + b[0]) / 2), b, depth + 1),
        ];
  const stops = [from, ...curve.breaks.filter((u) => u > from && u < to), to].map(point);
  return stops
    .slice(1)
    .reduce<Vec2[]>(
      (points, stop) => [...points, ...refine(points.at(-1) ?? stop, stop, 0)],
      stops.slice(0, 1),
    );
};

/** Corners closer than this are one, mm. */
const SAME = 1e-6;

const distinct = (points: readonly Vec2[]): Vec2[] =>
  points.filter(([x, y], i) => {
    const [px, py] = points.at(i - 1) ?? [NaN, NaN];
    return Math.hypot(x - px, y - py) > SAME;
  });

/**
 * The whole outline, tang or handle included, as one anticlockwise contour in the plane (u, v):
 * u to the right, v upwards, so that the edge is on top. Straight parts are exact; curved ones
 * have their corners on the curve and leave it by at most `tolerance` mm.
 */
export const outlineLoop = (blade: Blade, tolerance: number): PathLoop => {
  const { spine, edge, length } = shapeOf(blade);
  const { tang, ricasso } = blade;
  const [end, back] = [-ricasso - tang.length, -ricasso];
  const points: Vec2[] = [
    [end, tang.drop],
    [back, tang.drop],
    ...follow(spine, back, length, tolerance),
    ...follow(edge, back, length, tolerance).reverse(),
    [back, tang.drop + tang.height],
    [end, tang.drop + tang.height],
  ];
  return path(distinct(points).map(([x, y]) => ({ x, y, bulge: 0 })));
};
