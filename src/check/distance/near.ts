/** So far beyond what is asked a gap is told to the slack, mm; a farther one is told as the least it is. */
export const NEAR = 2;
