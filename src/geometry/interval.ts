import { atan, cos, sin } from '../core/trigonometry.ts';
import { degrees, radians } from '../core/units.ts';

/**
 * A range of real numbers, [least, greatest]. Every operation rounds outward by more than the
 * error of the machine's arithmetic, so that the result holds every value that the operation can
 * take on the given ranges: what is shown of the range is proved for each number in it.
 */
export type Interval = readonly [number, number];

/** One unit in the last place, relative, and the least step near zero. */
const ULP = 2 ** -52;
const TINY = 2 ** -1074;

const outward = (low: number, high: number, ulps = 1): Interval => [
  low - Math.abs(low) * ulps * ULP - TINY,
  high + Math.abs(high) * ulps * ULP + TINY,
];

const ZERO: Interval = [0, 0];

export const point = (value: number): Interval => [value, value];

export const plus = (...terms: readonly Interval[]): Interval => {
  let sum: Interval = ZERO;
  for (const term of terms) sum = outward(sum[0] + term[0], sum[1] + term[1]);
  return sum;
};

export const negative = ([low, high]: Interval): Interval => [-high, -low];

export const minus = (a: Interval, b: Interval): Interval => outward(a[0] - b[1], a[1] - b[0]);

export const times = (a: Interval, b: Interval): Interval => {
  const [p, q, r, s] = [a[0] * b[0], a[0] * b[1], a[1] * b[0], a[1] * b[1]];
  return outward(Math.min(p, q, r, s), Math.max(p, q, r, s));
};

/** The quotient; everything where the divisor may be zero, or so small that it might as well be. */
export const over = (a: Interval, b: Interval): Interval => {
  const [low, high] = [1 / b[1], 1 / b[0]];
  const isLost = (b[0] <= 0 && b[1] >= 0) || !Number.isFinite(low) || !Number.isFinite(high);
  return isLost ? [-Infinity, Infinity] : times(a, outward(low, high));
};

/** The smallest range that holds several; there must be at least one. */
export const hull = (ranges: readonly Interval[]): Interval => {
  let [low, high] = [Infinity, -Infinity];
  for (const range of ranges) {
    low = Math.min(low, range[0]);
    high = Math.max(high, range[1]);
  }
  return [low, high];
};

/** Our functions of angles are right to two units in the last place (their test); this leaves room. */
const LIBRARY = 8;

const QUARTER = Math.PI / 2;

/** Sine of angles in degrees, rising from -90 to 90; [-1, 1] where the range goes beyond. */
export const sine = ([low, high]: Interval): Interval => {
  const [a, b] = outward(radians(low), radians(high), LIBRARY);
  return a >= -QUARTER && b <= QUARTER ? outward(sin(a), sin(b), LIBRARY) : [-1, 1];
};

/** Cosine of angles in degrees from -90 to 90; [-1, 1] where the range goes beyond. */
export const cosine = ([low, high]: Interval): Interval => {
  const [a, b] = outward(radians(low), radians(high), LIBRARY);
  if (a < -QUARTER || b > QUARTER) return [-1, 1];
  const least = outward(Math.min(cos(a), cos(b)), 0, LIBRARY)[0];
  const most = a <= 0 && b >= 0 ? 1 : Math.max(cos(a), cos(b));
  return [least, outward(0, most, LIBRARY)[1]];
};

/** Square root; everything where the range reaches below zero. */
export const squareRoot = ([low, high]: Interval): Interval =>
  low < 0 ? [-Infinity, Infinity] : outward(Math.sqrt(low), Math.sqrt(high));

/** Angle in degrees, from -90 to 90, whose tangent is given. */
export const arctangent = ([low, high]: Interval): Interval =>
  outward(degrees(atan(low)), degrees(atan(high)), LIBRARY);

/** The part of a range that is not below zero; zero where nothing is. */
export const positive = ([low, high]: Interval): Interval => [Math.max(0, low), Math.max(0, high)];
