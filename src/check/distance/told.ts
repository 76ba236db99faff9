import { place, WORLD, type Frame } from '../../geometry/frame.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import { labelOf, type Body } from './body.ts';
import { poseAt, sweepOf, track } from './motion.ts';
import type { View } from './view.ts';

/** A configuration: which sweep, where on it (0 to 1), and both bodies' poses there. */
export interface Moment {
  readonly sweep: number;
  readonly label: string;
  readonly t: number;
  readonly poseA: Frame;
  readonly poseB: Frame;
}

interface Located {
  readonly certified: true;
  /**
   * Never above the true least distance over all configurations by more than 0.001 mm, and
   * below it by `error` at most, mm. Zero or less: they touch, cross, or may within chord errors.
   */
  readonly gap: number;
  readonly error: number;
  readonly at: Moment;
  /** The nearest points there, world coordinates. */
  readonly pointA: Vec3;
  readonly pointB: Vec3;
}

/** They keep apart, this far. */
export interface Apart extends Located {
  readonly state: 'apart';
}

/** They touch or cross, or one is wholly inside the other. */
export interface Hit extends Located {
  readonly state: 'hit';
  readonly how: 'crossing' | 'inside';
}

/** Nowhere nearer than `beyond` mm. */
export interface Beyond {
  readonly state: 'beyond';
  readonly certified: true;
  readonly beyond: number;
}

export type Clearance = Apart | Hit | Beyond;

/** The nearest found over all pairs of solids, in world terms. */
export interface Found {
  readonly at: Moment;
  readonly pointA: Vec3;
  readonly pointB: Vec3;
}

/** Where a body is at a place of a sweep. */
export const poseOfBody = (body: Body, sweep: number, t: number): Frame => {
  const at = sweepOf(body.motion, sweep);
  return at ? poseAt(track(at), t) : WORLD;
};

/** What was found at a place of a sweep, as the world sees it. */
export const located = (
  a: Body,
  b: Body,
  sweep: number,
  t: number,
  /** Nearest points of the moving and the still body, in the coordinates of the still one. */
  points: readonly [Vec3, Vec3],
  { swapped }: View,
): Found => {
  const poseA = poseOfBody(a, sweep, t);
  const poseB = poseOfBody(b, sweep, t);
  const label = labelOf(a, b, sweep);
  const at = { sweep, label, t, poseA, poseB };
  return swapped
    ? { at, pointA: place(poseA, points[1]), pointB: place(poseA, points[0]) }
    : { at, pointA: place(poseB, points[0]), pointB: place(poseB, points[1]) };
};
