/** A number rounded to so many decimals, zeros at its end left out. */
export const n = (value: number, decimals = 2): string =>
  String(Math.round(value * 10 ** decimals) / 10 ** decimals);

/** The same as a length. */
export const mm = (value: number, decimals = 2): string => `${n(value, decimals)} mm`;
