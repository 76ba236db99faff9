import { dot3, type Frame, place, shift, type Side } from '../../../src/family/index.ts';
import { broughtTo, FINE, ROCKING, ROUNDS, stood } from '../../shared/pose/bring.ts';
import {
  createRoom,
  keptOf,
  placedPoints,
  stretchOf,
  type Room,
} from '../../shared/pose/placed-points.ts';
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

/** How a blade stands on the rest before it is settled. */
export interface Stance {
  readonly side: Side;
  /** The station of its spine line that stands at x = 0. */
  readonly u: number;
  readonly tilt: number;
  /** Where the load acts along the stroke: the middle of the belt unless stated. */
  readonly load?: number;
}

/** How near to seat or step a point of a settled blade may matter at another tilt, mm. */
const NEAR = 0.05;
/** So nearly settled, a blade is settled on its near points alone, mm. */
const ROUGH = 0.01;

/** Least cosine of the angle by which a settled blade is turned out of the stroke: 45 degrees. */
const ALONG = Math.SQRT1_2;

/** The points of a settled blade that lie near seat or step, with the edges between them. */
export const nearTo = (
  spine: Touchable,
  settled: Frame,
  { setoff }: Contacts,
  room: Room,
): Touchable => {
  const placed = placedPoints(spine.points, settled, room);
  const [low, far] = [NEAR, setoff - NEAR];
  return subset(
    spine,
    (i) => (placed[3 * i + 2] as number) <= low || (placed[3 * i + 1] as number) >= far,
  );
};

/** What of a blade may lie on the seat, and what against the step. */
export interface Close {
  readonly seat: Touchable;
  readonly step: Touchable;
}

/** The points of a settled blade that lie near seat and near step, with the edges between them. */
export const closeTo = (
  spine: Touchable,
  settled: Frame,
  { setoff }: Contacts,
  room: Room,
): Close => {
  const placed = placedPoints(spine.points, settled, room);
  return {
    seat: subset(spine, (i) => (placed[3 * i + 2] as number) <= NEAR),
    step: subset(spine, (i) => (placed[3 * i + 1] as number) >= setoff - NEAR),
  };
};

/**
 * Whether no point of a blade lies below the seat or behind the step, by more than what settling
 * leaves: what was settled on some of its points is then settled on all.
 */
const rests = ({ points, edges }: Touchable, f: Frame, c: Contacts, room: Room): boolean => {
  const { noseHalf, stepHalf, stepTop, setoff } = c;
  const placed = placedPoints(points, f, room);
  const back = setoff + FINE;
  let beyond = false;
  for (let i = 0; i < placed.length; i += 3) {
    const y = placed[i + 1] as number;
    const z = placed[i + 2] as number;
    if (z >= -FINE && y <= back) continue;
    const x = Math.abs(placed[i] as number);
    if (z < -FINE && x <= noseHalf) return false;
    if (y > back && x <= stepHalf && z <= stepTop) return false;
    beyond = true;
  }
  // An edge from a point beyond the end of nose or step may be in the way at that end.
  if (!beyond) return true;
  const over = stretchOf(placed, edges, noseHalf, room, 'over');
  for (let i = 0; i < over.z.length; i += 1) if ((over.z[i] as number) < -FINE) return false;
  const { y, z } = stretchOf(placed, edges, stepHalf, room, 'before');
  for (let i = 0; i < y.length; i += 1)
    if ((y[i] as number) > back && (z[i] as number) <= stepTop) return false;
  return true;
};

/** Brings a blade's points down on the seat and back against the step, and tells how far it moved. */
const brought = (
  { seat, step }: Close,
  frame: Frame,
  { u, load = 0 }: Stance,
  { noseHalf, stepHalf, stepTop, setoff }: Contacts,
  room: Room,
): { readonly frame: Frame; readonly moved: number } | undefined => {
  const low = placedPoints(seat.points, frame, room);
  const over = stretchOf(low, seat.edges, noseHalf, room, 'over');
  const below = lineBelow(over.x, over.z, load);
  if (!below) return undefined;
  const far = step === seat ? low : placedPoints(step.points, frame, room);
  const before = stretchOf(far, step.edges, stepHalf, room, 'before');
  const [xs, ys] = keptOf([before], (x, z) => z - below.a - below.b * x <= stepTop, room);
  const behind = lineAbove(xs, ys, load);
  if (!behind) return undefined;
  return broughtTo(frame, below, behind, setoff, (f) => centred(f, u));
};

/** The frame shifted along the stroke until the station u of the spine line stands at x = 0. */
const centred = (f: Frame, u: number): Frame => shift(f, [-place(f, [u, 0, 0])[0], 0, 0]);

/** A stance before anything holds the blade. */
const started = ({ side, tilt, u }: Stance): Frame => centred(stood(side, tilt, 'up'), u);

/**
 * A blade settled on all of its points as far as tells which of them lie near seat and step; none
 * when it has no point over the nose or before the step.
 */
export const roughlySettled = (
  spine: Touchable,
  stance: Stance,
  contacts: Contacts,
  room: Room,
): Frame | undefined => {
  let frame = started(stance);
  for (let round = 0; round < ROUNDS; round += 1) {
    const next = brought({ seat: spine, step: spine }, frame, stance, contacts, room);
    if (next === undefined) return undefined;
    frame = next.frame;
    if (next.moved < ROUGH) break;
  }
  return frame;
};

/** Whether a blade still lies along the stroke: on too few of its points it may turn right over. */
const isAlong = (frame: Frame, stance: Stance): boolean => dot3(frame.x, started(stance).x) > ALONG;

/** Turns a blade level and square on some of its points until nothing changes, and tells how it moved last. */
const turnedOn = (
  on: Close,
  from: Frame,
  stance: Stance,
  contacts: Contacts,
  room: Room,
): { readonly frame: Frame; readonly moved: number } | undefined => {
  let last: { readonly frame: Frame; readonly moved: number } | undefined;
  for (let round = 0; round < ROUNDS; round += 1) {
    const next = brought(on, last?.frame ?? from, stance, contacts, room);
    if (next === undefined) return undefined;
    last = next;
    if (next.moved < FINE) break;
  }
  return last;
};

/**
 * Settles a blade at one tilt: its spine comes down on the flat nose and back against the step.
 * Found on the corners of the blade's mesh (and where its edges leave nose and step), turning it
 * level and square until nothing changes; no formula of the solver enters. `close`, those of its
 * points that are near seat or step, are tried first, and where none are given those found so after
 * a few turns: the blade is settled on all its points where another is then in the way, or where
 * those few do not hold it, as they may not near the ends of a hollow spine.
 * None when the blade has no point over the nose or before the step, or does not come to rest.
 */
export const settleMesh = (
  spine: Touchable,
  stance: Stance,
  contacts: Contacts,
  room: Room = createRoom(),
  close?: Close,
): Frame | undefined => {
  const first = close ? started(stance) : roughlySettled(spine, stance, contacts, room);
  if (first === undefined) return undefined;
  const few = close ?? closeTo(spine, first, contacts, room);
  const some = turnedOn(few, first, stance, contacts, room);
  const held = some && some.moved < FINE && isAlong(some.frame, stance) ? some.frame : undefined;
  if (held && rests(spine, held, contacts, room)) return held;
  const all = turnedOn({ seat: spine, step: spine }, held ?? first, stance, contacts, room);
  return all && all.moved < ROCKING && isAlong(all.frame, stance) ? all.frame : undefined;
};
