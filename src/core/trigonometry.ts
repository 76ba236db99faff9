/**
 * Sine, cosine and their kin in arithmetic that IEEE 754 settles to the last bit. An engine is free
 * in Math.sin and the like, and two of them, even two versions of one, do differ; then two equally
 * near places or two equal choices come out the other way round, and a package made in a browser is
 * not the one the command line makes. Math.sqrt is settled too, and Math.hypot is no rounding apart.
 *
 * The libraries that would serve bring 168 packages for these seven functions (stdlib, measured in
 * November 2026), four times what is shipped otherwise.
 *
 * Coefficients, reductions and limits are those of FreeBSD's msun (k_sin.c, k_cos.c, e_rem_pio2.c,
 * s_atan.c, e_atan2.c):
 *
 * Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
 * Developed at SunPro, a Sun Microsystems, Inc. business. Permission to use, copy, modify, and
 * distribute this software is freely granted, provided that this notice is preserved.
 */

/** Of an angle no further from zero than an eighth turn, with what its rounding left out. */
const kernelSine = (x: number, rest: number): number => {
  const z = x * x;
  const r =
    0.00833333333332249 +
    z * (-0.0001984126982985795 + z * 2.7557313707070068e-6) +
    z * z * z * (-2.5050760253406863e-8 + z * 1.58969099521155e-10);
  const v = z * x;
  return x - (z * (0.5 * rest - v * r) - rest - v * -0.16666666666666632);
};

const kernelCosine = (x: number, rest: number): number => {
  const z = x * x;
  const w = z * z;
  const r =
    z * (0.0416666666666666 + z * (-0.001388888888887411 + z * 2.480158728947673e-5)) +
    w * w * (-2.7557314351390663e-7 + z * (2.087572321298175e-9 + z * -1.1359647557788195e-11));
  const half = 0.5 * z;
  const one = 1 - half;
  return one + (1 - one - half + (z * r - x * rest));
};

/** A quarter turn in three pieces, the first two of 33 bits, so that whole multiples are exact. */
const QUARTER = [1.5707963267341256, 6.077100506303966e-11, 2.0222662487959506e-21] as const;
const EIGHTH = Math.PI / 4;

/**
 * Beyond this many radians the multiples would be rounded. Whole turns are then taken off first:
 * the remainder itself is exact, and what 2 pi lacks is less than the last bit of such an angle.
 */
const FAR = 2 ** 20;

// What is left of an angle by `quarters`: a pair returned would cost more than the sine.
let near = 0;
let rest = 0;

/** Takes the nearest whole number of quarter turns off an angle, and tells how many (modulo 4). */
const quarters = (angle: number): number => {
  const x = Math.abs(angle) > FAR ? angle % (2 * Math.PI) : angle;
  if (Math.abs(x) <= EIGHTH) {
    near = x;
    rest = 0;
    return 0;
  }
  const count = Math.round(x * (2 / Math.PI));
  const first = x - count * QUARTER[0];
  const second = count * QUARTER[1];
  const left = first - second;
  const third = count * QUARTER[2] - (first - left - second);
  near = left - third;
  rest = left - near - third;
  return count & 3;
};

export const sin = (angle: number): number => {
  if (Math.abs(angle) <= EIGHTH) return kernelSine(angle, 0);
  const count = quarters(angle);
  const size = (count & 1) === 0 ? kernelSine(near, rest) : kernelCosine(near, rest);
  return count < 2 ? size : -size;
};

export const cos = (angle: number): number => {
  if (Math.abs(angle) <= EIGHTH) return kernelCosine(angle, 0);
  const count = quarters(angle);
  const size = (count & 1) === 0 ? kernelCosine(near, rest) : kernelSine(near, rest);
  return count === 0 || count === 3 ? size : -size;
};

export const tan = (angle: number): number => {
  const count = quarters(angle);
  const s = kernelSine(near, rest);
  const c = kernelCosine(near, rest);
  return (count & 1) === 0 ? s / c : -c / s;
};

/** Tangents from which on an arc tangent is told from that of a half, 1, 1.5 or infinity. */
const FROM = [7 / 16, 11 / 16, 19 / 16, 39 / 16] as const;

/** Those arc tangents, with what their rounding left out. */
const HALF = [0.4636476090008061, 2.2698777452961687e-17] as const;
const ONE = [0.7853981633974483, 3.061616997868383e-17] as const;
const ONE_AND_HALF = [0.982793723247329, 1.3903311031230998e-17] as const;
const INFINITE = [1.5707963267948966, 6.123233995736766e-17] as const;

/** How much an arc tangent is less than its tangent, for tangents below 7/16 or so. */
const lack = (x: number): number => {
  const z = x * x;
  const w = z * z;
  const odd =
    z *
    (0.3333333333333293 +
      w *
        (0.14285714272503466 +
          w *
            (0.09090887133436507 +
              w * (0.06661073137387531 + w * (0.049768779946159324 + w * 0.016285820115365782)))));
  const even =
    w *
    (-0.19999999999876483 +
      w *
        (-0.11111110405462356 +
          w * (-0.0769187620504483 + w * (-0.058335701337905735 + w * -0.036531572744216916))));
  return x * (odd + even);
};

const onto = ([angle, rounding]: readonly [number, number], x: number): number =>
  angle - (lack(x) - rounding - x);

const positiveArcTangent = (x: number): number => {
  if (x < FROM[0]) return x - lack(x);
  if (x < FROM[1]) return onto(HALF, (2 * x - 1) / (2 + x));
  if (x < FROM[2]) return onto(ONE, (x - 1) / (x + 1));
  if (x < FROM[3]) return onto(ONE_AND_HALF, (x - 1.5) / (1 + 1.5 * x));
  return onto(INFINITE, -1 / x);
};

export const atan = (x: number): number =>
  x < 0 ? -positiveArcTangent(-x) : x === 0 ? x : positiveArcTangent(x);

/** What Math.PI is short of pi. */
const PI_REST = 1.2246467991473532e-16;

/** Angle of the direction (x, y), of finite lengths; signed zeros count as in Math.atan2. */
export const atan2 = (y: number, x: number): number => {
  if (y === 0)
    return x > 0 || Object.is(x, 0) ? y : x <= 0 ? (Object.is(y, 0) ? Math.PI : -Math.PI) : NaN;
  const size = positiveArcTangent(Math.abs(y / x));
  const turned = x < 0 ? Math.PI - (size - PI_REST) : size;
  return y < 0 ? -turned : turned;
};

export const asin = (x: number): number => atan2(x, Math.sqrt((1 - x) * (1 + x)));

export const acos = (x: number): number => atan2(Math.sqrt((1 - x) * (1 + x)), x);
