import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gaugeHeight, lipAtPin } from '../../jigs/edge-rest/site.ts';
import { FARTHEST_PAD, zeroPinOf } from '../../jigs/edge-rest/zero-pin.ts';
import { dowelPin } from '../../src/hardware/index.ts';
import { stepAtPin } from '../../src/setup/zero/step-pin.ts';

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
      }),
      { numRuns: 15, seed: 3 },
    );
  });

  it('lip at a pin before a wheel, also one lower than the pin is thick', () => {
    const lip = between(0.5, 8);
    fc.assert(
      fc.property(between(2, 5), between(40, 200), between(-20, 40), lip, (r, radius, drop, h) => {
        const centre = pushed(r, (y, z) => Math.hypot(y + radius, z - drop) >= radius);
        // The lip comes from the wheel's side as far as the part of the rim that it is as high as.
        const met = Array.from({ length: 7200 }, (_, i) => [
          centre + r * Math.cos((i * rad) / 20),
          r + r * Math.sin((i * rad) / 20),
        ]).flatMap(([y = 0, z = 0]) => (z <= h ? [y] : []));
        // The dense disc reaches its true rim within r (1 - cos(1/40 degree)), its height within
        // r / 20 degrees.
        const wheel = { radius, drop, foremost: 0 };
        expect(Math.abs(lipAtPin(wheel, r, h) - Math.min(...met))).toBeLessThan(r / 500);
      }),
      { numRuns: 15, seed: 4 },
    );
  });

  it('a block against a lip under the wheel touches it with its upper front edge', () => {
    fc.assert(
      fc.property(between(40, 200), between(10, 40), between(-8, -0.1), (radius, drop, lip) => {
        const height = gaugeHeight({ radius, drop, foremost: 0 }, lip);
        const low = drop - Math.sqrt(radius ** 2 - (radius + lip) ** 2);
        // A block that is lower than 3 mm is no block to hold.
        if (height === undefined) expect(low).toBeLessThanOrEqual(3);
        else {
          // The edge lies on the wheel, below its axis: nothing of the block lies in it.
          expect(Math.hypot(radius + lip, height - drop)).toBeCloseTo(radius, 9);
          expect(height).toBeLessThanOrEqual(drop);
        }
      }),
      { numRuns: 100, seed: 5 },
    );
    expect(gaugeHeight({ radius: 100, drop: 30, foremost: 0 }, -3)).toBeCloseTo(5.68951, 5);
    expect(gaugeHeight({ radius: 100, drop: 30, foremost: 0 }, 0)).toBeUndefined();
  });

  it('a pin for the zero lies on both pads, or over a strip, as long as there is one', () => {
    for (let end = 5; end <= FARTHEST_PAD; end += 0.5) {
      const pin = zeroPinOf(true, end);
      expect(pin).toBeDefined();
      if (!pin) continue;
      const { lengths, chamfer } = dowelPin(pin.diameter);
      expect(lengths).toContain(pin.length);
      expect(pin.length / 2 - chamfer - end).toBeGreaterThanOrEqual(3);
    }
    expect(zeroPinOf(true, FARTHEST_PAD + 0.1)).toBeUndefined();
    expect(zeroPinOf(false, 75)).toEqual({ diameter: 6, length: 60 });
  });
});
