import type { Dial } from './types.ts';

/** Where a step stands: its setoff, and how far belt and backing bring the abrasive face forward. */
export interface Stand {
  readonly setoff: number;
  /** Along the seat, mm: thickness over the cosine of the lean. */
  readonly belt: number;
  readonly backing: number;
  /** Retreat of a leaning face between rest and seat, mm. */
  readonly stackShift: number;
}

/** Position of the step from the bare platen's line at the height of the rest, mm. */
export const positionOf = ({ setoff, belt, backing, stackShift }: Stand): number =>
  setoff + belt + backing - stackShift;

/**
 * Turns and dial reading of a setting. The step is moved by a screw of `pitch` against a machine
 * that stands still, so a thicker belt or backing turns it as much as a larger setoff. Positive
 * turns open. The dial reads 0 at the zero.
 */
export const dialOf = (
  zero: Stand,
  last: Stand,
  now: Stand,
  pitch: number,
  divisions: number,
): Dial => {
  const position = positionOf(now);
  const turnsFromZero = (position - positionOf(zero)) / pitch;
  const whole = Math.round(turnsFromZero * divisions);
  return {
    position,
    turnsFromZero,
    turnsFromLast: (position - positionOf(last)) / pitch,
    division: ((whole % divisions) + divisions) % divisions,
    rounding: (turnsFromZero - whole / divisions) * pitch,
    setoffChange: now.setoff - last.setoff,
    beltChange: now.belt - last.belt,
    backingChange: now.backing - last.backing,
  };
};

/** Shifts of three settings by a change of the step's form, mm: of the first, the last and this. */
export interface Moves {
  readonly zero: number;
  readonly last: number;
  readonly now: number;
}

/** A dial reading after setoffs were moved; belts and backings stay what they are. */
export const movedDial = (
  dial: Dial,
  { zero, last, now }: Moves,
  pitch: number,
  divisions: number,
): Dial => {
  const turnsFromZero = dial.turnsFromZero + (now - zero) / pitch;
  const whole = Math.round(turnsFromZero * divisions);
  return {
    ...dial,
    position: dial.position + now,
    turnsFromZero,
    turnsFromLast: dial.turnsFromLast + (now - last) / pitch,
    division: ((whole % divisions) + divisions) % divisions,
    rounding: (turnsFromZero - whole / divisions) * pitch,
    setoffChange: dial.setoffChange + now - last,
  };
};
