import { unaskedOf } from '../../shared/checks/unasked.ts';

/** Pairs of bodies that no check compares. */
export const unasked = unaskedOf([
  ['blade', 'pad', 'pressed'],
  ['hand', 'push', 'holds'],
  ['hand', 'pad', 'holds'],
  ['blade', 'collar', 'clamped'],
  ['collar', 'tang', 'clamped'],
  ['blade', 'tang', 'onePiece'],
  ['mount', 'rest', 'wholeRest'],
  ['blade', 'belt', 'ground'],
  ['blade', 'platen', 'ground'],
]);
