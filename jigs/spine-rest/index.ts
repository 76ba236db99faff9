import type { Family } from '../../src/family/index.ts';
import { card } from './card.ts';
import { solve } from './solve.ts';

/** The spine-referenced rest: edge up, spine on a nose and against a step. */
export const spineRest: Family = { ...card, solve };
