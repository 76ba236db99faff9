import { lengthDigits, unitName } from './format.ts';
import type { Display } from './unit.ts';

/** What is quoted: names that people gave. */
const QUOTED = /“[^”]*”|"[^"]*"/.source;
const NUMBER = /-?\d+(?:\.\d+)?/.source;
/**
 * One length, or several that share their unit: "3 mm", "0.5 to 10 mm", "40 x 40 x 4 mm", and
 * "between 2 and 3 mm". Not what a number goes on from (M6 x 20), nor squares, cubes and rates.
 */
const LENGTHS = new RegExp(
  `(?<![\\w.]|M\\d+ x )((?:${NUMBER}(?: to | x ))*${NUMBER}|(?<=between )${NUMBER} and ${NUMBER}) mm(?![\\w²³/])`,
  'g',
);
const PARTS = new RegExp(`(${QUOTED})`);

const inInches = (display: Display) => (_: string, lengths: string) =>
  `${lengths.replace(new RegExp(NUMBER, 'g'), (mm) => lengthDigits(Number(mm), display))} ${unitName('mm', display)}`;

/**
 * A sentence of the engine, which speaks in millimetres, in the unit of the page. Names in quotes
 * stay as they were given.
 */
export const sentenceIn = (display: Display, sentence: string): string =>
  display === 'mm'
    ? sentence
    : sentence
        .split(PARTS)
        .map((part, i) => (i % 2 === 1 ? part : part.replace(LENGTHS, inInches(display))))
        .join('');
