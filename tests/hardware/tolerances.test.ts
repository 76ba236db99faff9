import { describe, expect, it } from 'vitest';
import {
  angularTolerance,
  cutTolerance,
  edgeTolerance,
  holeH,
  linearTolerance,
  standardTolerance,
  type ItGrade,
} from '../../src/hardware/index.ts';

describe('ISO 2768-1', () => {
  // Boundary rows of table 1, class m; two transcriptions agree.
  it.each([
    [0.49, undefined],
    [0.5, 0.1],
    [3, 0.1],
    [6, 0.1],
    [6.001, 0.2],
    [30, 0.2],
    [30.001, 0.3],
    [120, 0.3],
    [120.001, 0.5],
    [400, 0.5],
    [400.001, 0.8],
    [1000, 0.8],
    [2000, 1.2],
    [2000.001, undefined],
  ])('medium at %f mm', (size, tolerance) => {
    expect(linearTolerance(size, 'm')).toBe(tolerance);
  });

  it('has the other classes', () => {
    const sizes = [2, 5, 20, 100, 300, 700, 1500];
    expect(sizes.map((s) => linearTolerance(s, 'f'))).toEqual([
      0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5,
    ]);
    expect(sizes.map((s) => linearTolerance(s, 'c'))).toEqual([0.2, 0.3, 0.5, 0.8, 1.2, 2, 3]);
    expect(sizes.map((s) => linearTolerance(s, 'v'))).toEqual([undefined, 0.5, 1, 1.5, 2.5, 4, 6]);
  });

  it('has table 2 for radii and chamfers', () => {
    expect([1, 3, 3.1, 6, 7].map((s) => edgeTolerance(s, 'm'))).toEqual([0.2, 0.2, 0.5, 0.5, 1]);
    expect([1, 5, 7].map((s) => edgeTolerance(s, 'v'))).toEqual([0.4, 1, 2]);
  });

  // Worked row of a published page: 60 degrees with a 75 mm leg, class m, is 20 minutes.
  it('has table 3 for angles', () => {
    expect(angularTolerance(75, 'm')).toBeCloseTo(20 / 60, 12);
    expect([10, 50, 120, 400, 401].map((l) => (angularTolerance(l, 'm') ?? 0) * 60)).toEqual([
      60, 30, 20, 10, 5,
    ]);
    expect([10, 50, 120, 400, 401].map((l) => (angularTolerance(l, 'c') ?? 0) * 60)).toEqual([
      90, 60, 30, 15, 10,
    ]);
    expect([10, 50, 120, 400, 401].map((l) => (angularTolerance(l, 'v') ?? 0) * 60)).toEqual([
      180, 120, 60, 30, 20,
    ]);
  });
});

describe('ISO 286-1', () => {
  // i = 0.45 D^(1/3) + 0.001 D micrometres with D the geometric mean of the step, and the grades
  // 10, 16, 25, 40, 64, 100 i: the standard's own formula. Its table is rounded from it by up to
  // 4.3 % (IT12 of 6 to 10 mm is 150 for a computed 143.7), or 0.7 micrometres where that is
  // more (IT6 of 3 to 6 mm is 8 for a computed 7.33).
  it('follows the formula of the tolerance unit', () => {
    const steps = [3, 6, 10, 18, 30, 50, 80, 120];
    const multiples: [ItGrade, number][] = [
      [6, 10],
      [7, 16],
      [8, 25],
      [9, 40],
      [10, 64],
      [11, 100],
      [12, 160],
    ];
    steps.slice(1).forEach((upper, k) => {
      const mean = Math.sqrt((steps[k] ?? 0) * upper);
      const unit = 0.45 * Math.cbrt(mean) + 0.001 * mean;
      for (const [grade, multiple] of multiples) {
        const micrometres = (standardTolerance(upper, grade) ?? 0) * 1000;
        expect(Math.abs(micrometres - multiple * unit)).toBeLessThan(
          Math.max(0.7, 0.043 * micrometres),
        );
      }
    });
  });

  it('has the rows of two published tables', () => {
    expect(
      [3, 6, 10, 18, 30, 50, 80, 120].map((s) => (standardTolerance(s, 7) ?? 0) * 1000),
    ).toEqual([10, 12, 15, 18, 21, 25, 30, 35]);
    expect(holeH(20, 8)).toEqual({ lower: 0, upper: 0.033 });
    expect(standardTolerance(6.001, 7)).toBe(0.015);
    expect(standardTolerance(120.1, 7)).toBeUndefined();
    expect(standardTolerance(0, 7)).toBeUndefined();
  });
});

describe('ISO 9013', () => {
  // A published transcription of the limit deviations, class 1 and class 2.
  it.each([
    [2, 1, 'laser', 0.075],
    [3, 1, 'laser', 0.1],
    [200, 3.15, 'laser', 0.25],
    [2, 3.2, 'laser', 0.2],
    [100, 5, 'laser', 0.25],
    [2, 8, 'laser', undefined],
    [20, 8, 'laser', 0.3],
    [400, 12, 'laser', 0.55],
    [500, 20, 'laser', 0.75],
    [500, 21, 'laser', undefined],
    [1000, 5, 'laser', undefined],
    [2, 5, 'plasma', 0.7],
    [200, 6, 'plasma', 1.1],
    [200, 8, 'plasma', undefined],
  ] as const)('%f mm in sheet of %f mm by %s', (size, thickness, process, tolerance) => {
    expect(cutTolerance(size, thickness, process)).toBe(tolerance);
  });
});
