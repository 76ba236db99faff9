import { atan2 } from '../../core/trigonometry.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import { int, real } from './flat.ts';
import type { TreeSolid } from './solid.ts';
import { NODE } from './tree.ts';

/** Directions in general position: a ray that grazes an edge is cast again along the next. */
const RAYS: readonly Vec3[] = [
  [0.8319, 0.4271, 0.3547],
  [-0.3163, 0.7893, -0.5263],
  [0.2213, -0.4517, 0.8643],
];

/** Share of a triangle's size within which a ray counts as grazing its edge. */
const GRAZE = 1e-9;

/** Whether a ray from p can meet the node's box. */
const meetsBox = (boxes: Float64Array, node: number, p: Vec3, d: Vec3): boolean => {
  let from = 0;
  let to = Infinity;
  for (let k = 0; k < 3; k++) {
    const at = node * NODE + k;
    const half = real(boxes, at + 3) * (1 + 1e-9) + 1e-9;
    const offset = real(boxes, at) - (p[k] as number);
    const inverse = 1 / (d[k] as number);
    const t1 = (offset - half) * inverse;
    const t2 = (offset + half) * inverse;
    from = Math.max(from, Math.min(t1, t2));
    to = Math.min(to, Math.max(t1, t2));
  }
  return from <= to;
};

/**
 * 1 or -1 when the ray from p along d leaves or enters through the triangle, 0 when it misses,
 * NaN when it grazes an edge.
 */
const crossing = (points: Float64Array, at: number, p: Vec3, d: Vec3): number => {
  const q = (corner: number, k: number): number =>
    real(points, at + 3 * corner + k) - (p[k] as number);
  /** Six times the volume that the ray spans with an edge. */
  const edge = (i: number, j: number): number =>
    d[0] * (q(i, 1) * q(j, 2) - q(i, 2) * q(j, 1)) +
    d[1] * (q(i, 2) * q(j, 0) - q(i, 0) * q(j, 2)) +
    d[2] * (q(i, 0) * q(j, 1) - q(i, 1) * q(j, 0));
  let size = 0;
  for (let corner = 0; corner < 3; corner++) {
    for (let k = 0; k < 3; k++) size = Math.max(size, Math.abs(q(corner, k)));
  }
  const u = edge(1, 2);
  const v = edge(2, 0);
  const w = edge(0, 1);
  const limit = GRAZE * size * size;
  const positive = u > limit && v > limit && w > limit;
  const negative = u < -limit && v < -limit && w < -limit;
  if (!positive && !negative) {
    const clearlyOut = Math.min(u, v, w) < -limit && Math.max(u, v, w) > limit;
    return clearlyOut ? 0 : NaN;
  }
  const whole = u + v + w;
  let t = 0;
  for (let k = 0; k < 3; k++) {
    t += (d[k] as number) * (u * q(0, k) + v * q(1, k) + w * q(2, k));
  }
  t /= whole;
  if (Math.abs(t) <= GRAZE * size) return NaN;
  return t > 0 ? Math.sign(whole) : 0;
};

/** Leavings less enterings of one ray, NaN when it grazes an edge anywhere. */
const crossings = (solid: TreeSolid, p: Vec3, d: Vec3): number => {
  const { boxes, next } = solid.tree;
  const stack = [0];
  let count = 0;
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    if (!meetsBox(boxes, node, p, d)) continue;
    const right = int(next, node);
    if (right >= 0) {
      stack.push(node + 1, right);
      continue;
    }
    count += crossing(solid.pieces.points, 3 * int(solid.pieces.start, ~right), p, d);
    if (Number.isNaN(count)) return count;
  }
  return count;
};

/**
 * Turns of the surface about p, from the solid angles of its triangles (A. van Oosterom,
 * J. Strackee 1983): near a whole number for every point off the surface, whatever grazes.
 */
const winding = (solid: TreeSolid, p: Vec3): number => {
  const { start, points } = solid.pieces;
  let sum = 0;
  for (const first of start) {
    const at = 3 * first;
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = Array.from(
      { length: 9 },
      (_, i) => real(points, at + i) - p[(i % 3) as 0 | 1 | 2],
    ) as [number, number, number, number, number, number, number, number, number];
    const a = Math.hypot(ax, ay, az);
    const b = Math.hypot(bx, by, bz);
    const c = Math.hypot(cx, cy, cz);
    const volume = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    const ab = ax * bx + ay * by + az * bz;
    const bc = bx * cx + by * cy + bz * cz;
    const ca = cx * ax + cy * ay + cz * az;
    sum += 2 * atan2(volume, a * b * c + ab * c + bc * a + ca * b);
  }
  return sum / (4 * Math.PI);
};

/**
 * Whether a point lies inside the closed surface of a solid: the surface winds about it, so
 * shells that overlap are solid where they do and an inward shell is a hollow.
 */
export const insideSurface = (solid: TreeSolid, p: Vec3): boolean => {
  const { boxes } = solid.tree;
  for (let k = 0; k < 3; k++) {
    if (Math.abs((p[k] as number) - real(boxes, k)) > real(boxes, 3 + k)) return false;
  }
  for (const ray of RAYS) {
    const count = crossings(solid, p, ray);
    if (!Number.isNaN(count)) return count !== 0;
  }
  return Math.round(winding(solid, p)) !== 0;
};
