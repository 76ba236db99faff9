import { text, type Family } from '../../src/family/index.ts';
import { parameters } from './parameters.ts';
import { solve } from './solve.ts';

const { label, meaning } = text.family.spineRest;

/** The spine-referenced rest: edge up, spine on a nose and against a step. */
export const spineRest: Family = { id: 'spine-rest', label, meaning, parameters, solve };
