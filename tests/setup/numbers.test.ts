import { describe, expect, it } from 'vitest';
import {
  chiSquareBeyond,
  chiSquareLimit,
  normalFactor,
  normalWithin,
  studentFactor,
  studentWithin,
} from '../../src/setup/distributions.ts';
import { inverse, times } from '../../src/setup/matrix.ts';
import { seeded, standardNormal } from '../../src/setup/random.ts';

describe('the seeded generator', () => {
  it('gives the 10000th number that the C++ standard states for minstd_rand', () => {
    // ISO/IEC 14882, [rand.predef]: the 10000th consecutive invocation is 399268537 (from memory).
    const random = seeded(1);
    let value = 0;
    for (let i = 0; i < 10000; i += 1) value = random();
    expect(Math.round(value * (2 ** 31 - 1))).toBe(399268537);
  });

  it('repeats for a seed, differs between seeds, and stays inside 0 to 1 for any seed', () => {
    const take = (seed: number): number[] => Array.from({ length: 5 }, seeded(seed));
    expect(take(7)).toEqual(take(7));
    expect(take(7)).not.toEqual(take(8));
    for (const seed of [0, -3, 2 ** 31 - 1, 1e15, 0.4])
      for (const value of take(seed)) expect(value > 0 && value < 1).toBe(true);
  });

  it('gives normal numbers whose moments and shares fit the normal law', () => {
    const random = seeded(5);
    const draws = Array.from({ length: 40000 }, () => standardNormal(random));
    const mean = (f: (x: number) => number): number =>
      draws.reduce((sum, x) => sum + f(x), 0) / draws.length;
    // Four standard errors of each estimate at 40000 draws.
    expect(Math.abs(mean((x) => x))).toBeLessThan(0.02);
    expect(Math.abs(mean((x) => x * x) - 1)).toBeLessThan(0.029);
    expect(Math.abs(mean((x) => x ** 3))).toBeLessThan(0.078);
    expect(Math.abs(mean((x) => x ** 4) - 3)).toBeLessThan(0.2);
    expect(Math.abs(mean((x) => (Math.abs(x) < 1.959964 ? 1 : 0)) - 0.95)).toBeLessThan(0.0044);
  });
});

describe('distributions', () => {
  it('meets the tables of the normal and of Student', () => {
    // NIST/SEMATECH e-Handbook 1.3.6.7.1 and 1.3.6.7.2 (critical values, from memory).
    expect(normalFactor(0.95)).toBeCloseTo(1.959964, 6);
    expect(normalFactor(0.99)).toBeCloseTo(2.575829, 6);
    expect(normalWithin(1)).toBeCloseTo(0.682689, 6);
    const rows: readonly [number, number][] = [
      [1, 12.706],
      [2, 4.303],
      [3, 3.182],
      [4, 2.776],
      [5, 2.571],
      [9, 2.262],
      [10, 2.228],
      [20, 2.086],
      [30, 2.042],
      [100, 1.984],
    ];
    for (const [freedom, value] of rows) expect(studentFactor(freedom)).toBeCloseTo(value, 3);
    // GUM (JCGM 100) H.1.6: t of 99 % for 16 degrees of freedom is 2.92.
    expect(studentFactor(16, 0.99)).toBeCloseTo(2.92, 2);
  });

  it('meets the table of chi-square', () => {
    // NIST/SEMATECH e-Handbook 1.3.6.7.4, upper 0.05 and 0.01 (from memory).
    const rows: readonly [number, number, number][] = [
      [1, 3.841, 6.635],
      [2, 5.991, 9.21],
      [3, 7.815, 11.345],
      [4, 9.488, 13.277],
      [5, 11.07, 15.086],
      [10, 18.307, 23.209],
      [15, 24.996, 30.578],
      [30, 43.773, 50.892],
    ];
    for (const [freedom, five, one] of rows) {
      expect(chiSquareLimit(freedom)).toBeCloseTo(five, 2);
      expect(chiSquareLimit(freedom, 0.99)).toBeCloseTo(one, 2);
    }
  });

  it('agrees with integrating the densities numerically', () => {
    const integral = (f: (x: number) => number, to: number): number => {
      const n = 20000;
      let sum = 0;
      for (let i = 0; i < n; i += 1) sum += f(((i + 0.5) * to) / n);
      return (sum * to) / n;
    };
    for (const nu of [2, 3, 6, 7]) {
      const density = (t: number): number => (1 + (t * t) / nu) ** (-(nu + 1) / 2);
      const share = integral(density, 1.7) / (integral(density, 1.7) + tail(density, 1.7));
      expect(studentWithin(nu, 1.7)).toBeCloseTo(share, 4);
      const chi = (x: number): number => 2 * x ** (nu - 1) * Math.exp(-(x * x) / 2);
      const beyond = 1 - integral(chi, Math.sqrt(5)) / integral(chi, 40);
      expect(chiSquareBeyond(nu, 5)).toBeCloseTo(beyond, 4);
    }
    function tail(f: (x: number) => number, from: number): number {
      // x = from / u maps the tail onto 0 to 1.
      return integral((u) => (f(from / u) * from) / (u * u), 1);
    }
  });
});

describe('the inverse of a matrix', () => {
  it('undoes the matrix whatever the units, and refuses what is not definite', () => {
    const m = [
      [4e6, 1e3, 2],
      [1e3, 9, 0.01],
      [2, 0.01, 1e-4],
    ];
    const x = [0.3, -2, 50];
    const back = times(inverse(m) ?? [], times(m, x));
    back.forEach((value, i) => expect(value).toBeCloseTo(x[i] ?? NaN, 8));
    expect(
      inverse([
        [1, 2],
        [2, 4],
      ]),
    ).toBeUndefined();
    expect(inverse([[0]])).toBeUndefined();
    expect(inverse([[NaN]])).toBeUndefined();
  });
});
