import { add3, cross3, dot3, length3, scale3, sub3, unit3, type Vec3 } from '../geometry/vector.ts';
import { corner, trianglesOf } from './triangles.ts';
import type { Mesh } from './mesh.ts';

type Triangle = readonly [number, number, number];
type Points = readonly [Vec3, Vec3, Vec3];

/** A plane as its unit normal and the normal's product with any point of it. */
interface Plane {
  readonly normal: Vec3;
  readonly offset: number;
}

interface Item {
  readonly corners: Triangle;
  readonly points: Points;
  readonly plane: Plane;
  /** Planes square to the triangle through its edges, their normals pointing into it; once asked. */
  sides?: readonly Plane[];
  readonly min: Vec3;
  readonly max: Vec3;
}

/** Heights over a plane below this count as in the plane, mm: rounding noise. */
const FLAT = 1e-6;

/**
 * Number of pairs of triangles that pass through each other: swept along x to find pairs whose
 * boxes overlap, then an edge of one properly through the other, or an overlap in one plane.
 * Triangles that only share corners or edges do not count.
 */
export const crossingPairs = (mesh: Mesh): number => {
  const items = trianglesOf(mesh).flatMap((corners) => itemOf(mesh, corners));
  const sorted = items.sort((a, b) => a.min[0] - b.min[0]);
  let count = 0;
  const active: Item[] = [];
  for (const item of sorted) {
    let kept = 0;
    for (const other of active) {
      if (other.max[0] < item.min[0]) continue;
      active[kept] = other;
      kept += 1;
      if (boxesOverlap(item, other) && cross(item, other)) count += 1;
    }
    active.length = kept;
    active.push(item);
  }
  return count;
};

/** None for a triangle without area, which the audit counts apart. */
const itemOf = ({ vertices }: Mesh, corners: Triangle): Item[] => {
  const [a, b, c] = corners;
  const points: Points = [corner(vertices, a), corner(vertices, b), corner(vertices, c)];
  const [p, q, r] = points;
  const across = cross3(sub3(q, p), sub3(r, p));
  if (!(length3(across) > 0)) return [];
  return [
    {
      corners,
      points,
      plane: planeThrough(p, unit3(across)),
      min: [Math.min(p[0], q[0], r[0]), Math.min(p[1], q[1], r[1]), Math.min(p[2], q[2], r[2])],
      max: [Math.max(p[0], q[0], r[0]), Math.max(p[1], q[1], r[1]), Math.max(p[2], q[2], r[2])],
    },
  ];
};

const sideOf = ({ plane: { normal } }: Item, from: Vec3, to: Vec3): Plane =>
  planeThrough(from, unit3(cross3(normal, sub3(to, from))));

const sidesOf = (item: Item): readonly Plane[] => {
  const [p, q, r] = item.points;
  item.sides ??= [sideOf(item, p, q), sideOf(item, q, r), sideOf(item, r, p)];
  return item.sides;
};

const planeThrough = (p: Vec3, normal: Vec3): Plane => ({ normal, offset: dot3(normal, p) });

const over = ({ normal, offset }: Plane, p: Vec3): number => dot3(normal, p) - offset;

const boxesOverlap = (a: Item, b: Item): boolean =>
  a.min[1] <= b.max[1] && b.min[1] <= a.max[1] && a.min[2] <= b.max[2] && b.min[2] <= a.max[2];

const cross = (a: Item, b: Item): boolean => {
  const [p, q, r] = a.points;
  const [hp, hq, hr] = [over(b.plane, p), over(b.plane, q), over(b.plane, r)];
  const low = Math.min(hp, hq, hr);
  const high = Math.max(hp, hq, hr);
  if (low > FLAT || high < -FLAT) return false;
  if (low > -FLAT && high < FLAT) return !keptApart(a, b) && !keptApart(b, a);
  return pierces(a, b) || pierces(b, a);
};

/** Whether an edge of `one` has all of `other`, in the same plane, on its outer side. */
const keptApart = (one: Item, other: Item): boolean =>
  sidesOf(one).some((side) => other.points.every((p) => over(side, p) < FLAT));

const EDGES = [
  [0, 1],
  [1, 2],
  [2, 0],
] as const;

/** Whether an edge of `a` passes through the inside of `b`. */
const pierces = (a: Item, b: Item): boolean =>
  EDGES.some(([i, k]) => {
    // An edge that starts or ends in a corner of b meets it there only, or lies in its plane.
    if (b.corners.includes(a.corners[i]) || b.corners.includes(a.corners[k])) return false;
    const [p, q] = [a.points[i], a.points[k]];
    const [s, t] = [over(b.plane, p), over(b.plane, q)];
    if (Math.abs(s) < FLAT || Math.abs(t) < FLAT || s > 0 === t > 0) return false;
    const at = add3(p, scale3(sub3(q, p), s / (s - t)));
    return sidesOf(b).every((side) => over(side, at) > FLAT);
  });
