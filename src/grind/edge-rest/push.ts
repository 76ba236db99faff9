import { atan2, cos, sin } from '../../core/trigonometry.ts';
import { degrees, radians } from '../../core/units.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import type { Standing, WheelAtSeat } from './stand.ts';

/** Where the wheel bears: directions from its axis to the two ends of the contact, degrees. */
export interface Contact {
  readonly from: number;
  readonly to: number;
}

/** Forces of the wheel for one unit of pressure, and their moment about the foot of the blade. */
interface Load {
  readonly y: number;
  readonly z: number;
  readonly moment: number;
}

const PARTS = 64;

/**
 * The wheel's load on a blade that turns about the lip as it is ground: each point is worn away as
 * fast as the blade turns into it, and wear is pressure times speed (Preston's law), so the
 * pressure grows with the lever of its normal about the lip. Friction m drags along the belt,
 * downwards positive. By the midpoint rule over the contact.
 */
const loadOf = (
  { radius, drop }: WheelAtSeat,
  { from, to }: Contact,
  { seat, touch }: Standing,
  friction: number,
): Load => {
  let load: Load = { y: 0, z: 0, moment: 0 };
  for (let i = 0; i < PARTS; i += 1) {
    const a = radians(from + ((i + 0.5) / PARTS) * (to - from));
    const normal: Vec2 = [cos(a), sin(a)];
    const at: Vec2 = [radius * normal[0] - radius, radius * normal[1] + drop];
    const lever = (at[1] - touch[1]) * normal[0] - (at[0] - touch[0]) * normal[1];
    const pressure = Math.max(0, lever);
    const fy = pressure * (normal[0] + friction * normal[1]);
    const fz = pressure * (normal[1] - friction * normal[0]);
    const arm: Vec2 = [at[0] - seat[0], at[1] - seat[1]];
    load = {
      y: load.y + fy,
      z: load.z + fz,
      moment: load.moment + arm[1] * fy - arm[0] * fz,
    };
  }
  return load;
};

/** What holds a blade at one contact and friction; heights above the seat, mm. */
export interface Hold {
  /** Height at which a push would take the wheel's load alone. */
  readonly centre: number;
  /** Height of the lip's contact. */
  readonly lip: number;
  /** Force on the seat for one unit of force square to it from the wheel; negative lifts. */
  readonly down: number;
}

/**
 * Balance of a level push P at height h_p, the wheel's load N, the lip and the seat. Along the seat
 * N_y + S = P, about the foot N_y h_c + S z_l = P h_p, which gives
 *
 *     S / P = (h_c - h_p) / (h_c - z_l)
 *
 * h_c the moment of the load about the foot over its level part, z_l the height of the lip's
 * contact. The lip carries load only while the push acts BELOW the contact. Friction on the seat
 * acts along the stroke and is not counted, nor is weight.
 */
export const holdOf = (
  wheel: WheelAtSeat,
  contact: Contact,
  standing: Standing,
  friction: number,
): Hold => {
  const { y, z, moment } = loadOf(wheel, contact, standing, friction);
  return { centre: moment / y, lip: standing.touch[1], down: -z / y };
};

/** Force of the lip as a share of a push at `height`. */
export const lipForce = ({ centre, lip }: Hold, height: number): number =>
  (centre - height) / (centre - lip);

/** Height of the push at which the lip carries `share` of it. */
export const pushFor = ({ centre, lip }: Hold, share: number): number =>
  centre - share * (centre - lip);

/** Directions from the wheel's axis to points of a contact, degrees. */
export const directionTo = ({ radius, drop }: WheelAtSeat, [y, z]: Vec2): number =>
  degrees(atan2(z - drop, y + radius));
