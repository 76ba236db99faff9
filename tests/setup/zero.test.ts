import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angleFromFeelers, fenceBlock } from '../../src/setup/zero/carriage-gauges.ts';
import { lipBackAtPin, lipFeeler } from '../../src/setup/zero/lip-pin.ts';
import { pinForStep, stepAtPin } from '../../src/setup/zero/step-pin.ts';
import { carriageZero, edgeRestZero, spineRestZero } from '../../src/setup/zero/steps.ts';

const rad = Math.PI / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Least value of x at which a dense disc of radius r standing at height r clears a test. */
const pushed = (r: number, clears: (y: number, z: number) => boolean): number => {
  const rim = Array.from({ length: 7200 }, (_, i) => [
    r * Math.cos((i * rad) / 20),
    r + r * Math.sin((i * rad) / 20),
  ]) as [number, number][];
  let [lo, hi] = [-r - 50, r + 50];
  for (let i = 0; i < 60; i += 1) {
    const y = (lo + hi) / 2;
    if (rim.every(([dy, z]) => clears(y + dy, z))) hi = y;
    else lo = y;
  }
  return hi;
};

describe('gauges, by placing a dense disc', () => {
  it('step at a pin on a leaning face', () => {
    fc.assert(
      fc.property(between(0.5, 6), between(-8, 12), (r, lean) => {
        // In front of the face y cos t + z sin t = 0.
        const centre = pushed(
          r,
          (y, z) => y * Math.cos(lean * rad) + z * Math.sin(lean * rad) >= 0,
        );
        expect(stepAtPin(r, lean)).toBeCloseTo(centre + r, 5);
        expect(pinForStep(stepAtPin(r, lean), lean)).toBeCloseTo(r, 12);
      }),
      { numRuns: 15, seed: 3 },
    );
  });

  it('lip at a pin before a wheel', () => {
    fc.assert(
      fc.property(between(0.3, 4), between(40, 200), between(-20, 40), (r, radius, drop) => {
        const centre = pushed(r, (y, z) => Math.hypot(y + radius, z - drop) >= radius);
        // The dense disc reaches its true rim within r (1 - cos(1/40 degree)).
        expect(lipBackAtPin({ radius, drop }, r)).toBeCloseTo(centre + r, 4);
      }),
      { numRuns: 15, seed: 4 },
    );
  });

  it('feeler at the lip is the distance to the nearest of many points of the wheel', () => {
    const [radius, drop, back, top] = [150, 20, 1.2, 3];
    const nearest = Math.min(
      ...Array.from({ length: 36000 }, (_, i) =>
        Math.hypot(
          radius * Math.cos((i * rad) / 100) - radius - back,
          radius * Math.sin((i * rad) / 100) + drop - top,
        ),
      ),
    );
    expect(lipFeeler({ radius, drop }, back, top)).toBeCloseTo(nearest, 4);
  });

  it('fence block puts the finished edge on the face, by turning the carriage as points', () => {
    const [forward, height, foot, angle] = [12, 70, 3, 8];
    const [c, s] = [Math.cos(angle * rad), Math.sin(angle * rad)];
    // Foot's centre at (Y, foot); the corner stands forward ahead of it and height - foot above.
    const centre = fenceBlock(forward, height, foot, angle) + foot;
    expect(centre - (forward * c + (height - foot) * s)).toBeCloseTo(0, 12);
  });

  it('two feelers tell the angle of the upright', () => {
    const [apart, angle, first] = [60, 3.2, 5];
    const second = first - apart * Math.sin(angle * rad);
    expect(angleFromFeelers(first, second, apart)).toBeCloseTo(angle, 12);
    expect(angleFromFeelers(1, 1, apart)).toBe(0);
  });
});

describe('procedures', () => {
  const all = [
    spineRestZero({
      pinRadius: 2,
      lean: 2,
      noseGap: 1,
      noseGapMost: 3.175,
      perTenth: { degrees: 0.115, bevelHeight: 0.75 },
    }),
    edgeRestZero({
      radius: 150,
      drop: 20,
      pinRadius: 0.3,
      lipThickness: 0.5,
      lipHeight: 3,
      noseGap: 1,
      noseGapMost: 3.175,
      climbPerTenth: 0.75,
    }),
    carriageZero({
      footRadius: 3,
      forward: 12,
      height: 70,
      angle: 8,
      feelersApart: 60,
      fencePerDegree: 1.2,
    }),
  ];

  it('stand still first, approach from one side, lock and read again, and come back with wear', () => {
    for (const steps of all) {
      const ids = steps.map(({ id }) => id);
      expect(ids[0]).toBe('still');
      expect(new Set(ids).size).toBe(ids.length);
      expect(ids.indexOf('approach')).toBeLessThan(ids.indexOf('lock'));
      expect(ids.indexOf('lock')).toBeLessThan(ids.indexOf('again'));
      expect(steps.map(({ text }) => text).join(' ')).toMatch(/as the belt wears/);
      for (const { text } of steps) expect(text).not.toMatch(/NaN|undefined/);
    }
  });

  it('print the computed numbers', () => {
    const words = all.map((steps) => steps.map(({ text }) => text).join(' '));
    expect(words[0]).toContain(`${Math.round(1000 * stepAtPin(2, 2)) / 1000} mm`);
    expect(words[0]).toContain('0.115 degrees and 0.75 mm');
    expect(words[1]).toContain('moves the hollow by 0.75 mm');
    expect(words[2]).toContain('1.2 mm for a degree');
  });
});
