import { text } from '../../../src/family/index.ts';

/** Names, notes and purposes of the carriage's parts. */
export const words = text.family.carriage.parts;
