import {
  cross3,
  place,
  radians,
  shift,
  type Frame,
  type Side,
  type Vec3,
} from '../../../src/family/index.ts';
import { levelled, placedPoints, stretchOf } from '../../shared/pose/placed-points.ts';
import { lineAbove, lineBelow, type Line } from '../../shared/pose/support-line.ts';
import { subset, type Touchable } from '../../shared/pose/touchable.ts';

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

/** What nose and step bear on, before a frame is corrected by it. */
interface Bearing {
  /** Line under what lies over the nose, z = a + b x. */
  readonly below: Line;
  /** Line behind what stands before the step, y = a + b x. */
  readonly behind: Line;
}

const bearingOf = (
  placed: Float64Array,
  edges: Uint32Array,
  contacts: Contacts,
  load: number,
): Bearing | undefined => {
  const over = stretchOf(placed, edges, contacts.noseHalf);
  const below = lineBelow(over.x, over.z, load);
  if (!below) return undefined;
  const before = stretchOf(placed, edges, contacts.stepHalf);
  const low = before.z.map((z, i) => z - below.a - below.b * (before.x[i] ?? 0));
  const isLow = (_: number, i: number): boolean => (low[i] ?? Infinity) <= contacts.stepTop;
  const behind = lineAbove(before.x.filter(isLow), before.y.filter(isLow), load);
  return behind && { below, behind };
};

/** Points farther than this from both lines do not bear while a frame is refined, mm. */
const NEARBY = 0.5;

/** The points near either line, with the edges that have one of them; the others' ends kept too. */
const nearby = (
  { points, edges }: Touchable,
  placed: Float64Array,
  { below, behind }: Bearing,
): Touchable => {
  const near = (i: number): boolean => {
    const [x, y, z] = [placed[3 * i] ?? 0, placed[3 * i + 1] ?? 0, placed[3 * i + 2] ?? 0];
    return z - below.a - below.b * x < NEARBY || behind.a + behind.b * x - y < NEARBY;
  };
  const kept = new Uint8Array(points.length / 3).map((_, i) => (near(i) ? 1 : 0));
  for (let e = 0; e < edges.length; e += 2) {
    const [p, q] = [edges[e] ?? 0, edges[e + 1] ?? 0];
    if (kept[p] === 1 && kept[q] === 0) kept[q] = 2;
    if (kept[q] === 1 && kept[p] === 0) kept[p] = 2;
  }
  return subset({ points, edges }, (_u, _v, _w, i) => kept[i] !== 0);
};

/**
 * Settles a blade at one tilt: its spine comes down on the flat nose and back against the step,
 * with the load at x = `load` (the middle of the belt), and the station `u` of its spine line
 * stands at x = 0. Found on the corners of the blade's mesh (and where its edges leave nose and
 * step), turning it level and square until nothing changes; no formula of the solver enters.
 * After the first turn only the points nearby are looked at, and all of them again at the end.
 * None when the blade has no point over the nose or before the step.
 */
export const settleMesh = (
  whole: Touchable,
  side: Side,
  u: number,
  tilt: number,
  contacts: Contacts,
  load = 0,
): Frame | undefined => {
  const centred = (f: Frame): Frame => shift(f, [-place(f, [u, 0, 0])[0], 0, 0]);
  let frame = centred(upright(side, tilt));
  let looked = whole;
  for (let round = 0; round < ROUNDS; round += 1) {
    const placed = placedPoints(looked.points, frame);
    const bearing = bearingOf(placed, looked.edges, contacts, load);
    if (!bearing) return undefined;
    const { below, behind } = bearing;
    frame = levelled(shift(frame, [0, 0, -below.a]), below.b, 2);
    frame = levelled(shift(frame, [0, -behind.a, 0]), behind.b, 1);
    frame = centred(shift(frame, [0, contacts.setoff, 0]));
    const moved = Math.max(
      Math.abs(below.a),
      Math.abs(behind.a - contacts.setoff),
      100 * Math.abs(below.b),
      100 * Math.abs(behind.b),
    );
    if (moved >= FINE)
      looked = looked === whole && round === 1 ? nearby(whole, placed, bearing) : looked;
    else if (looked === whole) break;
    else looked = whole;
  }
  return frame;
};
