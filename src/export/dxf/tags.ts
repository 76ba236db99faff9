import { plain } from '../../core/units.ts';

/**
 * Decimals of every real number in a DXF. Millimetres are on the grid of 1e-6 already; inches,
 * bulges and angles need three more to come back as the same millimetre.
 */
const DECIMALS = 9;

/** One group of a DXF: a code and its value, as the published reference lays them down. */
export type Tag = readonly [code: number, value: string];

/** A real number as a tag. */
export const real = (code: number, value: number): Tag => [code, plain(value, DECIMALS)];

/** An angle in degrees: its last decimal is a millionth of a millimetre at a radius of 20 km. */
export const angle = (code: number, value: number): Tag => [code, plain(value, 12)];

export const integer = (code: number, value: number): Tag => [code, String(value)];

/** A handle: a hexadecimal number unique in the file. */
export const handle = (code: number, value: number): Tag => [
  code,
  value.toString(16).toUpperCase(),
];

/** A string; line breaks would end the group and are written as spaces. */
export const string = (code: number, value: string): Tag => [code, value.replace(/\p{Cc}+/gu, ' ')];

export const section = (name: string, content: readonly Tag[]): Tag[] => [
  [0, 'SECTION'],
  [2, name],
  ...content,
  [0, 'ENDSEC'],
];

/** Group codes as they are written, right of a field of three. */
const CODES = Array.from({ length: 1000 }, (_, code) => `${String(code).padStart(3)}\n`);

/** The text of a file from its groups: one growing text, and no list of its lines. */
export const serialise = (tags: readonly Tag[]): string => {
  let text = '';
  for (const [code, value] of tags) text += `${CODES[code] ?? `${String(code)}\n`}${value}\n`;
  return text;
};
