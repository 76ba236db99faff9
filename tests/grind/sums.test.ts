import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angleForBevel } from '../../src/grind/spine-rest/angle-for-bevel.ts';
import { spineRestSums, type SpineRestQuestion } from '../../src/grind/spine-rest/sums.ts';
import { bar, grind } from './brute.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const sizes = { spineThickness: 3, edgeThickness: 0.2, height: 50, spineRadius: 0, lean: 0 };
const asks = (more: Partial<SpineRestQuestion>) =>
  spineRestSums({ ...sizes, target: { angle: 3.5 }, ...more });

describe('the quick sum of a spine rest', () => {
  it('answers the same from angle, setoff and bevel height, and as brute force measures', () => {
    const question = fc.record({
      spineThickness: between(1, 8),
      edgeThickness: between(0, 0.9),
      height: between(15, 80),
      rounding: fc.oneof(fc.constant(0), between(0.05, 0.95)),
      lean: fc.oneof(fc.constant(0), between(-3, 8)),
      share: between(0.1, 1),
    });
    fc.assert(
      fc.property(question, ({ rounding, share, ...given }) => {
        const spineRadius = (rounding * given.spineThickness) / 2;
        const bevel = share * given.height;
        const result = spineRestSums({ ...given, spineRadius, target: { bevelHeight: bevel } });
        fc.pre(result.ok);
        if (!result.ok) return;
        const { angle, setoff, bevelHeight } = result.value;
        expect(bevelHeight).toBeCloseTo(bevel, 6);
        const measured = grind(
          bar(given.spineThickness, given.height, spineRadius),
          given.height,
          setoff,
          given.edgeThickness / 2,
          given.lean,
        );
        expect(Math.abs(measured.angle - angle)).toBeLessThan(1e-3);
        expect(Math.abs(measured.bevelHeight - bevelHeight)).toBeLessThan(2e-4);
        const back = spineRestSums({ ...given, spineRadius, target: { setoff } });
        expect(back.ok && back.value.angle).toBeCloseTo(angle, 8);
      }),
      { numRuns: 40, seed: 5 },
    );
  });

  // Included angle of a flat taper of thickness T over width W, 2 atan(T / 2 W), computed.
  it.each([
    [3, 30, 5.7248105],
    [4, 40, 5.7248105],
    [6, 50, 6.8672607],
  ])('is the wedge of T %d over W %d: %d degrees included', (thickness, height, included) => {
    const bar = { thickness, height, spineRadius: 0 };
    expect(2 * angleForBevel(bar, 0, height)).toBeCloseTo(included, 7);
  });

  it.each<[string, Partial<SpineRestQuestion>]>([
    ['out-of-range', { height: 1000 }],
    ['out-of-range', { height: NaN }],
    ['out-of-range', { lean: Infinity }],
    ['edge-too-thick', { edgeThickness: 3 }],
    ['radius-too-large', { spineRadius: 1.6 }],
    ['setoff-out-of-reach', { target: { setoff: 1.5 } }],
    ['setoff-out-of-reach', { target: { setoff: 399 } }],
    ['angle-out-of-reach', { lean: -4 }],
    ['bevel-too-high', { target: { bevelHeight: 51 } }],
    ['bevel-too-high', { target: { bevelHeight: 0 } }],
    ['bevel-out-of-reach', { target: { bevelHeight: 0.5 } }],
    ['bevel-out-of-reach', { spineRadius: 1.5, target: { bevelHeight: 50 } }],
  ])('refuses %s with value, range and mend', (code, question) => {
    const result = asks(question);
    expect(result.ok).toBe(false);
    const [issue] = result.issues;
    expect(issue?.code).toBe(code);
    expect(issue?.message).toMatch(/from|at most|less/);
    expect(issue?.fix.length).toBeGreaterThan(10);
  });

  it('gives finite numbers or issues for any input at all', () => {
    const any = fc.double({ noNaN: false });
    fc.assert(
      fc.property(any, any, any, any, any, any, (a, b, c, d, e, f) => {
        for (const target of [{ angle: f }, { setoff: f }, { bevelHeight: f }]) {
          const result = spineRestSums({
            spineThickness: a,
            edgeThickness: b,
            height: c,
            spineRadius: d,
            lean: e,
            target,
          });
          if (result.ok) expect(Object.values(result.value).every(Number.isFinite)).toBe(true);
          else expect(result.issues.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 200, seed: 6 },
    );
  });

  it('gives finite numbers or issues all over its ranges', () => {
    fc.assert(
      fc.property(
        between(0.5, 25),
        between(0, 25),
        between(5, 300),
        between(0, 12.5),
        between(-30, 30),
        between(0, 1),
        (spineThickness, edgeThickness, height, spineRadius, lean, x) => {
          const size = { spineThickness, edgeThickness, height, spineRadius, lean };
          for (const target of [
            { angle: 45 * x },
            { setoff: 400 * x * x },
            { bevelHeight: height * x },
          ]) {
            const result = spineRestSums({ ...size, target });
            if (result.ok) expect(Object.values(result.value).every(Number.isFinite)).toBe(true);
          }
        },
      ),
      { numRuns: 400, seed: 7 },
    );
  });
});
