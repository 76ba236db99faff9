import { unaskedOf } from '../../shared/checks/unasked.ts';

/** Pairs of bodies that no check compares. */
export const unasked = unaskedOf([
  ['carriage', 'hand', 'holds'],
  ['blade', 'tang', 'onePiece'],
  ['mount', 'rest', 'wholeRest'],
  ['belt', 'blade', 'ground'],
  ['blade', 'platen', 'ground'],
]);
