import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isProved, provedRun, reachTable } from '../../src/adapt/reach.ts';
import { bandOf, boxOf, holds, openedOf, raise, solved } from './boxes.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Fixture } from '../../src/family/index.ts';
import { point, type Interval } from '../../src/geometry/interval.ts';
import { fenceDistance } from '../../src/grind/carriage/fence.ts';
import { highestPush } from '../../src/grind/carriage/push.ts';
import { screwExtension } from '../../src/grind/carriage/screw.ts';
import { carriageRange, highestPushRange } from '../../src/grind/carriage/section-range.ts';
import { heelBehind, onStage } from '../../src/grind/carriage/stage.ts';

const RADIAN = Math.PI / 180;

describe('a range of bars on a carriage', () => {
  it('is the tangent bar of the textbook for equal rounds on a square platen', () => {
    // L tan a = 100 tan 10 = 17.632698 (any table of tangents); the tip then stands L / cos a
    // behind the foot: 101.542661.
    const found = carriageRange({
      thickness: point(3),
      angle: point(10),
      edge: point(0.25),
      midplane: point(1.5),
      carriage: { base: 100, footRadius: 6, tipRadius: 6 },
      forward: 30,
      edgeHeight: 95,
      lean: 0,
    });
    expect(found.extension[0]).toBeCloseTo(17.632698, 6);
    expect(found.heelBehind[0]).toBeCloseTo(101.542661, 6);
    // (3/2 - 0.25) / tan 10 = 1.25 / 0.17632698.
    expect(found.bevel[0]).toBeCloseTo(7.089102, 5);
  });

  it('holds what the solver finds for every bar of it, one by one', () => {
    const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.record({
          thickness: size(2, 8),
          angle: size(2, 15),
          edge: size(0.05, 0.5),
          half: size(1, 4),
          forward: size(20, 50),
          edgeHeight: size(70, 130),
          lean: size(-2, 5),
          friction: size(-0.6, 0.6),
        }),
        fc.tuple(share, share, share),
        (bar, [a, b, c]) => {
          const around = (value: number, part: number, by: number): Interval => [
            value - part * by,
            value + (1 - part) * by,
          ];
          const carriage = { base: 100, footRadius: 6, tipRadius: 3 };
          const { forward, edgeHeight, lean, half, angle, friction } = bar;
          const found = carriageRange({
            thickness: around(bar.thickness, a, 0.3),
            angle: around(angle, b, 0.2),
            edge: around(bar.edge, c, 0.02),
            midplane: point(half),
            carriage,
            forward,
            edgeHeight,
            lean,
          });
          const [tilt, ahead] = [angle + lean, forward + half + bar.edge];
          const extension = screwExtension(carriage, tilt);
          const footCentre = fenceDistance(ahead, edgeHeight, 6, angle, lean);
          const behind = heelBehind(carriage, extension, tilt);
          const [y, z] = onStage({ footRadius: 6, footCentre, tilt }, ahead, edgeHeight);
          const high = z * Math.cos(lean * RADIAN) - y * Math.sin(lean * RADIAN);
          const low = high - (bar.thickness / 2 - bar.edge) / Math.sin(angle * RADIAN);
          expect(holds(found.extension, extension)).toBe(true);
          expect(holds(found.footCentre, footCentre)).toBe(true);
          expect(holds(found.heelBehind, behind)).toBe(true);
          expect(holds(found.high, high)).toBe(true);
          expect(holds(found.low, low)).toBe(true);
          const push = highestPush(
            { contact: low, footCentre, heelBehind: behind, lean },
            0.2,
            friction,
          );
          expect(holds(highestPushRange(found, lean, 0.2, friction), push)).toBe(true);
        },
      ),
      { numRuns: 300, seed: 11 },
    );
  });
});

const opened = openedOf('carriage');

/** A bar with straight spine and edge, both sides to one angle, on the tang of the first blade. */
const withBar = (design: Design, thickness: number, height: number, angle: number): Design => ({
  ...design,
  blades: design.blades.slice(0, 1).map((blade) => ({
    ...blade,
    outline: {
      kind: 'curves',
      spine: [
        [0, 0],
        [60, 0],
      ],
      edge: [
        [0, height],
        [60, height],
      ],
    },
    thickness: [{ u: 0, t: thickness }],
    bevels: { left: { kind: 'angle', angle }, right: { kind: 'angle', angle } },
  })),
});

type Told = Fixture['settings'][number];

const reading = (setting: Told | undefined, key: string): number =>
  setting?.readings.find((one) => one.key === key)?.value ?? NaN;

/** Half of the foot's bar, 12 mm: its centre stands so far behind its front. */
const FOOT = 6;

/**
 * The upright ahead of the foot on a square platen, from what a maker reads: the edge's corner
 * stands on the belt, tipped by a: y_c = (F + half + e) cos a + (h - r) sin a.
 */
const forwardOf = (setting: Told | undefined, { blades }: Design): number => {
  const a = reading(setting, 'tilt') * RADIAN;
  const up = (reading(setting, 'edgeHeight') - FOOT) * Math.sin(a);
  const ahead = (reading(setting, 'fence') + FOOT - up) / Math.cos(a);
  return ahead - (blades[0]?.tang.thickness ?? NaN) / 2 - reading(setting, 'edgeSide');
};

describe('what a carriage can still grind', () => {
  const design = opened('sheepsfoot-95');
  const fixture = solved(design);
  const { axes, limits } = fixture.reach ?? raise('no reach');
  const limit = (id: string) => {
    const found = limits.find((one) => one.id === id);
    if (!found) throw new Error(`no limit ${id}`);
    return found;
  };

  it('holds the blades it was made for', () => {
    for (const { places } of fixture.lines)
      for (const { height, thickness, angle } of places.slice(0, 3))
        expect(isProved(limits, boxOf(height, thickness, angle))).toBe(true);
  });

  it('states of bars at the ends of proved bands what the solver finds for them', () => {
    const band = bandOf([25, 27.5], [4, 4.5]);
    const angles = provedRun(limits, axes, band);
    if (!angles) throw new Error('nothing proved');
    for (const share of [0, 1]) {
      const [thickness = 0, height = 0, angle = 0] = [band.up, band.across, angles].map(
        ([low, high]) => low + share * (high - low),
      );
      const bar = withBar(design, thickness, height, angle);
      const other = solved(bar);
      const box = boxOf(height, thickness, angle);
      expect(other.settings.length).toBe(2 * design.sequence.length);
      for (const setting of other.settings) {
        // Solved for itself the carriage gets an upright of its own: taken off again here.
        const own = forwardOf(setting, bar) - forwardOf(fixture.settings[0], design);
        const foot = reading(setting, 'fence') + FOOT - own * Math.cos(setting.angle * RADIAN);
        expect(holds(limit('fence').found(box), foot)).toBe(true);
        expect(holds(limit('heel').found(box), reading(setting, 'heel'))).toBe(true);
        expect(foot).toBeGreaterThan(limit('fence').atLeast ?? Infinity);
        expect(foot).toBeLessThan(limit('fence').atMost ?? -Infinity);
        expect(reading(setting, 'heel')).toBeLessThan(limit('heel').atMost ?? -Infinity);
      }
    }
  });

  it('ends where a limit is met, and is tabled in bands that its jaw can take', () => {
    if (!fixture.reach) throw new Error('no reach');
    const { bands } = reachTable(design.name, 'Carriage', fixture.reach);
    expect(bands.length).toBeGreaterThan(10);
    for (const band of bands) {
      const beyond = { ...band, run: point(band.run[1] + 0.3), also: point(0) };
      expect(isProved(limits, beyond)).toBe(false);
    }
  });
});
