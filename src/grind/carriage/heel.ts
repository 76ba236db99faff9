import { anglePerTurn, screwExtension, type Carriage } from './screw.ts';
import type { Heel } from './types.ts';

/** The knob of a heel screw: advance for a turn, mm, and its divisions. */
export interface Knob {
  readonly screwPitch: number;
  readonly divisions: number;
}

/**
 * The heel screw at a tilt (degrees against the base). Zero is the upright parallel to the
 * abrasive face, a tilt of `lean`; the knob reads 0 there and positive turns tip further.
 */
export const heelAt = (
  carriage: Carriage,
  tilt: number,
  lastTilt: number,
  lean: number,
  { screwPitch, divisions }: Knob,
): Heel => {
  const extension = screwExtension(carriage, tilt);
  const turnsFromZero = (extension - screwExtension(carriage, lean)) / screwPitch;
  const whole = Math.round(turnsFromZero * divisions);
  const degreesPerTurn = anglePerTurn(carriage, tilt, screwPitch);
  return {
    extension,
    turnsFromZero,
    turnsFromLast: (extension - screwExtension(carriage, lastTilt)) / screwPitch,
    division: ((whole % divisions) + divisions) % divisions,
    rounding: (turnsFromZero - whole / divisions) * degreesPerTurn,
    degreesPerTurn,
  };
};
