import { atan, atan2, cos, sin, tan } from '../../core/trigonometry.ts';
import { degrees, radians } from '../../core/units.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import type { Standing, WheelAtSeat } from './stand.ts';

/** Where the wheel bears: directions from its axis to the two ends of the contact, degrees. */
export interface Contact {
  readonly from: number;
  readonly to: number;
}

/**
 * The wheel's load on a blade that turns about the lip as it is ground: each point is worn away as
 * fast as the blade turns into it, and wear is pressure times speed (Preston's law), so the
 * pressure grows with the lever of its normal about the lip. At the direction a that is
 *
 *     p = (dz - z_l) cos a + (R + y_l) sin a
 *
 * from the lip's contact (y_l, z_l), and none where that is negative. Over a contact from the
 * middle a_m by t to either side, with p_m the pressure in its middle and p' its rise there,
 * friction m = tan f dragging along the belt, downwards positive,
 *
 *     k = (t - sin t cos t) / (t + sin t cos t) p' / p_m        the load leans atan k more than a_m
 *     e = 2 sin t / (t + sin t cos t)                           a_l = a_m + atan k - f
 *
 * N_z / N_y = tan a_l, and the load's moment about the foot (y_s, 0) over N_y
 *
 *     h_c = dz + (R + y_s) tan a_l + R e sin f / (sqrt(1 + k^2) cos a_l)
 *
 * which rises or falls with f throughout: its derivative is what R e cos(a_l + f) / sqrt(1 + k^2)
 * is more than R + y_s, over the square of cos a_l.
 */
const loadOf = (
  { radius, drop }: WheelAtSeat,
  { from, to }: Contact,
  { seat, touch }: Standing,
  friction: number,
): { readonly centre: number; readonly direction: number } => {
  const [level, up] = [radius + touch[0], drop - touch[1]];
  const start = Math.max(radians(from), atan2(-up, level));
  const half = (radians(to) - start) / 2;
  const middle = start + half;
  // No pressure anywhere is no load.
  if (!(half > 0)) return { centre: NaN, direction: NaN };
  const [c, s] = [cos(middle), sin(middle)];
  const both = half + sin(half) * cos(half);
  const lean =
    (((half - sin(half) * cos(half)) / both) * (level * c - up * s)) / (up * c + level * s);
  const drag = atan(friction);
  const direction = middle + atan(lean) - drag;
  const length = (2 * sin(half)) / both / Math.hypot(1, lean);
  return {
    centre:
      drop + (radius + seat[0]) * tan(direction) + (radius * length * sin(drag)) / cos(direction),
    direction,
  };
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
  const { centre, direction } = loadOf(wheel, contact, standing, friction);
  return { centre, lip: standing.touch[1], down: -tan(direction) };
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
