import { text, type Family } from '../../src/family/index.ts';
import { parameters } from './parameters.ts';
import { solve } from './solve.ts';

const { label, meaning } = text.family.carriage;

/** The guided-angle carriage: blade on a tipped upright, stopped by a fence. */
export const carriage: Family = { id: 'carriage', label, meaning, parameters, solve };
