import { pitchOf, type Reading } from '../../src/family/index.ts';

/** Feed screw M6, coarse: mm a turn; and the knob's divisions. */
export const PITCH = pitchOf('M6');
export const DIVISIONS = 50;

/** Turns from the pin zero taken on this very belt, positive opening, and what the knob shows. */
export const dialOf = (fromZero: number, turnsFromLast: number): Required<Reading>['dial'] => {
  const turns = fromZero / PITCH;
  const divisions = Math.round(turns * DIVISIONS);
  return {
    turnsFromZero: turns,
    turnsFromLast,
    division: ((divisions % DIVISIONS) + DIVISIONS) % DIVISIONS,
  };
};
