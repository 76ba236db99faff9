import { atan } from '../../core/trigonometry.ts';
import { degrees } from '../../core/units.ts';
import type { Shape } from '../../blade/shape.ts';
import { turnedTo, type Turned } from './mount.ts';

/** Less turn than this needs no setting of its own, degrees. */
const STRAIGHT = 0.5;
/** Most by which an edge turns, degrees: no belly of a blade may turn by more. */
const STEEPEST = 80;
const LOOKS = 400;
const HALVINGS = 60;

const directionAt = ({ edge }: Shape, u: number): number => degrees(atan(edge.slope(u)));

/**
 * How far the edge falls from its direction at u to its end, degrees; 0 where it does not. It ends
 * at the tip, or where the outline falls as the square end of a blade does, which is not ground.
 */
export const tipTurn = (shape: Shape, u: number): number => {
  const [start, last] = [directionAt(shape, u), shape.length * (1 - 1e-6)];
  const falls = Array.from(
    { length: LOOKS + 1 },
    (_, i) => start - directionAt(shape, last + ((u - last) * i) / LOOKS),
  );
  return Math.max(0, falls.find((fall) => fall <= STEEPEST) ?? 0);
};

/** The first place after u at which the edge has fallen by `turn`. */
const placeOfTurn = (shape: Shape, u: number, turn: number): number => {
  const start = directionAt(shape, u);
  const fallen = (at: number): boolean => start - directionAt(shape, at) >= turn;
  const step = (shape.length - u) / LOOKS;
  const first = Array.from({ length: LOOKS }, (_, i) => u + (i + 1) * step).find(fallen);
  if (first === undefined) return shape.length;
  let [near, far] = [first - step, first];
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (near + far) / 2;
    if (fallen(middle)) far = middle;
    else near = middle;
  }
  return far;
};

/**
 * How a blade is turned for each of `count` settings after the one along its straight edge. Each
 * grinds a plane that touches the wanted edge line at one place; together they leave a polygon
 * about the edge, and its corners are thicker by their distance from the edge times tan a. Turns are
 * even: with an edge that falls by D in all, by D / (count + 1/2) from one to the next, so that
 * the last one spans the tip as the others span their neighbours.
 */
export const tipFacets = (shape: Shape, u: number, count: number): Turned[] => {
  const whole = tipTurn(shape, u);
  if (whole < STRAIGHT) return [];
  return Array.from({ length: count }, (_, i) =>
    turnedTo(shape, placeOfTurn(shape, u, ((i + 1) * whole) / (count + 0.5))),
  );
};
