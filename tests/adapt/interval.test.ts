import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as I from '../../src/geometry/interval.ts';
import type { Interval } from '../../src/geometry/interval.ts';

const holds = ([low, high]: Interval, value: number): boolean => low <= value && value <= high;

/** A range and a number of it. */
const ranged = (from: number, to: number) =>
  fc
    .tuple(
      fc.double({ min: from, max: to, noNaN: true }),
      fc.double({ min: from, max: to, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    )
    .map(([a, b, share]) => {
      const range: Interval = [Math.min(a, b), Math.max(a, b)];
      const inside = range[0] + share * (range[1] - range[0]);
      return { range, value: Math.min(Math.max(inside, range[0]), range[1]) };
    });

describe('interval arithmetic', () => {
  it('holds what the operation gives for any numbers of its ranges', () => {
    fc.assert(
      fc.property(ranged(-200, 200), ranged(-200, 200), (a, b) => {
        expect(holds(I.plus(a.range, b.range), a.value + b.value)).toBe(true);
        expect(holds(I.minus(a.range, b.range), a.value - b.value)).toBe(true);
        expect(holds(I.times(a.range, b.range), a.value * b.value)).toBe(true);
        if (b.value !== 0) expect(holds(I.over(a.range, b.range), a.value / b.value)).toBe(true);
        expect(holds(I.hull([a.range, b.range]), a.value)).toBe(true);
      }),
      { numRuns: 500, seed: 1 },
    );
  });

  it('holds sine and cosine, also over the crest of the cosine', () => {
    fc.assert(
      fc.property(ranged(-90, 90), ({ range, value }) => {
        const angle = (value * Math.PI) / 180;
        expect(holds(I.sine(range), Math.sin(angle))).toBe(true);
        expect(holds(I.cosine(range), Math.cos(angle))).toBe(true);
      }),
      { numRuns: 500, seed: 2 },
    );
    expect(I.cosine([-10, 20])[1]).toBeGreaterThanOrEqual(1);
    expect(I.sine([80, 100])).toEqual([-1, 1]);
  });

  it('holds roots, and angles of their tangents', () => {
    fc.assert(
      fc.property(ranged(-50, 50), ({ range, value }) => {
        expect(holds(I.arctangent(range), (Math.atan(value) * 180) / Math.PI)).toBe(true);
        expect(holds(I.positive(range), Math.max(0, value))).toBe(true);
        if (value >= 0) expect(holds(I.squareRoot(range), Math.sqrt(value))).toBe(true);
      }),
      { numRuns: 500, seed: 3 },
    );
    expect(I.squareRoot([-1, 4])).toEqual([-Infinity, Infinity]);
  });

  it('holds sums that the machine cannot write', () => {
    // 0.1 + 0.2 = 0.3 exactly, which lies between two machine numbers.
    const [low, high] = I.plus(I.point(0.1), I.point(0.2));
    expect(low).toBeLessThan(0.3);
    expect(high).toBeGreaterThan(0.3);
    const third = I.over(I.point(1), I.point(3));
    expect(third[0]).toBeLessThan(third[1]);
    expect(third[1] - third[0]).toBeLessThan(1e-15);
  });
});
