import type { Family } from '../../src/family/index.ts';
import { card } from './card.ts';
import { solve } from './solve.ts';

/** The edge-referenced rest: edge down, on a seat and against a lip under a wheel. */
export const edgeRest: Family = { ...card, solve };
