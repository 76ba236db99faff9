import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fenceDistance, fencePerDegree } from '../../src/grind/carriage/fence.ts';
import { jawClearance } from '../../src/grind/carriage/jaw.ts';
import { anglePerTurn, screwExtension } from '../../src/grind/carriage/screw.ts';
import { carriageSums } from '../../src/grind/carriage/sums.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rad = Math.PI / 180;
const runs = { numRuns: 60, seed: 8 };

const carriage = fc.record({
  base: between(40, 250),
  footRadius: between(0, 10),
  tipRadius: between(0, 10),
});

/**
 * The tilt a carriage takes with its tip out by z, found by turning it until the lowest points of
 * the two rounds are level. Carriage frame: foot centre at (0, 0), heel behind; z = 0 is level.
 */
const standing = (base: number, foot: number, tip: number, z: number): number => {
  const step = (a: number): number => {
    const footLow = -foot;
    const tipHeight = base * Math.sin(a) + (tip - foot - z) * Math.cos(a);
    return tipHeight - tip - footLow;
  };
  let [lo, hi] = [0, 1.2];
  for (let i = 0; i < 80; i += 1) {
    const middle = (lo + hi) / 2;
    if (step(middle) < 0) lo = middle;
    else hi = middle;
  }
  return (lo + hi) / 2 / rad;
};

describe('the heel screw', () => {
  it('tips the carriage to its angle, by standing the rounds on the base', () => {
    fc.assert(
      fc.property(carriage, between(0, 25), (given, angle) => {
        const z = screwExtension(given, angle);
        expect(standing(given.base, given.footRadius, given.tipRadius, z)).toBeCloseTo(angle, 8);
      }),
      runs,
    );
  });

  it('adds what one more turn adds, locally', () => {
    fc.assert(
      fc.property(carriage, between(0.5, 20), between(0.5, 2), (given, angle, pitch) => {
        const { base, footRadius, tipRadius } = given;
        const z = screwExtension(given, angle);
        const turn = 1e-4 * pitch;
        const more = standing(base, footRadius, tipRadius, z + turn);
        const less = standing(base, footRadius, tipRadius, z - turn);
        expect(anglePerTurn(given, angle, pitch)).toBeCloseTo((more - less) / 2e-4, 5);
      }),
      runs,
    );
  });

  // With equal rounds the heel rises L sin a over the base: the sine bar. Published rows:
  // 5 in at 27 and 18 degrees (sine bar FAQ and table pages), 5 in and 10 in at 30 degrees (sine
  // bar calculator), 2.5 in at 20 degrees (a hobby-machinist thread); metric rows computed.
  it.each([
    [5, 27, 2.26995],
    [5, 18, 1.54508],
    [5, 30, 2.5],
    [10, 30, 5],
    [2.5, 20, 0.85505],
    [100, 10, 17.36482],
    [200, 12.5, 43.28792],
  ])('is a sine bar with equal rounds: L %d at %d degrees lifts %d', (base, angle, lift) => {
    const z = screwExtension({ base, footRadius: 3, tipRadius: 3 }, angle);
    expect(z * Math.cos(angle * rad)).toBeCloseTo(lift, 5);
  });

  it('counts turns by the pitch: an M6 x 1 advances 1 mm in a turn (ISO 261 coarse pitch)', () => {
    const result = carriageSums({ base: 100, angle: 3.5, pitch: 1, footRadius: 0, tipRadius: 0 });
    expect(result.ok && result.value.turns).toBeCloseTo(6.1163, 4);
    const finer = carriageSums({ base: 100, angle: 3.5, pitch: 0.7, footRadius: 0, tipRadius: 0 });
    expect(finer.ok && finer.value.turns * 0.7).toBeCloseTo(6.1163, 4);
  });
});

describe('fence and jaw', () => {
  it('puts the edge on the abrasive face, by turning the corner about the foot', () => {
    fc.assert(
      fc.property(
        between(0, 30),
        between(10, 120),
        between(0, 10),
        between(0, 20),
        (f, h, r, a) => {
          const [c, s] = [Math.cos(a * rad), Math.sin(a * rad)];
          // Rotation of the corner (-f, h - r) by a towards the belt, about the foot's centre.
          const ahead = -(-f * c - (h - r) * s);
          expect(fenceDistance(f, h, r, a)).toBeCloseTo(ahead, 10);
          const slope = fenceDistance(f, h, r, a + 5e-5) - fenceDistance(f, h, r, a - 5e-5);
          expect(fencePerDegree(f, h, r, a)).toBeCloseTo(slope / 1e-4, 6);
        },
      ),
      runs,
    );
    expect(fencePerDegree(0, 70, 0, 3.5)).toBeCloseTo(1.2, 1);
  });

  it('leaves 0.66 mm of jaw at spine level for 1 mm of clearance: H 50, 3.5 degrees', () => {
    expect(jawClearance(50, 0.66, 1.5, 0.1, 3.5)).toBeCloseTo(1, 2);
  });
});
