import { cos } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { standingAt, type AtWheel } from './at-lip.ts';
import { directionTo, holdOf, lipForce, pushFor, type Contact, type Hold } from './push.ts';
import { halfAt } from './half.ts';
import { inSeat } from '../in-seat.ts';
import type { HollowPlace, LipPush } from './types.ts';

/** How a blade is pushed. */
export interface Pushing {
  /** Friction of belt on blade; negative for a belt that runs up. */
  readonly friction: readonly [from: number, to: number];
  readonly reserve: number;
  readonly wheelShare: number;
}

/** Where the wheel bears on a hollow whose limits are reached, as directions from its axis. */
export const contactOf = (at: AtWheel, { circle, limits, standing }: HollowPlace): Contact => {
  const directions = [limits.lower, limits.upper].map((h) => {
    const w = circle.w - Math.sqrt(Math.max(0, circle.radius ** 2 - (h - circle.h) ** 2));
    return directionTo(at.wheel, inSeat(standing.origin, standing.tilt, [-w, h]));
  });
  return { from: Math.min(...directions), to: Math.max(...directions) };
};

/** The holds of a pass: at the first touch and on the whole hollow, at either end of the friction. */
const holdsOf = (
  at: AtWheel,
  place: HollowPlace,
  firstCentre: number,
  friction: Pushing['friction'],
): Hold[] => {
  const touch = standingAt(at, firstCentre, 0);
  const whole = { contact: contactOf(at, place), standing: place.standing };
  const first = touch && {
    contact: touchOf(at, firstCentre, touch),
    standing: touch,
  };
  return [whole, ...(first ? [first] : [])].flatMap(({ contact, standing }) =>
    friction.map((one) => holdOf(at.wheel, contact, standing, one)),
  );
};

/** Half width of what the wheel bears on at the first touch, degrees. */
export const TOUCH = 0.01;

const touchOf = (
  { section, face, wheel }: AtWheel,
  centre: number,
  { origin, tilt }: HollowPlace['standing'],
): Contact => {
  const h = centre * cos(radians(face.angle));
  const middle = directionTo(wheel, inSeat(origin, tilt, [-halfAt(section.near, h), h]));
  return { from: middle - TOUCH, to: middle + TOUCH };
};

/** The push window of a pass at one place, and the forces for a push at `height`. */
export const lipPush = (
  at: AtWheel,
  place: HollowPlace,
  firstCentre: number,
  { friction, reserve, wheelShare }: Pushing,
  height: number,
): LipPush => {
  const holds = holdsOf(at, place, firstCentre, friction);
  const forces = holds.map((hold) => lipForce(hold, height));
  return {
    from: Math.max(...holds.map((hold) => pushFor(hold, 1 - wheelShare))),
    to: Math.min(...holds.map((hold) => pushFor(hold, reserve))),
    lipForceMin: Math.min(...forces),
    lipForceMax: Math.max(...forces),
    seatForceMin: Math.min(...holds.map(({ down }) => down)),
  };
};
