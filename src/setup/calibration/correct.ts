/** What the dial of a setting shows, with its screw. */
export interface DialReading {
  /** Positive opens, away from the belt. */
  readonly turnsFromZero: number;
  /** mm (or degrees) of the setting for a turn. */
  readonly perTurn: number;
  readonly divisions: number;
}

export interface CorrectedDial {
  readonly turnsFromZero: number;
  /** Whole divisions to read after the whole turns, 0 to divisions - 1. */
  readonly division: number;
  /** Setting really met less the one wanted, by the rounding to whole divisions. */
  readonly rounding: number;
}

/**
 * The dial reading that meets a setting on a fixture which stands `offset` beyond what its dial
 * says: the reading is taken that much less, with the zero left as it is.
 */
export const correctedDial = (
  { turnsFromZero, perTurn, divisions }: DialReading,
  offset: number,
): CorrectedDial => {
  const turns = turnsFromZero - offset / perTurn;
  const whole = Math.round(turns * divisions);
  return {
    turnsFromZero: turns,
    division: ((whole % divisions) + divisions) % divisions,
    rounding: (whole / divisions - turns) * perTurn,
  };
};

/** What a design remembers of a calibration, in the unit of its setting. */
export interface CalibrationRecord {
  readonly offset: number;
  /** Standard uncertainty. */
  readonly uncertainty: number;
  readonly note: string;
}

/**
 * The record after a further calibration, made with the dial already corrected by the one before:
 * what was found then remains and what is found now is added. The uncertainty is that of the new
 * readings alone, since they measure the corrected fixture itself.
 */
export const updatedRecord = (
  before: CalibrationRecord | undefined,
  found: { readonly offset: number; readonly uncertainty: number },
  note: string,
): CalibrationRecord => ({
  offset: (before?.offset ?? 0) + found.offset,
  uncertainty: found.uncertainty,
  note,
});
