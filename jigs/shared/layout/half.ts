/** Off a whole half millimetre by less than this it counts as one, mm. */
const SAME = 5e-10;

/** The next half millimetre: dimensions that can be read off a rule. */
export const halfUp = (value: number): number => Math.ceil(2 * (value - SAME)) / 2;

/** The half millimetre at or below. */
export const halfDown = (value: number): number => Math.floor(2 * (value + SAME)) / 2;

/** The nearest half millimetre. */
export const halfNearest = (value: number): number => Math.round(2 * value) / 2;
