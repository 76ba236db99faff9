import { UNASKED_OF_RESTS, unaskedOf } from '../../shared/checks/unasked.ts';

/** Pairs of bodies that no check compares. */
export const unasked = unaskedOf([
  ...UNASKED_OF_RESTS,
  // Ends of lip and seat are flush: the stop's contact with the seat speaks for both.
  ['collar', 'lip', 'flush'],
]);
