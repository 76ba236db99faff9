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

/** A number as written into files: on the output grid, without exponent or trailing zeros. */
export const plain = (value: number, decimals = 6): string => {
  const text = value.toFixed(decimals);
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed;
};

export const MM_PER_INCH = 25.4;
