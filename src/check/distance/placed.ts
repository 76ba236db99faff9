import { int, real } from './flat.ts';
import type { Pieces } from './pieces.ts';
import { ROUND } from './pieces.ts';

/** Numbers a pose: the rotation by rows (9), the origin (3). */
export const POSE = 12;

export const IDENTITY_POSE = Float64Array.of(1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0);

/**
 * One convex piece placed at one pose, or at two: then it stands for the convex hull of both
 * copies, which is what the piece sweeps when its points move along straight lines.
 */
export interface Placed {
  /** Corners a copy; a round piece keeps the last support point of each copy here instead. */
  count: number;
  copies: number;
  round: boolean;
  points: Float64Array;
  /** Per copy of a round piece: centre, middle, side and axis directions (12 numbers). */
  readonly axes: Float64Array;
  /** Outer and inner radius, cosine and sine of the half angle, half width. */
  readonly sizes: Float64Array;
}

export const createPlaced = (): Placed => ({
  count: 0,
  copies: 0,
  round: false,
  points: new Float64Array(3 * 64),
  axes: new Float64Array(2 * POSE),
  sizes: new Float64Array(5),
});

/** Starts a placement of a piece: forgets the copies of the one before. */
export const clearPlaced = (placed: Placed): void => {
  placed.copies = 0;
};

/** Adds a copy of a piece at the pose that starts at `at` in `poses`. */
export const placeCopy = (
  placed: Placed,
  pieces: Pieces,
  piece: number,
  poses: Float64Array,
  at: number,
): void => {
  const r0 = real(poses, at);
  const r1 = real(poses, at + 1);
  const r2 = real(poses, at + 2);
  const r3 = real(poses, at + 3);
  const r4 = real(poses, at + 4);
  const r5 = real(poses, at + 5);
  const r6 = real(poses, at + 6);
  const r7 = real(poses, at + 7);
  const r8 = real(poses, at + 8);
  const ox = real(poses, at + 9);
  const oy = real(poses, at + 10);
  const oz = real(poses, at + 11);
  const start = int(pieces.start, piece);
  const copy = placed.copies++;
  placed.round = start < 0;
  if (start < 0) {
    const from = ~start * ROUND;
    const to = copy * POSE;
    placed.count = 1;
    for (let k = 0; k < POSE; k += 3) {
      const x = real(pieces.rounds, from + k);
      const y = real(pieces.rounds, from + k + 1);
      const z = real(pieces.rounds, from + k + 2);
      const shift = k === 0 ? 1 : 0;
      placed.axes[to + k] = r0 * x + r1 * y + r2 * z + shift * ox;
      placed.axes[to + k + 1] = r3 * x + r4 * y + r5 * z + shift * oy;
      placed.axes[to + k + 2] = r6 * x + r7 * y + r8 * z + shift * oz;
    }
    for (let k = 0; k < 5; k++) placed.sizes[k] = real(pieces.rounds, from + POSE + k);
    supportRound(placed, 1, 0, 0);
    return;
  }
  const count = int(pieces.count, piece);
  placed.count = count;
  if (placed.points.length < 6 * count) placed.points = new Float64Array(6 * count);
  const points = placed.points;
  const source = pieces.points;
  let to = copy * count * 3;
  for (let i = start * 3; i < (start + count) * 3; i += 3) {
    const x = real(source, i);
    const y = real(source, i + 1);
    const z = real(source, i + 2);
    points[to++] = r0 * x + r1 * y + r2 * z + ox;
    points[to++] = r3 * x + r4 * y + r5 * z + oy;
    points[to++] = r6 * x + r7 * y + r8 * z + oz;
  }
};

/** Writes every copy's farthest point along d into `points`; returns the farther copy. */
const supportRound = (placed: Placed, dx: number, dy: number, dz: number): number => {
  const { axes, sizes, points } = placed;
  const outer = real(sizes, 0);
  const inner = real(sizes, 1);
  const cosine = real(sizes, 2);
  const sine = real(sizes, 3);
  const half = real(sizes, 4);
  let best = -Infinity;
  let chosen = 0;
  for (let copy = 0; copy < placed.copies; copy++) {
    const at = copy * POSE;
    const u = dx * real(axes, at + 3) + dy * real(axes, at + 4) + dz * real(axes, at + 5);
    const v = dx * real(axes, at + 6) + dy * real(axes, at + 7) + dz * real(axes, at + 8);
    const w = dx * real(axes, at + 9) + dy * real(axes, at + 10) + dz * real(axes, at + 11);
    const length = Math.sqrt(u * u + v * v);
    let pu = outer;
    let pv = 0;
    if (length > 0) {
      if (u >= length * cosine) {
        pu = (outer * u) / length;
        pv = (outer * v) / length;
      } else {
        // Beyond the arc's ends: the farther of the end's outer and inner corner.
        const s = v < 0 ? -sine : sine;
        const radius = u * cosine + v * s >= 0 ? outer : inner;
        pu = radius * cosine;
        pv = radius * s;
      }
    }
    const pw = w < 0 ? -half : half;
    const to = copy * 3;
    for (let k = 0; k < 3; k++) {
      points[to + k] =
        real(axes, at + k) +
        pu * real(axes, at + 3 + k) +
        pv * real(axes, at + 6 + k) +
        pw * real(axes, at + 9 + k);
    }
    const far = dx * real(points, to) + dy * real(points, to + 1) + dz * real(points, to + 2);
    if (far > best) {
      best = far;
      chosen = copy;
    }
  }
  return chosen;
};

/** Index (into `points`, three numbers each) of a point farthest along d. */
export const support = (placed: Placed, dx: number, dy: number, dz: number): number => {
  if (placed.round) return supportRound(placed, dx, dy, dz);
  const points = placed.points;
  const total = placed.count * placed.copies;
  let chosen = 0;
  let best = dx * real(points, 0) + dy * real(points, 1) + dz * real(points, 2);
  for (let i = 1; i < total; i++) {
    const far =
      dx * real(points, 3 * i) + dy * real(points, 3 * i + 1) + dz * real(points, 3 * i + 2);
    if (far > best) {
      best = far;
      chosen = i;
    }
  }
  return chosen;
};
