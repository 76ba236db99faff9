import { cos, sin, tan } from '../../core/trigonometry.ts';
import { degrees, radians } from '../../core/units.ts';

/** A carriage on a round foot and a round-tipped heel screw, mm. */
export interface Carriage {
  /** Between the centres of foot and tip, along the sole. */
  readonly base: number;
  readonly footRadius: number;
  readonly tipRadius: number;
}

/**
 * Extension of the heel screw's tip square to the sole, from level, mm, for a tilt of `angle`.
 *
 * Both rounds stand on the base. Level, the foot's centre is r_f high and the tip's r_t, so in the
 * carriage the tip's centre lies L behind the foot's and z - (r_t - r_f) below it. Tilted by a,
 *
 *     r_f + L sin a - (z - r_t + r_f) cos a = r_t
 *     z = L tan a + (r_f - r_t) (1 / cos a - 1)
 *
 * Domain: 0 <= a < 90. Derived here. With equal radii this is the tangent bar, z = L tan a.
 */
export const screwExtension = ({ base, footRadius, tipRadius }: Carriage, angle: number): number =>
  base * tan(radians(angle)) + (footRadius - tipRadius) * (1 / cos(radians(angle)) - 1);

/** Degrees that one more turn adds at `angle`: pitch / (dz/da), local. */
export const anglePerTurn = (
  { base, footRadius, tipRadius }: Carriage,
  angle: number,
  pitch: number,
): number => {
  const [c, s] = [cos(radians(angle)), sin(radians(angle))];
  return degrees((pitch * c * c) / (base + (footRadius - tipRadius) * s));
};
