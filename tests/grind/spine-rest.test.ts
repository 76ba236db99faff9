import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barSection, flipped } from '../../src/grind/section/section.ts';
import { bevelHeight, ground } from '../../src/grind/section/ground.ts';
import { angleFor, reachable } from '../../src/grind/spine-rest/angle.ts';
import { progress } from '../../src/grind/spine-rest/progress.ts';
import { setoffFor, setoffPerDegree, settle } from '../../src/grind/spine-rest/settle.ts';
import { bar, grind, mirror } from './brute.ts';

/** A number of an interval, even over it. */
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const runs = { numRuns: 40, seed: 20 };

/** Bars, leans and edges a maker could meet; the radius as a share of half the thickness. */
const situation = fc.record({
  thickness: between(1, 8),
  height: between(12, 80),
  rounding: fc.oneof(fc.constant(0), between(0.05, 1)),
  lean: fc.oneof(fc.constant(0), between(-3, 8)),
  edge: between(0.02, 0.4),
  angle: between(0.6, 9),
});

describe('a section settled in seat and step', () => {
  it('has the angle and bevel height that brute-force placement and cutting measure', () => {
    fc.assert(
      fc.property(situation, (given) => {
        const { thickness, height, rounding, lean, edge, angle } = given;
        fc.pre(angle + lean > 0.2);
        const r = (rounding * thickness) / 2;
        const section = barSection(thickness, height, r);
        const face = { edge, angle };
        const { setoff } = settle(section, face, lean);
        const cutBar = grind(bar(thickness, height, r), height, setoff, edge, lean);
        expect(Math.abs(cutBar.angle - angle)).toBeLessThan(1e-3);
        expect(Math.abs(cutBar.bevelHeight - bevelHeight(section, face))).toBeLessThan(1e-4);
        expect(angleFor(section, edge, setoff, lean)).toBeCloseTo(angle, 9);
        const pose = settle(section, face, lean);
        expect(Math.abs(pose.origin[0] - cutBar.dy)).toBeLessThan(1e-4);
        expect(Math.abs(pose.origin[1] - cutBar.dz)).toBeLessThan(1e-4);
      }),
      runs,
    );
  });

  it('carries what side one has cut to side two, edges unequal, one past the midplane', () => {
    const second = fc.record({ edge: between(-0.15, 0.4), angle: between(0.6, 9) });
    fc.assert(
      fc.property(situation, second, (one, two) => {
        const { thickness, height, rounding, lean, edge, angle } = one;
        fc.pre(Math.min(angle, two.angle) + lean > 0.2 && edge + two.edge > 0.01);
        const r = (rounding * thickness) / 2;
        const section = flipped(ground(barSection(thickness, height, r), { edge, angle }));
        const { setoff } = settle(section, two, lean);
        const first = grind(
          bar(thickness, height, r),
          height,
          settle(barSection(thickness, height, r), { edge, angle }, lean).setoff,
          edge,
          lean,
        );
        const turned = grind(mirror(first.points), height, setoff, two.edge, lean);
        expect(Math.abs(turned.angle - two.angle)).toBeLessThan(1e-3);
        expect(Math.abs(turned.bevelHeight - bevelHeight(section, two))).toBeLessThan(2e-4);
      }),
      runs,
    );
  });

  it('moves nearer on side two where side one took the corner that meets the step', () => {
    // Derived independently: (T/2 + e/2) cos 2 + 30 sin 2, then with 0.1 + 30 tan 2 for T/2.
    const one = settle(barSection(3, 30), { edge: 0.1, angle: 2 }, 0).setoff;
    const left = ground(barSection(3, 30), { edge: 0.1, angle: 2 });
    const two = settle(flipped(left), { edge: 0.1, angle: 2 }, 0).setoff;
    expect(one).toBeCloseTo(2.646, 3);
    expect(two).toBeCloseTo(2.294, 3);
  });

  it('meets the worked example: T 3, e 0.2, H 50 at 3.5 degrees', () => {
    const section = barSection(3, 50);
    const face = { edge: 0.1, angle: 3.5 };
    const { setoff, seat } = settle(section, face, 0);
    expect(setoff).toBeCloseTo(4.6494, 4);
    expect(seat[0]).toBeCloseTo(1.66, 2);
    expect(bevelHeight(section, face)).toBeCloseTo(22.9, 1);
    expect(0.1 / setoffPerDegree(section, face, 0)).toBeCloseTo(0.115, 3);
    expect(settle(section, { edge: 0.1, angle: 2 }, 0).seat[0]).toBeCloseTo(0.35, 2);
  });

  it('is the same on either side: a turned section settles as itself', () => {
    fc.assert(
      fc.property(situation, ({ thickness, height, rounding, lean, edge, angle }) => {
        fc.pre(angle + lean > 0.2);
        const section = barSection(thickness, height, (rounding * thickness) / 2);
        const one = settle(section, { edge, angle }, lean);
        const other = settle(flipped(flipped(section)), { edge, angle }, lean);
        expect(other.setoff).toBeCloseTo(one.setoff, 12);
        expect(settle(flipped(section), { edge, angle }, lean).setoff).toBeCloseTo(one.setoff, 12);
      }),
      runs,
    );
  });

  it('leans further the farther the step stands, and its bevel is lower', () => {
    fc.assert(
      fc.property(situation, between(0.01, 0.99), ({ thickness, height, lean, edge }, share) => {
        const section = barSection(thickness, height);
        const span = reachable(section, edge, lean);
        if (span === undefined) return;
        const { from, to } = span.setoff;
        const setoff = from + share * (to - from);
        const near = angleFor(section, edge, setoff, lean) ?? NaN;
        const far = angleFor(section, edge, setoff + 0.005 * (to - from), lean) ?? NaN;
        expect(far).toBeGreaterThan(near);
        expect(bevelHeight(section, { edge, angle: far })).toBeLessThanOrEqual(
          bevelHeight(section, { edge, angle: near }),
        );
      }),
      runs,
    );
  });

  it('has no angle outside what can be reached', () => {
    const section = barSection(3, 50);
    expect(angleFor(section, 0.1, 1.6, 0)).toBeUndefined();
    expect(angleFor(section, 0.1, 400, 0)).toBeUndefined();
    // A cube stops leaning at 45 degrees: beyond, its setoff shrinks.
    const span = reachable(barSection(10, 5), 0.1, 0);
    const steepest = Math.atan2(5, 5.1) / (Math.PI / 180);
    expect(span?.angle.to).toBeCloseTo(steepest, 3);
  });
});

describe('progress at one setoff', () => {
  it('follows the edge: nothing stops the cut', () => {
    const section = barSection(3, 50);
    const [thick, thin] = progress(section, 4.6494, 0, [0.35, 0.1]);
    expect(thick?.angle).toBeCloseTo(3.21, 2);
    expect(thick?.bevelHeight).toBeCloseTo(20.5, 1);
    expect(thin?.angle).toBeCloseTo(3.5, 2);
    expect(thin?.bevelHeight).toBeCloseTo(22.9, 1);
  });

  it('agrees with brute force, and its gain with the slope between two brute-force cuts', () => {
    fc.assert(
      fc.property(situation, ({ thickness, height, lean, edge, angle }) => {
        fc.pre(angle + lean > 0.2 && thickness / 2 > edge + 0.3);
        fc.pre((thickness / 2 - edge) / Math.tan((angle * Math.PI) / 180) < height - 3);
        const section = barSection(thickness, height);
        const setoff = setoffFor(section, { edge, angle }, lean);
        const [row] = progress(section, setoff, lean, [edge]);
        const cuts = [edge - 1e-3, edge + 1e-3].map((e) =>
          grind(bar(thickness, height, 0), height, setoff, e, lean),
        );
        const slope = ((cuts[0]?.bevelHeight ?? 0) - (cuts[1]?.bevelHeight ?? 0)) / 2e-3;
        expect(row?.angle).toBeCloseTo(angle, 9);
        expect(Math.abs((row?.gain ?? 0) / slope - 1)).toBeLessThan(1e-3);
      }),
      runs,
    );
  });
});
