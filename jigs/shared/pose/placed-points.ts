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

/**
 * Arrays that are written over by every next use of the same name: a blade is settled thousands of
 * times, and each time its points are placed anew.
 */
export type Room = (name: string, length: number) => Float64Array;

export const createRoom = (): Room => {
  const lists = new Map<string, Float64Array>();
  return (name, length) => {
    const known = lists.get(name);
    if (known && known.length >= length) return known.subarray(0, length);
    const fresh = new Float64Array(2 * length);
    lists.set(name, fresh);
    return fresh.subarray(0, length);
  };
};

// Pairs in brackets are made and thrown away: in loops over points that was 100 MB a change.

/** Points of a placed blade on one stretch of the stroke, its ends included. */
export interface Stretch {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
}

/** The points within `half` of x = 0, and where edges cross its ends; kept in `room` under `name`. */
export const stretchOf = (
  placed: Float64Array,
  edges: Uint32Array,
  half: number,
  room: Room,
  name: string,
): Stretch => {
  // An edge crosses both ends at most.
  const most = placed.length / 3 + edges.length;
  const [x, y, z] = [room(`${name} x`, most), room(`${name} y`, most), room(`${name} z`, most)];
  let found = 0;
  for (let i = 0; i < placed.length; i += 3) {
    const here = placed[i] as number;
    if (here > half || here < -half) continue;
    x[found] = here;
    y[found] = placed[i + 1] as number;
    z[found++] = placed[i + 2] as number;
  }
  for (let e = 0; e < edges.length; e += 2) {
    const p = 3 * (edges[e] as number);
    const q = 3 * (edges[e + 1] as number);
    const from = placed[p] as number;
    const to = placed[q] as number;
    for (let k = -1; k <= 1; k += 2) {
      const end = k * half;
      if (from < end === to < end) continue;
      const t = (end - from) / (to - from);
      const py = placed[p + 1] as number;
      const pz = placed[p + 2] as number;
      x[found] = end;
      y[found] = py + t * ((placed[q + 1] as number) - py);
      z[found++] = pz + t * ((placed[q + 2] as number) - pz);
    }
  }
  return { x: x.subarray(0, found), y: y.subarray(0, found), z: z.subarray(0, found) };
};

/** Places along the stroke (x), and across the belt (y), of all points that a test keeps. */
export const keptOf = (
  stretches: readonly Stretch[],
  keep: (x: number, z: number) => boolean,
  room: Room,
): readonly [x: Float64Array, y: Float64Array] => {
  const most = stretches.reduce((sum, { x }) => sum + x.length, 0);
  const [xs, ys] = [room('kept x', most), room('kept y', most)];
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
export const placedPoints = (points: Float64Array, frame: Frame, room: Room): Float64Array => {
  const out = room('placed', points.length);
  const [ox, oy, oz] = frame.origin;
  const [xx, xy, xz] = frame.x;
  const [yx, yy, yz] = frame.y;
  const [zx, zy, zz] = frame.z;
  for (let i = 0; i < points.length; i += 3) {
    const u = points[i] as number;
    const v = points[i + 1] as number;
    const w = points[i + 2] as number;
    out[i] = ox + u * xx + v * yx + w * zx;
    out[i + 1] = oy + u * xy + v * yy + w * zy;
    out[i + 2] = oz + u * xz + v * yz + w * zz;
  }
  return out;
};
