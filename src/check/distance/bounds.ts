import { real } from './flat.ts';
import { AXIS, OUTER } from './pieces.ts';
import { CENTRE, HALF, SPIN, STRIDE } from './relative.ts';
import { NODE } from './tree.ts';

/*
 * These are asked a million times a check. A number that is handed back, or in, by a function too
 * long to be inlined costs an object each time: they write to `out`.
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
