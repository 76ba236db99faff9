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
  readonly x: number[];
  readonly y: number[];
  readonly z: number[];
}

/** The points within `half` of x = 0, and where edges cross its ends. */
export const stretchOf = (placed: Float64Array, edges: Uint32Array, half: number): Stretch => {
  const found: Stretch = { x: [], y: [], z: [] };
  const at = (i: number): number => placed[i] ?? 0;
  for (let i = 0; i < placed.length; i += 3) {
    if (Math.abs(at(i)) > half) continue;
    found.x.push(at(i));
    found.y.push(at(i + 1));
    found.z.push(at(i + 2));
  }
  for (let e = 0; e < edges.length; e += 2) {
    const [p, q] = [3 * (edges[e] ?? 0), 3 * (edges[e + 1] ?? 0)];
    for (const end of [-half, half]) {
      if (at(p) < end === at(q) < end) continue;
      const t = (end - at(p)) / (at(q) - at(p));
      found.x.push(end);
      found.y.push(at(p + 1) + t * (at(q + 1) - at(p + 1)));
      found.z.push(at(p + 2) + t * (at(q + 2) - at(p + 2)));
    }
  }
  return found;
};

/** Points of a blade in a frame. */
export const placedPoints = (points: Float64Array, f: Frame): Float64Array => {
  const out = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    const [u, v, w] = [points[i] ?? 0, points[i + 1] ?? 0, points[i + 2] ?? 0];
    for (const k of [0, 1, 2] as const)
      out[i + k] = f.origin[k] + u * f.x[k] + v * f.y[k] + w * f.z[k];
  }
  return out;
};
