import {
  cross3,
  place,
  radians,
  shift,
  unit3,
  type Frame,
  type Side,
  type Vec3,
} from '../../../src/family/index.ts';
import { lineAbove, lineBelow } from './support-line.ts';
import type { Touchable } from './touchable.ts';

/** The real contact geometry: nose and step as parts, seat frame, mm. */
export interface Contacts {
  readonly noseHalf: number;
  readonly stepHalf: number;
  readonly stepTop: number;
  /** Front face of the step. */
  readonly setoff: number;
}

const ROUNDS = 60;
const FINE = 1e-9;

/** Axes of a blade whose ground side faces the belt, spine along the stroke, tilted by `tilt`. */
const upright = (side: Side, tilt: number): Frame => {
  const [s, c] = [Math.sin(radians(tilt)), Math.cos(radians(tilt))];
  const away = side === 'left' ? -1 : 1;
  const y: Vec3 = [0, -s, c];
  const z: Vec3 = [0, away * c, away * s];
  return { origin: [0, 0, 0], x: cross3(y, z), y, z };
};

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

export const placedPoints = (points: Float64Array, f: Frame): Float64Array => {
  const out = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    const [u, v, w] = [points[i] ?? 0, points[i + 1] ?? 0, points[i + 2] ?? 0];
    for (const k of [0, 1, 2] as const)
      out[i + k] = f.origin[k] + u * f.x[k] + v * f.y[k] + w * f.z[k];
  }
  return out;
};

/**
 * Settles a blade at one tilt: its spine comes down on the flat nose and back against the step,
 * with the load at x = `load` (the middle of the belt), and the station `u` of its spine line
 * stands at x = 0. Found on the corners of the blade's mesh (and where its edges leave nose and
 * step), turning it level and square until nothing changes; no formula of the solver enters.
 * None when the blade has no point over the nose or before the step.
 */
export const settleMesh = (
  { points, edges }: Touchable,
  side: Side,
  u: number,
  tilt: number,
  contacts: Contacts,
  load = 0,
): Frame | undefined => {
  const centred = (f: Frame): Frame => shift(f, [-place(f, [u, 0, 0])[0], 0, 0]);
  let frame = centred(upright(side, tilt));
  for (let round = 0; round < ROUNDS; round += 1) {
    const placed = placedPoints(points, frame);
    const over = stretchOf(placed, edges, contacts.noseHalf);
    const below = lineBelow(over.x, over.z, load);
    if (!below) return undefined;
    const before = stretchOf(placed, edges, contacts.stepHalf);
    const low = before.z.map((z, i) => z - below.a - below.b * (before.x[i] ?? 0));
    const isLow = (_: number, i: number): boolean => (low[i] ?? Infinity) <= contacts.stepTop;
    const behind = lineAbove(before.x.filter(isLow), before.y.filter(isLow), load);
    if (!behind) return undefined;
    frame = levelled(shift(frame, [0, 0, -below.a]), below.b, 2);
    frame = levelled(shift(frame, [0, -behind.a, 0]), behind.b, 1);
    frame = centred(shift(frame, [0, contacts.setoff, 0]));
    const moved = Math.max(
      Math.abs(below.a),
      Math.abs(behind.a - contacts.setoff),
      100 * Math.abs(below.b),
      100 * Math.abs(behind.b),
    );
    if (moved < FINE) break;
  }
  return frame;
};
