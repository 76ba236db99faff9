import { cross3, dot3, length3, sub3, type Vec3 } from '../geometry/vector.ts';
import { corner, trianglesOf } from './triangles.ts';
import type { Mesh } from './mesh.ts';

type Triangle = readonly [number, number, number];
type Points = readonly [Vec3, Vec3, Vec3];

interface Item {
  readonly corners: Triangle;
  readonly points: Points;
  readonly min: Vec3;
  readonly max: Vec3;
}

/** Heights over a plane below this share of the size count as in the plane: rounding noise. */
const FLAT = 1e-6;

/**
 * Number of pairs of triangles that pass through each other: sorted along x to find pairs whose
 * boxes overlap, then an edge of one properly through the other, or an overlap in one plane.
 * Triangles that only share corners or edges do not count.
 */
export const crossingPairs = (mesh: Mesh): number => {
  const items = trianglesOf(mesh).map((corners) => itemOf(mesh, corners));
  const sorted = items.sort((a, b) => a.min[0] - b.min[0]);
  let count = 0;
  let active: Item[] = [];
  for (const item of sorted) {
    active = active.filter((other) => other.max[0] >= item.min[0]);
    for (const other of active) if (boxesOverlap(item, other) && cross(item, other)) count += 1;
    active.push(item);
  }
  return count;
};

const itemOf = ({ vertices }: Mesh, corners: Triangle): Item => {
  const [a, b, c] = corners;
  const points: Points = [corner(vertices, a), corner(vertices, b), corner(vertices, c)];
  const over = (pick: (...values: number[]) => number): Vec3 => {
    const [p, q, r] = points;
    return [pick(p[0], q[0], r[0]), pick(p[1], q[1], r[1]), pick(p[2], q[2], r[2])];
  };
  return { corners, points, min: over(Math.min), max: over(Math.max) };
};

const boxesOverlap = (a: Item, b: Item): boolean =>
  a.min[1] <= b.max[1] && b.min[1] <= a.max[1] && a.min[2] <= b.max[2] && b.min[2] <= a.max[2];

const cross = (a: Item, b: Item): boolean => {
  const normal = cross3(sub3(b.points[1], b.points[0]), sub3(b.points[2], b.points[0]));
  const size = length3(normal);
  if (size === 0) return false;
  const heights = a.points.map((p) => dot3(sub3(p, b.points[0]), normal) / size);
  const reach = Math.max(...heights.map(Math.abs));
  if (reach < FLAT) return overlapInPlane(a, b, normal);
  return pierces(a, b) || pierces(b, a);
};

const edgesOf = ({ corners, points }: Item): [number, number, Vec3, Vec3][] => [
  [corners[0], corners[1], points[0], points[1]],
  [corners[1], corners[2], points[1], points[2]],
  [corners[2], corners[0], points[2], points[0]],
];

/** Whether an edge of `a` passes through the inside of `b`. */
const pierces = (a: Item, b: Item): boolean =>
  edgesOf(a).some(([i, k, p, q]) => {
    // An edge that starts or ends in a corner of b meets it there only, or lies in its plane.
    if (b.corners.includes(i) || b.corners.includes(k)) return false;
    const [u, v, w] = b.points;
    const normal = cross3(sub3(v, u), sub3(w, u));
    const size = length3(normal);
    const [s, t] = [p, q].map((end) => dot3(sub3(end, u), normal) / size);
    if (s === undefined || t === undefined) return false;
    if (Math.abs(s) < FLAT || Math.abs(t) < FLAT || s > 0 === t > 0) return false;
    const sides = [
      [u, v],
      [v, w],
      [w, u],
    ].map(([from, to]) => (from === undefined || to === undefined ? 0 : volume6(p, q, from, to)));
    const limit = FLAT * size * Math.abs(s - t);
    return sides.every((side) => side > limit) || sides.every((side) => side < -limit);
  });

/** Six times the signed volume of a tetrahedron. */
const volume6 = (a: Vec3, b: Vec3, c: Vec3, d: Vec3): number =>
  dot3(sub3(b, a), cross3(sub3(c, a), sub3(d, a)));

/** Whether two triangles in one plane share some area: no edge of either keeps them apart. */
const overlapInPlane = (a: Item, b: Item, normal: Vec3): boolean => {
  const separates = (edge: readonly [Vec3, Vec3], own: Vec3, others: readonly Vec3[]): boolean => {
    const side = cross3(normal, sub3(edge[1], edge[0]));
    const length = length3(side);
    const over = (p: Vec3): number => dot3(sub3(p, edge[0]), side) / length;
    const sign = Math.sign(over(own));
    return others.every((p) => over(p) * sign < FLAT);
  };
  const apart = (one: Item, other: Item): boolean => {
    const [p, q, r] = one.points;
    return (
      separates([p, q], r, other.points) ||
      separates([q, r], p, other.points) ||
      separates([r, p], q, other.points)
    );
  };
  return !apart(a, b) && !apart(b, a);
};
