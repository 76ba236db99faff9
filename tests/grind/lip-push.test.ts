import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holdOf } from '../../src/grind/edge-rest/push.ts';
import type { Standing } from '../../src/grind/edge-rest/stand.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rad = Math.PI / 180;

/** The wheel's forces over many strips, each worn as fast as the blade turns into it about the lip. */
const strips = (
  { radius, drop }: { radius: number; drop: number },
  [from, to]: readonly [number, number],
  { seat, touch }: Pick<Standing, 'seat' | 'touch'>,
  friction: number,
) => {
  const n = 20_000;
  let [fy, fz, moment] = [0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    const a = (from + ((to - from) * (i + 0.5)) / n) * rad;
    const [y, z] = [radius * Math.cos(a) - radius, radius * Math.sin(a) + drop];
    const speed = Math.max(0, (z - touch[1]) * Math.cos(a) - (y - touch[0]) * Math.sin(a));
    const dy = speed * (Math.cos(a) + friction * Math.sin(a));
    const dz = speed * (Math.sin(a) - friction * Math.cos(a));
    [fy, fz] = [fy + dy, fz + dz];
    moment += (z - seat[1]) * dy - (y - seat[0]) * dz;
  }
  return { centre: moment / fy, down: -fz / fy };
};

describe('the load of a wheel on a hollow', () => {
  // Preston's law by the midpoint rule, whose strips know nothing of the closed form.
  it('is the sum over narrow strips, also where the pressure ends within the contact', () => {
    let ended = 0;
    fc.assert(
      fc.property(
        between(20, 200),
        between(-10, 50),
        between(-10, 10),
        between(0.01, 12),
        fc.tuple(between(-3, 3), between(0, 5), between(-4, 4)),
        between(-0.6, 0.6),
        (radius, drop, middle, half, [y, z, behind], friction) => {
          const wheel = { radius, drop };
          const touch = [y, z] as const;
          const standing = {
            tilt: 0,
            origin: touch,
            lip: y,
            seat: [y + behind, 0],
            touch,
            corner: touch,
          } as const;
          const [from, to] = [middle - half, middle + half];
          const starts = Math.atan2(z - drop, radius + y) / rad;
          fc.pre(starts < to - 0.5);
          if (starts > from) ended += 1;
          const summed = strips(wheel, [from, to], standing, friction);
          const found = holdOf(wheel, { from, to }, standing, friction);
          expect(Math.abs(found.centre - summed.centre)).toBeLessThan(2e-5 * radius);
          expect(found.down).toBeCloseTo(summed.down, 6);
          expect(found.lip).toBe(z);
        },
      ),
      { numRuns: 60, seed: 21 },
    );
    expect(ended).toBeGreaterThan(3);
  });

  it('is none where the whole contact lies below the normal through the lip', () => {
    const touch = [0, 5] as const;
    const standing = {
      tilt: 0,
      origin: touch,
      lip: 0,
      seat: [0, 0],
      touch,
      corner: touch,
    } as const;
    expect(holdOf({ radius: 100, drop: 0 }, { from: -9, to: 1 }, standing, 0.2).centre).toBeNaN();
  });
});
