import { int, real } from './flat.ts';
import { POSE } from './placed.ts';
import type { Pieces } from './pieces.ts';
import { between, WAYS } from './reach.ts';
import { START_POSE, STRAY, STRAY_PER, STRIDE } from './relative.ts';
import type { TreeSolid } from './solid.ts';
import { NODE } from './tree.ts';

/*
 * Like the rooms of boxes in bounds.ts these are asked a million times: they write to `out` and read
 * directions from arrays.
 */

/** A solid that is searched, and how far its nodes reach. */
export interface Probed {
  readonly solid: TreeSolid;
  readonly reach: Float64Array;
}

/**
 * Directions to look along: numbers of each (itself, the origin's place along it, and the weights
 * of the ways it lies between), and the numbers of those ways.
 */
export interface Aim {
  readonly way: Float64Array;
  readonly sides: Int32Array;
  /** Whether a moving body sees the first direction at its last pose as well: the second is not set. */
  steady: boolean;
}

/** Numbers of a direction. */
export const WAY = 7;
const SIDES = 3;

export const createAim = (directions: number): Aim => ({
  way: new Float64Array(WAY * directions),
  sides: new Int32Array(SIDES * directions),
  steady: true,
});

/** Sets a direction of an aim; least places are asked for, so the ways are those of its reverse. */
const point = (
  { way, sides }: Aim,
  of: number,
  dx: number,
  dy: number,
  dz: number,
  origin: number,
): void => {
  const at = WAY * of;
  way[at] = dx;
  way[at + 1] = dy;
  way[at + 2] = dz;
  way[at + 3] = origin;
  between(way, at + 4, sides, SIDES * of, -dx, -dy, -dz);
};

/**
 * Least place along a direction of an aim over a tree node: exact over the corners of a leaf's
 * piece, else by what all below it reaches. Written to `out[to]`.
 */
export const lowestTo = (
  out: Float64Array,
  to: number,
  { solid, reach }: Probed,
  node: number,
  { way, sides }: Aim,
  of: number,
): void => {
  const at = WAY * of;
  const right = int(solid.tree.next, node);
  if (right < 0) {
    const { start, count, points }: Pieces = solid.pieces;
    const first = int(start, ~right);
    if (first >= 0) {
      const dx = real(way, at);
      const dy = real(way, at + 1);
      const dz = real(way, at + 2);
      const end = 3 * (first + int(count, ~right));
      let low = Infinity;
      for (let i = 3 * first; i < end; i += 3) {
        const far = dx * real(points, i) + dy * real(points, i + 1) + dz * real(points, i + 2);
        if (far < low) low = far;
      }
      out[to] = low;
      return;
    }
  }
  const base = WAYS * node;
  const side = SIDES * of;
  out[to] = -(
    real(way, at + 4) * real(reach, base + int(sides, side)) +
    real(way, at + 5) * real(reach, base + int(sides, side + 1)) +
    real(way, at + 6) * real(reach, base + int(sides, side + 2))
  );
};

/** Whether a motion node leaves the moving body's axes as they are. */
const isSteady = (data: Float64Array, at: number): boolean => {
  for (let k = at; k < at + 9; k++) if (real(data, k) !== real(data, k + POSE)) return false;
  return true;
};

/** Turns a unit direction of the still body's into the moving one's at both poses of a motion node. */
export const aim = (out: Aim, data: Float64Array, m: number, normal: Float64Array): void => {
  const nx = real(normal, 0);
  const ny = real(normal, 1);
  const nz = real(normal, 2);
  let pose = m * STRIDE + START_POSE;
  out.steady = isSteady(data, pose);
  for (let of = 0; of < 2; of++) {
    const origin =
      nx * real(data, pose + 9) + ny * real(data, pose + 10) + nz * real(data, pose + 11);
    if (of === 1 && out.steady) {
      out.way[WAY + 3] = origin;
      return;
    }
    point(
      out,
      of,
      nx * real(data, pose) + ny * real(data, pose + 3) + nz * real(data, pose + 6),
      nx * real(data, pose + 1) + ny * real(data, pose + 4) + nz * real(data, pose + 7),
      nx * real(data, pose + 2) + ny * real(data, pose + 5) + nz * real(data, pose + 8),
      origin,
    );
    pose += POSE;
  }
};

/** The reverse of a direction, to find the greatest places of a still body by the least. */
export const turnRound = (back: Aim, normal: Float64Array): void => {
  point(back, 0, -real(normal, 0), -real(normal, 1), -real(normal, 2), 0);
};

/**
 * Least place of node a of the moving body along an aimed direction, anywhere in motion node m:
 * on a straight way that of one of its ends, less the stray. Written to `out[to]`.
 */
export const lowMovingTo = (
  out: Float64Array,
  to: number,
  moving: Probed,
  a: number,
  aimed: Aim,
  data: Float64Array,
  m: number,
): void => {
  const k = m * STRIDE;
  lowestTo(out, to, moving, a, aimed, 0);
  const low = real(out, to);
  const start = low + real(aimed.way, 3);
  if (!aimed.steady) lowestTo(out, to, moving, a, aimed, 1);
  const end = real(out, to) + real(aimed.way, WAY + 3);
  const far = real(moving.solid.tree.boxes, a * NODE + 6);
  out[to] = (start < end ? start : end) - real(data, k + STRAY) - real(data, k + STRAY_PER) * far;
};

/** Greatest place of node b of the still body along a direction, `back` its reverse, to `out[to]`. */
export const highStillTo = (
  out: Float64Array,
  to: number,
  still: Probed,
  b: number,
  back: Aim,
): void => {
  lowestTo(out, to, still, b, back, 0);
  out[to] = -real(out, to);
};
