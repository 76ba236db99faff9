/** Chord error of the parts that are checked, mm; it is taken off every gap. */
export const CHECK_CHORD = 0.005;
