import { choiceParameter, number, ofSheet, text, type ValuesOf } from '../../src/family/index.ts';

const words = text.family.bevelGauge.parameters;

/** Every number and choice: words, unit, least, initial and greatest value. */
export const parameters = {
  thickness: ofSheet(number(words.thickness, 'mm', 2, 4, 10, 0.5)),
  height: number(words.height, 'mm', 30, 60, 120, 1),
  top: number(words.top, 'mm', 15, 20, 40, 1),
  screw: choiceParameter(words.screw, 'M5'),
} as const;

/** The parameters with the values of one design. */
export type Values = ValuesOf<typeof parameters>;
