import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bevelHeight } from '../../src/grind/section/ground.ts';
import { barSection } from '../../src/grind/section/section.ts';
import { angleFor } from '../../src/grind/spine-rest/angle.ts';
import { GRAINS, grainSize, scratchDepth } from '../../src/grind/spine-rest/scratch.ts';
import { setoffFor, setoffPerDegree } from '../../src/grind/spine-rest/settle.ts';
import { undercutMargin } from '../../src/grind/spine-rest/undercut.ts';
import { bar, cut, type Point } from './brute.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rad = Math.PI / 180;
const none = { scratch: 0, tolerance: 0, setoffPerDegree: 1 };

const area = (points: readonly Point[]): number =>
  points.reduce((sum, [w, v], i) => {
    const [w1, v1] = points[(i + 1) % points.length] as Point;
    return sum + (w * v1 - w1 * v) / 2;
  }, 0);

/** Cuts the belt side of a polygon to a face: edge from the midplane, angle in degrees. */
const grindTo = (
  points: readonly Point[],
  height: number,
  edge: number,
  angle: number,
): Point[] => {
  const low: Point = [-(edge + 2 * height * Math.tan(angle * rad)), -height];
  return cut(points, [-edge, height], low);
};

describe('the undercut test', () => {
  it('is exact: a pass is safe iff the finished section is the same with and without it', () => {
    const passes = fc.record({
      thickness: between(1, 6),
      height: between(15, 60),
      finished: fc.record({ edge: between(0.05, 0.3), angle: between(1, 8) }),
      more: fc.record({ edge: between(-0.15, 0.25), angle: between(-1, 1.2) }),
    });
    let [safe, unsafe] = [0, 0];
    fc.assert(
      fc.property(passes, ({ thickness, height, finished, more }) => {
        const pass = { edge: finished.edge + more.edge, angle: finished.angle + more.angle };
        fc.pre(pass.edge > 0 && pass.edge < thickness / 2 && pass.angle > 0.1);
        const section = barSection(thickness, height);
        const margin = undercutMargin(pass, finished, bevelHeight(section, finished), none);
        const fresh = bar(thickness, height, 0);
        const done = grindTo(fresh, height, finished.edge, finished.angle);
        const both = grindTo(
          grindTo(fresh, height, pass.edge, pass.angle),
          height,
          finished.edge,
          finished.angle,
        );
        const lost = area(done) - area(both);
        if (margin >= 0) {
          safe += 1;
          expect(lost).toBeLessThan(1e-9);
        } else if (margin < -1e-4) {
          unsafe += 1;
          expect(lost).toBeGreaterThan(1e-9);
        }
      }),
      { numRuns: 600, seed: 4, endOnFailure: true },
    );
    expect(Math.min(safe, unsafe)).toBeGreaterThan(30);
  });

  // The section turns about the meeting point of the normals at seat and step, T sin q above the
  // seat; a bevel that comes down to there does not follow the rule.
  it('holds for any thickness and height when set no nearer and stopped no thinner', () => {
    const one = fc.record({
      thickness: between(1, 6),
      height: between(15, 60),
      lean: fc.oneof(fc.constant(0), between(-2, 6)),
      edge: between(0.05, 0.25),
      angle: between(1.5, 8),
      thicker: between(0, 0.3),
      farther: between(0, 0.4),
    });
    fc.assert(
      fc.property(one, ({ thickness, height, lean, edge, angle, thicker, farther }) => {
        fc.pre(angle + lean > 0.5 && edge + thicker < thickness / 2);
        const section = barSection(thickness, height);
        const finished = { edge, angle };
        const setoff = setoffFor(section, finished, lean) + farther;
        const steeper = angleFor(section, edge + thicker, setoff, lean);
        if (steeper === undefined) return;
        const pass = { edge: edge + thicker, angle: steeper };
        const bevel = bevelHeight(section, finished);
        fc.pre(bevel < height - 1.2 * thickness * Math.sin((steeper + lean) * rad));
        expect(undercutMargin(pass, finished, bevel, none)).toBeGreaterThan(-1e-9);
      }),
      { numRuns: 200, seed: 9, endOnFailure: true },
    );
  });

  it('takes 0.046 mm off the shoulder for a setting 0.1 mm short: the worked example', () => {
    const section = barSection(3, 50);
    const face = { edge: 0.1, angle: 3.5 };
    const rate = setoffPerDegree(section, face, 0);
    const slack = { scratch: 0, tolerance: 0.1, setoffPerDegree: rate };
    expect(undercutMargin(face, face, bevelHeight(section, face), slack)).toBeCloseTo(-0.046, 3);
  });
});

describe('a scratched pass', () => {
  it('counts as its face moved in by the depth of the scratches', () => {
    const section = barSection(3, 50);
    const finished = { edge: 0.1, angle: 3.5 };
    const bevel = bevelHeight(section, finished);
    for (const pass of [
      { edge: 0.25, angle: 3.6 },
      { edge: 0.4, angle: 3.2 },
      { edge: 0.12, angle: 4 },
    ])
      for (const scratch of [0.01, 0.04]) {
        // Square to a face that leans by a, the edge at the midplane moves by 1 / cos a of it.
        const deep = { ...pass, edge: pass.edge - scratch / Math.cos(pass.angle * rad) };
        expect(undercutMargin(pass, finished, bevel, { ...none, scratch })).toBeCloseTo(
          undercutMargin(deep, finished, bevel, none),
          12,
        );
      }
  });
});

describe('scratches', () => {
  // FEPA 43-1 / ISO 6344 mean grain sizes as two open lists have them (a complete table of 2008 and
  // a dictionary of units); the ends of the range in a third.
  it.each([
    [12, 1815],
    [36, 538],
    [60, 269],
    [120, 125],
    [220, 68],
    [240, 58.5],
    [400, 35],
    [1000, 18.3],
    [2500, 8.4],
  ])('P%d has grains of %d micrometres', (grade, size) => {
    expect(grainSize(grade)).toBe(size);
    // Common practice, no source: scratches a tenth of the grain deep.
    expect(scratchDepth(grade)).toBeCloseTo(size / 10_000, 12);
  });

  it('are finer the finer the grade, between and beyond the rows too', () => {
    for (const [i, [grade, size]] of GRAINS.entries()) {
      const [next, finer] = GRAINS[i + 1] ?? [5000, 4.2];
      expect(finer).toBeLessThan(size);
      const middle = grainSize((grade + next) / 2);
      expect(middle).toBeLessThan(size);
      expect(middle).toBeGreaterThan(finer - 1e-9);
    }
    expect(grainSize(5000)).toBeCloseTo(4.2, 9);
  });
});
