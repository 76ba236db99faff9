import type { Unasked } from '../../../src/family/index.ts';
import { words } from './words.ts';

/** Pairs of bodies that no check compares, each with its reason. */
export const unaskedOf = (
  pairs: readonly (readonly [string, string, keyof typeof words.unasked])[],
): Unasked[] => pairs.map(([a, b, reason]) => ({ a, b, reason: words.unasked[reason] }));
