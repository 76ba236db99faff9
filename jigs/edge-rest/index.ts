import { text, type Family } from '../../src/family/index.ts';
import { parameters } from './parameters.ts';
import { solve } from './solve.ts';

const { label, meaning } = text.family.edgeRest;

/** The edge-referenced rest: edge down, on a seat and against a lip under a wheel. */
export const edgeRest: Family = { id: 'edge-rest', label, meaning, parameters, solve };
