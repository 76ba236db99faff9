import { MOST_SPANS, TooMuch } from './drawn.ts';

/** Pairs of a group code and a value that are read at most: a line takes six or more. */
export const MOST_PAIRS = 6 * MOST_SPANS;

/** Group codes that have a type (published DXF reference), as ranges. */
const TYPED: readonly (readonly [number, number])[] = [
  [-5, 149],
  [160, 179],
  [210, 239],
  [270, 481],
  [999, 1071],
];

const isTyped = (code: number): boolean => TYPED.some(([from, to]) => code >= from && code <= to);

/**
 * A DXF as its reader takes it without a word on the console: bounded before it is read, without
 * the pairs whose code has no type. Throws at what is no DXF, as the reader does.
 */
export const readablePairs = (dxf: string): string => {
  const lines = dxf.split(/\r\n|\r|\n/);
  if (lines.length > 2 * MOST_PAIRS) throw new TooMuch();
  const kept: string[] = [];
  let inName = false;
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const [head = '', value = ''] = [lines[i], lines[i + 1]];
    const code = Number(head);
    if (head.trim() === '' || !Number.isInteger(code)) throw new Error('no group code');
    if (inName && code !== 2) throw new Error('a section without a name');
    inName = code === 0 && value.trim() === 'SECTION';
    if (isTyped(code)) kept.push(head, value);
    // What comes after the end is no part of the drawing.
    if (code === 0 && value.trim() === 'EOF') break;
  }
  return `${kept.join('\n')}\n`;
};
