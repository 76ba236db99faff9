import { int, real } from './flat.ts';
import { POSE } from './placed.ts';
import { AXIS, OUTER, type Pieces } from './pieces.ts';
import { CENTRE, HALF, SPIN, START_POSE, STRAY, STRAY_PER, STRIDE } from './relative.ts';
import { between, WAYS } from './reach.ts';
import type { TreeSolid } from './solid.ts';
import { NODE } from './tree.ts';

/*
 * These are asked a million times a check. A number that is handed back, or in, by a function too
 * long to be inlined costs an object each time: they write to `out` and read directions from arrays.
 */

/**
 * Signed room between node a of the moving tree, anywhere in motion node m, and node b: the
 * distance of their boxes along the axes of the still body, or minus their least overlap. Written
 * to `out[to]`, and how far apart the middles are to `out[to + 1]`.
 */
export const boxGapTo = (
  out: Float64Array,
  to: number,
  boxesA: Float64Array,
  a: number,
  boxesB: Float64Array,
  b: number,
  data: Float64Array,
  m: number,
): void => {
  const i = a * NODE;
  const j = b * NODE;
  const k = m * STRIDE;
  const cx = real(boxesA, i);
  const cy = real(boxesA, i + 1);
  const cz = real(boxesA, i + 2);
  const hx = real(boxesA, i + 3);
  const hy = real(boxesA, i + 4);
  const hz = real(boxesA, i + 5);
  // The farthest the box reaches along each of its axes.
  const fx = Math.abs(cx) + hx;
  const fy = Math.abs(cy) + hy;
  const fz = Math.abs(cz) + hz;
  let r0 = real(data, k);
  let r1 = real(data, k + 1);
  let r2 = real(data, k + 2);
  const wx = r0 * cx + r1 * cy + r2 * cz + real(data, k + CENTRE) - real(boxesB, j);
  const x =
    Math.abs(wx) -
    (Math.abs(r0) * hx + Math.abs(r1) * hy + Math.abs(r2) * hz) -
    (real(data, k + SPIN) * fx + real(data, k + SPIN + 1) * fy + real(data, k + SPIN + 2) * fz) -
    (real(data, k + HALF) + real(boxesB, j + 3));
  r0 = real(data, k + 3);
  r1 = real(data, k + 4);
  r2 = real(data, k + 5);
  const wy = r0 * cx + r1 * cy + r2 * cz + real(data, k + CENTRE + 1) - real(boxesB, j + 1);
  const y =
    Math.abs(wy) -
    (Math.abs(r0) * hx + Math.abs(r1) * hy + Math.abs(r2) * hz) -
    (real(data, k + SPIN + 3) * fx +
      real(data, k + SPIN + 4) * fy +
      real(data, k + SPIN + 5) * fz) -
    (real(data, k + HALF + 1) + real(boxesB, j + 4));
  r0 = real(data, k + 6);
  r1 = real(data, k + 7);
  r2 = real(data, k + 8);
  const wz = r0 * cx + r1 * cy + r2 * cz + real(data, k + CENTRE + 2) - real(boxesB, j + 2);
  const z =
    Math.abs(wz) -
    (Math.abs(r0) * hx + Math.abs(r1) * hy + Math.abs(r2) * hz) -
    (real(data, k + SPIN + 6) * fx +
      real(data, k + SPIN + 7) * fy +
      real(data, k + SPIN + 8) * fz) -
    (real(data, k + HALF + 2) + real(boxesB, j + 5));
  out[to + 1] = Math.sqrt(wx * wx + wy * wy + wz * wz);
  if (x <= 0 && y <= 0 && z <= 0) {
    out[to] = Math.max(x, y, z);
    return;
  }
  const px = x > 0 ? x : 0;
  const py = y > 0 ? y : 0;
  const pz = z > 0 ? z : 0;
  out[to] = Math.sqrt(px * px + py * py + pz * pz);
};

/**
 * The same room along the axes of the moving body, which turn with it: closer where that one's
 * faces, rather than the still one's, run across the way between them. Written to `out[to]`.
 */
export const turnedGapTo = (
  out: Float64Array,
  to: number,
  boxesA: Float64Array,
  a: number,
  boxesB: Float64Array,
  b: number,
  data: Float64Array,
  m: number,
): void => {
  const i = a * NODE;
  const j = b * NODE;
  const k = m * STRIDE;
  // The still box as seen from the moving body's origin, wherever that is.
  const wx = real(boxesB, j) - real(data, k + CENTRE);
  const wy = real(boxesB, j + 1) - real(data, k + CENTRE + 1);
  const wz = real(boxesB, j + 2) - real(data, k + CENTRE + 2);
  const hx = real(boxesB, j + 3) + real(data, k + HALF);
  const hy = real(boxesB, j + 4) + real(data, k + HALF + 1);
  const hz = real(boxesB, j + 5) + real(data, k + HALF + 2);
  const fx = Math.abs(wx) + hx;
  const fy = Math.abs(wy) + hy;
  const fz = Math.abs(wz) + hz;
  let most = -Infinity;
  let sum = 0;
  for (let c = 0; c < 3; c++) {
    const r0 = real(data, k + c);
    const r1 = real(data, k + 3 + c);
    const r2 = real(data, k + 6 + c);
    const e = k + SPIN + c;
    const room =
      Math.abs(r0 * wx + r1 * wy + r2 * wz - real(boxesA, i + c)) -
      (Math.abs(r0) * hx + Math.abs(r1) * hy + Math.abs(r2) * hz) -
      (real(data, e) * fx + real(data, e + 3) * fy + real(data, e + 6) * fz) -
      real(boxesA, i + 3 + c);
    if (room > most) most = room;
    if (room > 0) sum += room * room;
  }
  out[to] = most > 0 ? Math.sqrt(sum) : most;
};

/**
 * The room between node a, anywhere in motion node m, and the bar that a round piece is cut from,
 * whose numbers start at `at`: square to its axis, towards the middle of the box. Far closer than
 * that of the piece's box where a face runs along the round. Written to `out[to]`.
 */
export const barGapTo = (
  out: Float64Array,
  to: number,
  boxesA: Float64Array,
  a: number,
  rounds: Float64Array,
  at: number,
  data: Float64Array,
  m: number,
): void => {
  const i = a * NODE;
  const k = m * STRIDE;
  const cx = real(boxesA, i);
  const cy = real(boxesA, i + 1);
  const cz = real(boxesA, i + 2);
  const seen = (row: number): number =>
    real(data, k + 3 * row) * cx +
    real(data, k + 3 * row + 1) * cy +
    real(data, k + 3 * row + 2) * cz +
    real(data, k + CENTRE + row) -
    real(rounds, at + row);
  const [wx, wy, wz] = [seen(0), seen(1), seen(2)];
  const ax = real(rounds, at + AXIS);
  const ay = real(rounds, at + AXIS + 1);
  const az = real(rounds, at + AXIS + 2);
  const along = wx * ax + wy * ay + wz * az;
  let dx = wx - along * ax;
  let dy = wy - along * ay;
  let dz = wz - along * az;
  const off = Math.sqrt(dx * dx + dy * dy + dz * dz);
  // A middle on the axis has no direction, and no room.
  if (off > 0) {
    dx /= off;
    dy /= off;
    dz /= off;
  }
  let reach =
    Math.abs(dx) * real(data, k + HALF) +
    Math.abs(dy) * real(data, k + HALF + 1) +
    Math.abs(dz) * real(data, k + HALF + 2);
  for (let c = 0; c < 3; c++) {
    const half = real(boxesA, i + 3 + c);
    const turned = dx * real(data, k + c) + dy * real(data, k + 3 + c) + dz * real(data, k + 6 + c);
    const spin =
      Math.abs(dx) * real(data, k + SPIN + c) +
      Math.abs(dy) * real(data, k + SPIN + 3 + c) +
      Math.abs(dz) * real(data, k + SPIN + 6 + c);
    reach += Math.abs(turned) * half + spin * (Math.abs(real(boxesA, i + c)) + half);
  }
  out[to] = off - reach - real(rounds, at + OUTER);
};

/** The more of both rooms where that along the still body's axes is less than `enough`. */
export const roomTo = (
  out: Float64Array,
  to: number,
  boxesA: Float64Array,
  a: number,
  boxesB: Float64Array,
  b: number,
  data: Float64Array,
  m: number,
  enough: number,
): void => {
  boxGapTo(out, to, boxesA, a, boxesB, b, data, m);
  const room = real(out, to);
  if (room >= enough) return;
  turnedGapTo(out, to, boxesA, a, boxesB, b, data, m);
  if (room > real(out, to)) out[to] = room;
};

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

/** How much wider the motion makes node a's box, summed over the axes, ways along one axis left out. */
export const widening = (boxes: Float64Array, a: number, data: Float64Array, m: number): number => {
  const i = a * NODE;
  const k = m * STRIDE;
  let sum = 0;
  for (let c = 0; c < 3; c++) {
    const far = Math.abs(real(boxes, i + c)) + real(boxes, i + 3 + c);
    const e = k + SPIN + c;
    sum += far * (real(data, e) + real(data, e + 3) + real(data, e + 6));
  }
  const x = real(data, k + HALF);
  const y = real(data, k + HALF + 1);
  const z = real(data, k + HALF + 2);
  // A straight way along one axis is bounded by its box without loss; only the rest is loose.
  return sum + x + y + z - Math.max(x, y, z);
};
