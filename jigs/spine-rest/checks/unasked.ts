import { UNASKED_OF_RESTS, unaskedOf } from '../../shared/checks/unasked.ts';

/** Pairs of bodies that no check compares. */
export const unasked = unaskedOf([...UNASKED_OF_RESTS, ['blade', 'platen', 'ground']]);
