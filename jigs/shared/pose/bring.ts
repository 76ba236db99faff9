import {
  cos,
  cross3,
  type Frame,
  radians,
  shift,
  type Side,
  sin,
  type Vec3,
} from '../../../src/family/index.ts';
import { levelled } from './placed-points.ts';
import type { Line } from './support-line.ts';

/** Rounds of settling at most, and the move in one below which a blade is settled, mm. */
export const ROUNDS = 60;
export const FINE = 1e-9;
/** A load right over a point lets a blade rock on it, between stances no further apart than this, mm. */
export const ROCKING = 0.5;
/** A slope counts as the move of a point so far away, mm. */
const ARM = 100;

/**
 * Axes of a blade whose ground side faces the belt, its line along the stroke: edge up and tilted by
 * `tilt` degrees, or edge down and its spine tilted as much towards the belt.
 */
export const stood = (side: Side, tilt: number, edge: 'up' | 'down'): Frame => {
  const [s, c] = [sin(radians(tilt)), cos(radians(tilt))];
  const away = side === 'left' ? -1 : 1;
  const y: Vec3 = edge === 'up' ? [0, -s, c] : [0, s, -c];
  const z: Vec3 = [0, away * c, away * s];
  return { origin: [0, 0, 0], x: cross3(y, z), y, z };
};

/**
 * A blade brought on the seat by the line below it and to the place `at` by the line against which
 * it comes, turned level and square by their slopes, then centred; and how far that moved it.
 */
export const broughtTo = (
  frame: Frame,
  below: Line,
  against: Line,
  at: number,
  centred: (f: Frame) => Frame,
): { readonly frame: Frame; readonly moved: number } => {
  const down = levelled(shift(frame, [0, 0, -below.a]), below.b, 2);
  const back = levelled(shift(down, [0, -against.a, 0]), against.b, 1);
  return {
    frame: centred(shift(back, [0, at, 0])),
    moved: Math.max(
      Math.abs(below.a),
      Math.abs(against.a - at),
      ARM * Math.abs(below.b),
      ARM * Math.abs(against.b),
    ),
  };
};
