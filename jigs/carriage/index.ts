import type { Family } from '../../src/family/index.ts';
import { card } from './card.ts';
import { solve } from './solve.ts';

/** The guided-angle carriage: blade on a tipped upright, stopped by a fence. */
export const carriage: Family = { ...card, solve };
