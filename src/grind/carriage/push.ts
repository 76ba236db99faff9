import { cos, sin } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import type { CarriagePush } from './types.ts';

/** The carriage standing against the belt, mm and degrees. */
export interface Standing {
  /** Contact with the belt: height above the base along the face. The lowest is the worst. */
  readonly contact: number;
  /** Foot and heel on the base: the foot from the abrasive face, the heel behind the foot. */
  readonly footCentre: number;
  readonly heelBehind: number;
  readonly lean: number;
}

/** Belt force for a normal force of 1: square to the face and dragging down it; (y, z). */
const beltForce = (lean: number, friction: number): readonly [number, number] => {
  const [c, s] = [cos(radians(lean)), sin(radians(lean))];
  return [c + friction * s, s - friction * c];
};

/** Moment of the belt that keeps the heel down, per unit of its force along the base. */
const holding = ({ contact, footCentre, lean }: Standing, friction: number): number => {
  const t = radians(lean);
  const [y, z] = beltForce(lean, friction);
  const at: readonly [number, number] = [-contact * sin(t) - footCentre, contact * cos(t)];
  return (at[1] * y - at[0] * z) / y;
};

/**
 * Force on the heel screw as a share of the push, while the foot is not yet at its fence. Along
 * the base N (cos t + m sin t) = P; about the foot, with the belt's pressure at (y_b, z_b), the
 * push at h_p and the heel L behind,
 *
 *     R L = N ((cos t + m sin t) z_b - (sin t - m cos t) (y_b - y_c)) - P h_p
 *
 * so on a square platen R / P = (z_b - m y_c - h_p) / L: a push must act BELOW the contact, by more
 * the farther the foot stands behind the belt. The weight and a hand pressing down are not
 * counted. Derived here; tests balance the forces.
 */
export const heelForce = (at: Standing, height: number, friction: number): number =>
  (holding(at, friction) - height) / at.heelBehind;

/** Highest push that leaves `reserve` on the heel: `heelForce` solved for h_p. */
export const highestPush = (at: Standing, reserve: number, friction: number): number =>
  holding(at, friction) - reserve * at.heelBehind;

/** The push on a carriage over a range of friction; every force is monotone in friction. */
export const carriagePush = (
  at: Standing,
  { height, reserve, friction }: { height: number; reserve: number; friction: readonly number[] },
): CarriagePush => {
  const forces = friction.map((m) => heelForce(at, height, m));
  const down = friction.map((m) => {
    const [y, z] = beltForce(at.lean, m);
    return -z / y;
  });
  return {
    to: Math.min(...friction.map((m) => highestPush(at, reserve, m))),
    heelForceMin: Math.min(...forces),
    heelForceMax: Math.max(...forces),
    baseForceMin: Math.min(...down),
  };
};
