import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { acos, asin, atan, atan2, cos, sin, tan } from '../../src/core/trigonometry.ts';
import { seeded } from '../../src/setup/random.ts';

/** Whole numbers of 2^-BITS stand for reals here: some 48 digits, apart from any Math function. */
const BITS = 160n;
const UNIT = 1n << BITS;

/** The very number that a double is. */
const exact = (value: number): bigint => {
  let [whole, scale] = [value, 0n];
  for (; !Number.isInteger(whole); whole *= 2) scale += 1n;
  return (BigInt(whole) << BITS) >> scale;
};

const product = (a: bigint, b: bigint): bigint => (a * b) >> BITS;
const real = (a: bigint): number => Number(a) / 2 ** Number(BITS);

/** x - x^3/3! + ... and 1 - x^2/2! + ... */
const series = (x: bigint): { sine: bigint; cosine: bigint } => {
  const sums = [0n, 0n];
  let term = UNIT;
  for (let n = 0; term > 1n || term < -1n; n += 1) {
    sums[n % 2] = (sums[n % 2] ?? 0n) + (n % 4 < 2 ? term : -term);
    term = product(term, x) / BigInt(n + 1);
  }
  return { sine: sums[1] ?? 0n, cosine: sums[0] ?? 0n };
};

/** By how many units in its last place a result is off, given by how much it is off. */
const ulps = (result: number, off: number): number =>
  Math.abs(off) / 2 ** (Math.floor(Math.log2(Math.abs(result))) - 52);

const COUNT = 200;
const args = (seed: number, reach: number): number[] => {
  const random = seeded(seed);
  return Array.from({ length: COUNT }, () => (2 * random() - 1) * reach);
};
/** Multiples of a quarter turn, near which digits cancel. */
const TURNS = Array.from({ length: 41 }, (_, i) => ((i - 20) * Math.PI) / 2).filter((x) => x !== 0);
const ANGLES = [...args(1, 0.8), ...args(2, 7), ...args(3, 2000), ...TURNS];
const SINES = [
  ...args(4, 1),
  ...args(5, 0.01),
  ...args(6, 1e-4).map((x) => 1 - Math.abs(x)),
  1,
  -1,
];

/** The whole square root, by Newton's rule. */
const root = (square: bigint): bigint => {
  let [from, to] = [UNIT + 1n, UNIT];
  while (to < from) [from, to] = [to, to === 0n ? 0n : (to + square / to) / 2n];
  return from;
};

/** What an angle must still be turned by so that it points along (x, y). */
const missing = (angle: number, x: bigint, y: bigint): number => {
  const { sine, cosine } = series(exact(angle));
  const across = product(y, cosine) - product(x, sine);
  return real((across << BITS) / (product(x, cosine) + product(y, sine)));
};

describe('functions of angles', () => {
  it('are held against a series that gives the printed digits', () => {
    // Abramowitz and Stegun, Handbook of Mathematical Functions, table 4.6: sin 1 and cos 1.
    const { sine, cosine } = series(UNIT);
    const digits = (a: bigint): bigint => (a * 10n ** 23n + UNIT / 2n) >> BITS;
    expect(digits(sine)).toBe(84147098480789650665250n);
    expect(digits(cosine)).toBe(54030230586813971740094n);
  });

  it('are right to two units in the last place', () => {
    const off = { sin: [0], cos: [0], tan: [0], atan: [0], atan2: [0], asin: [0], acos: [0] };
    for (const x of ANGLES) {
      const { sine, cosine } = series(exact(x));
      off.sin.push(ulps(sin(x), real(exact(sin(x)) - sine)));
      off.cos.push(ulps(cos(x), real(exact(cos(x)) - cosine)));
      off.tan.push(ulps(tan(x), real(exact(tan(x)) - (sine << BITS) / cosine)));
      off.atan.push(ulps(atan(x), missing(atan(x), UNIT, exact(x))));
    }
    const ys = args(7, 300);
    for (const [i, x] of args(8, 300).entries()) {
      const angle = atan2(ys[i] ?? 0, x);
      off.atan2.push(ulps(angle, missing(angle, exact(x), exact(ys[i] ?? 0))));
    }
    for (const x of SINES) {
      const other = root(UNIT * UNIT - exact(x) * exact(x));
      off.asin.push(ulps(asin(x), missing(asin(x), other, exact(x))));
      if (x < 1) off.acos.push(ulps(acos(x), missing(acos(x), exact(x), other)));
    }
    const most = Object.entries(off).map(([name, values]) => [name, Math.max(...values)] as const);
    expect(most.filter(([, value]) => value > 0.3)).toHaveLength(7);
    expect(most.filter(([, value]) => value >= 2)).toEqual([]);
  });

  it('give zeros, ends and quadrants as the standard names them', () => {
    // ECMA-262, Math.atan2 and the others: signed zeros, and what lies beyond the ends.
    for (const y of [0, -0, 1, -1])
      for (const x of [0, -0, 1, -1, 1e-300])
        expect(Math.abs(atan2(y, x) - Math.atan2(y, x))).toBeLessThan(5e-16);
    expect([sin(-0), tan(-0), atan(-0), asin(-0), atan2(-0, 1)]).toEqual([-0, -0, -0, -0, -0]);
    expect([cos(0), acos(1), asin(1), atan(Infinity)]).toEqual([1, 0, Math.PI / 2, Math.PI / 2]);
    const lost = [sin(NaN), cos(Infinity), asin(1.1), acos(-1.1), atan2(NaN, 1), atan2(0, NaN)];
    expect(lost.every(Number.isNaN)).toBe(true);
  });

  it('stay on the circle however far an angle is', () => {
    for (const x of [...args(9, 1e9), 1e15, -1e300])
      expect(Math.hypot(sin(x), cos(x))).toBeCloseTo(1, 14);
    // The nearest angles on either side of where whole turns are taken off first.
    expect(sin(2 ** 20 + 2 ** -32) - sin(2 ** 20)).toBeCloseTo(2 ** -32 * cos(2 ** 20), 9);
  });

  it('are the same numbers in every engine', () => {
    // No outer source: what Node 20 and Chromium 156 both gave when this was written.
    const all = [sin, cos, tan, atan].flatMap((f) => ANGLES.map(f));
    all.push(...[asin, acos].flatMap((f) => SINES.map(f)), ...ANGLES.map((x) => atan2(x, 1 - x)));
    const digest = createHash('sha256').update(Float64Array.from(all)).digest('hex');
    expect(digest).toBe('914c543740c34e3d293d49e402bbda9f9f38de4a1d61e372f3c57d83b632d7ad');
  });
});
