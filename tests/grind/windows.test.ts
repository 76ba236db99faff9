import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planSpineRest, type SpineRestLine } from '../../src/grind/index.ts';
import { reachedAngles, strokeOf, windowsOf } from '../../src/grind/spine-rest/windows.ts';
import { grinder, input, parameters, strip } from './samples.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const lineOf = (over: Parameters<typeof input>[0]): SpineRestLine => {
  const result = planSpineRest(input(over));
  const line = result.ok ? result.value.lines[0] : undefined;
  if (line === undefined) throw new Error(JSON.stringify(result.issues));
  return line;
};
const most = (line: SpineRestLine): number =>
  Math.max(...line.places.map(({ leftStanding }) => leftStanding));

describe('the angle a belt of finite width reaches', () => {
  it('is the greatest of the least angles of the windows over a place, tried one by one', () => {
    const angles = fc.array(between(1, 9), { minLength: 12, maxLength: 12 });
    fc.assert(
      fc.property(
        angles,
        between(0.5, 6),
        between(0, 2),
        between(0.5, 8),
        (list, width, stop, tip) => {
          const places = list.map((angle, i) => ({ u: i, angle }));
          const stroke = strokeOf(width, 11, stop, tip);
          const best = places.map(() => -Infinity);
          const n = 1501;
          for (let k = 0; k <= n; k += 1) {
            const middle = stroke.from + ((stroke.to - stroke.from) * k) / n;
            const under = places.filter(({ u }) => Math.abs(u - middle) <= width / 2 + 1e-9);
            const least = Math.min(...under.map(({ angle }) => angle));
            for (const { u } of under) best[u] = Math.max(best[u] ?? 0, least);
          }
          const windows = windowsOf(
            places.map(({ u }) => u),
            stroke,
          );
          const reached = reachedAngles(list, windows);
          // A walk in steps can miss a window, never find one that is not there.
          reached.forEach((angle, i) =>
            expect(angle).toBeGreaterThanOrEqual((best[i] ?? 0) - 1e-12),
          );
          const agree = reached.filter((angle, i) => angle <= (best[i] ?? 0) + 1e-12);
          expect(agree.length).toBeGreaterThanOrEqual(10);
        },
      ),
      { numRuns: 60, seed: 2, endOnFailure: true },
    );
  });

  it('leaves nothing on a straight blade', () => {
    expect(most(lineOf({}))).toBe(0);
  });

  // The reference magnitudes count both sides together; a line has one.
  it('leaves 0.5 mm with taper 3 to 1.5 over 150 when the tip stays on, 0.03 when stroked off', () => {
    const blade = strip({
      thickness: [
        { u: 0, t: 3 },
        { u: 150, t: 1.5 },
      ],
    });
    const stays = { ...parameters, tipOverlap: 50, aim: 'place' as const };
    const runsOff = { ...parameters, tipOverlap: 3, aim: 'place' as const };
    expect(2 * most(lineOf({ blades: [blade], parameters: stays }))).toBeCloseTo(0.5, 1);
    expect(2 * most(lineOf({ blades: [blade], parameters: runsOff }))).toBeCloseTo(0.03, 2);
  });

  it('leaves 0.36 mm for a heel 3 mm lower at the plunge, 0.2 for a 2 mm recurve', () => {
    const outline = (edge: [number, number][]) =>
      strip({
        outline: {
          kind: 'curves',
          spine: [
            [0, 0],
            [150, 0],
          ],
          edge,
        },
      });
    const heel = outline([
      [0, 47],
      [20, 50],
      [150, 50],
    ]);
    const recurve = outline([
      [0, 50],
      [40, 50],
      [65, 48],
      [90, 50],
      [150, 50],
    ]);
    const at = { ...parameters, aim: 'place' as const };
    expect(2 * most(lineOf({ blades: [heel], parameters: at }))).toBeCloseTo(0.36, 1);
    expect(2 * most(lineOf({ blades: [recurve], parameters: at }))).toBeCloseTo(0.2, 0);
    expect(2 * most(lineOf({ blades: [recurve], parameters: at }))).toBeGreaterThan(0.15);
  });

  it('leaves less under a narrower belt', () => {
    const blade = strip({
      thickness: [
        { u: 0, t: 3 },
        { u: 150, t: 1.5 },
      ],
    });
    const { belt } = grinder();
    const at = (width: number) =>
      most(
        lineOf({
          blades: [blade],
          grinder: grinder({ belt: { ...belt, width } }),
          parameters: { ...parameters, tipOverlap: width },
        }),
      );
    expect(at(25)).toBeLessThan(at(50));
  });
});
