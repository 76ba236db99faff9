/** Radians of an angle in degrees. Radians are used inside geometry code only. */
export const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Degrees of an angle in radians. */
export const degrees = (radian: number): number => (radian * 180) / Math.PI;

/** The grid on which every coordinate leaves the program, mm. */
export const QUANTUM = 1e-6;

/**
 * Rounds a coordinate (mm) or angle (degrees) to the output grid of 1e-6 and clears negative
 * zero, so that two engines whose last bits differ write the same bytes.
 */
export const quantise = (value: number): number => Math.round(value / QUANTUM) * QUANTUM + 0;

/**
 * Steps a millimetre of the grid on which solids are made and stand: a millionth of what a check
 * tells; and steps of the cosines of their axes, which must stay unit and square.
 */
const FINE = { place: 1e9, direction: 1e12 } as const;

/**
 * Rounds a coordinate (mm) or a direction cosine to the grid of solids: engines whose sines differ
 * in the last bit then compare the same bodies, and name the same of two equally near places.
 */
export const fine = (value: number, what: keyof typeof FINE = 'place'): number =>
  Math.round(value * FINE[what]) / FINE[what] + 0;

/** Coordinates (mm) on the grid of solids. */
export const fineAll = (values: readonly number[]): Float64Array => {
  const out = new Float64Array(values.length);
  for (let i = 0; i < out.length; i += 1) out[i] = fine(values[i] as number);
  return out;
};

/** Values that mend are set to this grid, mm or degrees. */
const GRID = 0.01;

/** The value on the grid of mends at or above this one, so that a lower limit holds. */
export const gridUp = (value: number): number =>
  Number((Math.ceil(value / GRID - 1e-9) * GRID).toFixed(6));

/** The value on the grid of mends at or below this one, so that an upper limit holds. */
export const gridDown = (value: number): number =>
  Number((Math.floor(value / GRID + 1e-9) * GRID).toFixed(6));

/** A length (mm) or an angle (degrees) as it stands in a sentence: to a hundredth. */
export const toHundredth = (value: number): number => Number(value.toFixed(2));

const ZERO = '0'.charCodeAt(0);
const POINT = '.'.charCodeAt(0);

/** Whole numbers below this are written without a point or an exponent. */
const WHOLE = 1e15;

/** A number as written into files: on the output grid, without exponent or trailing zeros. */
export const plain = (value: number, decimals = 6): string => {
  if (Number.isInteger(value) && Math.abs(value) < WHOLE) return String(value + 0);
  const text = value.toFixed(decimals);
  let end = text.length;
  if (text.charCodeAt(end - decimals - 1) === POINT) {
    // Files hold a million numbers, and a regular expression takes several times as long.
    while (text.charCodeAt(end - 1) === ZERO) end -= 1;
    if (text.charCodeAt(end - 1) === POINT) end -= 1;
  }
  const trimmed = text.slice(0, end);
  return trimmed === '-0' ? '0' : trimmed;
};

export const MM_PER_INCH = 25.4;

/**
 * A length (mm) in inches, as exactly as so many decimals tell it in millimetres: a hundredth of a
 * millimetre is four ten-thousandths of an inch.
 */
export const inches = (mm: number, decimals: number): string =>
  (mm / MM_PER_INCH).toFixed(decimals + 2);
