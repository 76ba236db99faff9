import {
  cos,
  cross3,
  type Frame,
  place,
  radians,
  shift,
  type Side,
  sin,
  type Vec3,
} from '../../../src/family/index.ts';
import { keptOf, levelled, placedPoints, stretchOf } from '../../shared/pose/placed-points.ts';
import { lineAbove, lineBelow } from '../../shared/pose/support-line.ts';
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
  const [s, c] = [sin(radians(tilt)), cos(radians(tilt))];
  const away = side === 'left' ? -1 : 1;
  const y: Vec3 = [0, -s, c];
  const z: Vec3 = [0, away * c, away * s];
  return { origin: [0, 0, 0], x: cross3(y, z), y, z };
};

/**
 * Settles a blade at one tilt: its spine comes down on the flat nose and back against the step,
 * with the load at x = `load` (the middle of the belt), and the station `u` of its spine line
 * stands at x = 0. Found on the corners of the blade's mesh (and where its edges leave nose and
 * step), turning it level and square until nothing changes; no formula of the solver enters. A
 * `start` at that tilt that is nearly settled saves turns.
 * None when the blade has no point over the nose or before the step.
 */
export const settleMesh = (
  { points, edges }: Touchable,
  side: Side,
  u: number,
  tilt: number,
  contacts: Contacts,
  load = 0,
  start = upright(side, tilt),
): Frame | undefined => {
  const centred = (f: Frame): Frame => shift(f, [-place(f, [u, 0, 0])[0], 0, 0]);
  let frame = centred(start);
  for (let round = 0; round < ROUNDS; round += 1) {
    const placed = placedPoints(points, frame);
    const over = stretchOf(placed, edges, contacts.noseHalf);
    const below = lineBelow(over.x, over.z, load);
    if (!below) return undefined;
    const before = stretchOf(placed, edges, contacts.stepHalf);
    const [xs, ys] = keptOf([before], (x, z) => z - below.a - below.b * x <= contacts.stepTop);
    const behind = lineAbove(xs, ys, load);
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

/** How near to seat or step a point of a settled blade may matter at another tilt, mm. */
const NEAR = 0.05;

/** The points of a settled blade that lie near seat or step, with the edges between them. */
export const closeTo = (spine: Touchable, settled: Frame, { setoff }: Contacts): Touchable => {
  const placed = placedPoints(spine.points, settled);
  return subset(
    spine,
    (i) =>
      (placed[3 * i + 2] ?? Infinity) <= NEAR || (placed[3 * i + 1] ?? -Infinity) >= setoff - NEAR,
  );
};

/**
 * Whether no point of a blade lies below the seat or behind the step, by more than what settling
 * leaves: what was settled on some of its points is then settled on all.
 */
export const rests = ({ points, edges }: Touchable, f: Frame, c: Contacts): boolean => {
  const { noseHalf, stepHalf, stepTop, setoff } = c;
  const placed = placedPoints(points, f);
  const over = stretchOf(placed, edges, noseHalf);
  for (let i = 0; i < over.z.length; i += 1) if ((over.z[i] as number) < -FINE) return false;
  const { y, z } = stretchOf(placed, edges, stepHalf);
  for (let i = 0; i < y.length; i += 1) {
    if ((y[i] as number) > setoff + FINE && (z[i] as number) <= stepTop) return false;
  }
  return true;
};
