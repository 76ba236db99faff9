/** So far beyond what is asked a gap is told to the slack, mm; a farther one is told as the least it is. */
export const NEAR = 2;

/**
 * So far beyond what is asked a gap is told while a number is dragged, mm: bodies that slide past each
 * other a millimetre apart would be measured all along, for a number that nobody waits for.
 */
export const AT_HAND = 0.5;
