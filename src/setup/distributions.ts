import { atan, cos, sin } from '../core/trigonometry.ts';
import { root } from '../grind/numeric/root.ts';

/** The coverage of every interval this layer states. */
export const COVERAGE = 0.95;

/**
 * Error function for x >= 0 by the series of positive terms
 * erf x = 2 / sqrt(pi) exp(-x^2) sum 2^n x^(2n+1) / (1 3 5 ... (2n+1)),
 * Handbook of Mathematical Functions 7.1.6 (from memory).
 */
const erf = (x: number): number => {
  let term = x;
  let sum = x;
  for (let n = 1; term > sum * Number.EPSILON && n < 1000; n += 1) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
};

/** Probability that a standard normal number stays within -z to z. Domain: 0 <= z <= 20. */
export const normalWithin = (z: number): number => erf(z / Math.SQRT2);

/**
 * Probability that Student's t with `freedom` whole degrees of freedom stays within -t to t: the
 * finite series in the cosine of atan(t / sqrt(freedom)), Handbook of Mathematical Functions
 * 26.7.3 and 26.7.4 (from memory). Domain: freedom >= 1, t >= 0.
 */
export const studentWithin = (freedom: number, t: number): number => {
  const angle = atan(t / Math.sqrt(freedom));
  const [s, c] = [sin(angle), cos(angle)];
  const odd = freedom % 2 === 1;
  let term = odd ? c : 1;
  let sum = freedom === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= freedom - 2; k += 2) {
    term *= ((k - 1) / k) * c * c;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (angle + s * sum) : s * sum;
};

/**
 * Probability that a sum of `freedom` squared standard normal numbers exceeds `value`: the finite
 * series of the Handbook of Mathematical Functions 26.4.4 and 26.4.5 (from memory). Domain:
 * freedom >= 1, value >= 0.
 */
export const chiSquareBeyond = (freedom: number, value: number): number => {
  const odd = freedom % 2 === 1;
  const chi = Math.sqrt(value);
  let term = odd ? Math.sqrt(2 / Math.PI) * Math.exp(-value / 2) * chi : Math.exp(-value / 2);
  let sum = odd ? 1 - normalWithin(chi) : 0;
  for (let k = odd ? 3 : 2; k <= freedom; k += 2) {
    sum += term;
    term *= value / k;
  }
  return sum;
};

/** How many standard uncertainties hold the share `coverage` of a normal distribution. */
export const normalFactor = (coverage = COVERAGE): number =>
  root((z) => normalWithin(z) - coverage, 0, 10);

/** How many standard uncertainties hold the share `coverage` of Student's distribution. */
export const studentFactor = (freedom: number, coverage = COVERAGE): number =>
  root((t) => studentWithin(freedom, t) - coverage, 0, 1e4);

/** The value that chi-square exceeds with the probability 1 - `coverage`. */
export const chiSquareLimit = (freedom: number, coverage = COVERAGE): number =>
  root((x) => chiSquareBeyond(freedom, x) - (1 - coverage), 0, 20 * freedom + 40);
