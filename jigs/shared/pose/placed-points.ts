import { cross3, unit3, type Frame, type Vec3 } from '../../../src/family/index.ts';

/** Turns the frame's axes by a small slope in the plane of x and the given axis (1: y, 2: z). */
export const levelled = (f: Frame, slope: number, axis: 1 | 2): Frame => {
  const norm = Math.hypot(1, slope);
  const [c, s] = [1 / norm, -slope / norm];
  const turn = (v: Vec3): Vec3 =>
    axis === 1
      ? [c * v[0] - s * v[1], s * v[0] + c * v[1], v[2]]
      : [c * v[0] - s * v[2], v[1], s * v[0] + c * v[2]];
  const x = unit3(turn(f.x));
  const y = turn(f.y);
  const z = unit3(cross3(x, y));
  return { origin: turn(f.origin), x, y: cross3(z, x), z };
};

/** Points of a placed blade on one stretch of the stroke, its ends included. */
export interface Stretch {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
}

/** The points within `half` of x = 0, and where edges cross its ends. */
export const stretchOf = (placed: Float64Array, edges: Uint32Array, half: number): Stretch => {
  // An edge crosses both ends at most. Poses are settled thousands of times: no lists that grow.
  const room = placed.length / 3 + edges.length;
  const [x, y, z] = [new Float64Array(room), new Float64Array(room), new Float64Array(room)];
  const at = (i: number): number => placed[i] as number;
  let found = 0;
  for (let i = 0; i < placed.length; i += 3) {
    if (Math.abs(at(i)) > half) continue;
    x[found] = at(i);
    y[found] = at(i + 1);
    z[found++] = at(i + 2);
  }
  for (let e = 0; e < edges.length; e += 2) {
    const [p, q] = [3 * (edges[e] as number), 3 * (edges[e + 1] as number)];
    for (let k = -1; k <= 1; k += 2) {
      const end = k * half;
      if (at(p) < end === at(q) < end) continue;
      const t = (end - at(p)) / (at(q) - at(p));
      x[found] = end;
      y[found] = at(p + 1) + t * (at(q + 1) - at(p + 1));
      z[found++] = at(p + 2) + t * (at(q + 2) - at(p + 2));
    }
  }
  return { x: x.subarray(0, found), y: y.subarray(0, found), z: z.subarray(0, found) };
};

/** Places along the stroke (x), and across the belt (y), of all points that a test keeps. */
export const keptOf = (
  stretches: readonly Stretch[],
  keep: (x: number, z: number) => boolean,
): readonly [x: Float64Array, y: Float64Array] => {
  const room = stretches.reduce((sum, { x }) => sum + x.length, 0);
  const [xs, ys] = [new Float64Array(room), new Float64Array(room)];
  let kept = 0;
  for (const { x, y, z } of stretches) {
    for (let i = 0; i < x.length; i += 1) {
      if (!keep(x[i] as number, z[i] as number)) continue;
      xs[kept] = x[i] as number;
      ys[kept++] = y[i] as number;
    }
  }
  return [xs.subarray(0, kept), ys.subarray(0, kept)];
};

/** Points of a blade in a frame. */
export const placedPoints = (points: Float64Array, { origin, x, y, z }: Frame): Float64Array => {
  const out = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    const [u, v, w] = [points[i] as number, points[i + 1] as number, points[i + 2] as number];
    out[i] = origin[0] + u * x[0] + v * y[0] + w * z[0];
    out[i + 1] = origin[1] + u * x[1] + v * y[1] + w * z[1];
    out[i + 2] = origin[2] + u * x[2] + v * y[2] + w * z[2];
  }
  return out;
};
