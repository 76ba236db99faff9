import type { Unasked } from '../../../src/family/index.ts';
import { words } from './words.ts';

/** A pair of bodies that no check compares, and why. */
type Pair = readonly [string, string, keyof typeof words.unasked];

/** Of every rest: the blade led by hand along a stop. */
export const UNASKED_OF_RESTS: readonly Pair[] = [
  ['blade', 'pad', 'pressed'],
  ['hand', 'push', 'holds'],
  ['hand', 'pad', 'holds'],
  ['blade', 'stick', 'pressed'],
  ['handOnStick', 'stick', 'holds'],
  ['blade', 'collar', 'clamped'],
  ['collar', 'tang', 'clamped'],
  ['blade', 'tang', 'onePiece'],
  ['mount', 'rest', 'wholeRest'],
  ['blade', 'belt', 'ground'],
];

/** Pairs of bodies that no check compares, each with its reason. */
export const unaskedOf = (pairs: readonly Pair[]): Unasked[] =>
  pairs.map(([a, b, reason]) => ({ a, b, reason: words.unasked[reason] }));
