import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { Ajv } from 'ajv';
import { toJsonSchema } from '@valibot/to-json-schema';
import { reachSchema } from '../../src/adapt/output-schema.ts';
import { isProved, provedRun, reachTable, type Band } from '../../src/adapt/reach.ts';
import { solveDesign } from '../../src/make/engine.ts';
import { bandOf, boxOf, holds, openedOf, raise, solved } from './boxes.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Fixture } from '../../src/family/index.ts';
import { point, type Interval } from '../../src/geometry/interval.ts';
import { contactOf, holdOn, pushFor } from '../../src/grind/spine-rest/push.ts';
import { pushRoom, standingRange } from '../../src/grind/spine-rest/section-range.ts';
import { settle } from '../../src/grind/spine-rest/settle.ts';
import { barSection } from '../../src/grind/section/section.ts';

const opened = openedOf('spine-rest');

const limitsOf = (fixture: Fixture) => fixture.reach?.limits ?? [];

describe('a range of standing bars', () => {
  it('holds every bar of it that is settled into its contacts one by one', () => {
    const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const spread = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.record({
          height: size(12, 80),
          thickness: size(1.5, 6),
          angle: size(1, 12),
          edge: size(0.05, 0.4),
          radius: size(0, 0.7),
          lean: size(-3, 5),
        }),
        fc.tuple(spread, spread, spread, spread),
        (bar, [a, b, c, d]) => {
          // The bevel ends on the flank, which is where the closed form holds.
          const bevel = (bar.thickness / 2 - bar.edge) / Math.tan((bar.angle * Math.PI) / 180);
          fc.pre(bevel < bar.height - bar.radius - 1 && bar.angle + bar.lean > 0.5);
          const around = (value: number, share: number, by: number): Interval => [
            value - share * by,
            value + (1 - share) * by,
          ];
          const range = {
            height: around(bar.height, a, 2),
            thickness: around(bar.thickness, b, 0.2),
            angle: around(bar.angle, c, 0.2),
            edge: around(bar.edge, d, 0.02),
            spineRadius: point(bar.radius),
            lean: bar.lean,
          };
          const section = barSection(bar.thickness, bar.height, bar.radius);
          const face = { edge: bar.edge, angle: bar.angle };
          const stood = settle(section, face, bar.lean);
          const standing = standingRange(range);
          expect(holds(standing.setoff, stood.setoff)).toBe(true);
          expect(holds(standing.corner, stood.seat[0])).toBe(true);
          expect(holds(standing.step, stood.step[1])).toBe(true);
          expect(holds(standing.edge, stood.edge[1])).toBe(true);
          expect(holds(standing.bevel, bevel)).toBe(true);
          const contact = contactOf(section, face, stood);
          if (contact === undefined) throw new Error('the face misses the bar');
          for (const friction of [-0.6, 0.2, 0.6]) {
            const room = contact[1] - pushFor(holdOn(stood, contact), 0.1, friction);
            expect(holds(pushRoom(range, standing, 0.1, friction), room)).toBe(true);
          }
          // A single bar is a range of hardly any width.
          const single = standingRange({
            height: point(bar.height),
            thickness: point(bar.thickness),
            angle: point(bar.angle),
            edge: point(bar.edge),
            spineRadius: point(bar.radius),
            lean: bar.lean,
          });
          expect(single.setoff[1] - single.setoff[0]).toBeLessThan(1e-10);
        },
      ),
      { numRuns: 300, seed: 3 },
    );
  });

  it('agrees with the worked example: T 3, e 0.2, H 50, 3.5 degrees', () => {
    // 1.6 cos 3.5 + 50 sin 3.5, and the near corner 3 cos 3.5 nearer to the belt.
    const rad = (3.5 * Math.PI) / 180;
    const setoff = 1.6 * Math.cos(rad) + 50 * Math.sin(rad);
    const { setoff: range, corner } = standingRange({
      height: point(50),
      thickness: point(3),
      angle: point(3.5),
      edge: point(0.1),
      spineRadius: point(0),
      lean: 0,
    });
    expect(range[0]).toBeCloseTo(setoff, 9);
    expect(corner[0]).toBeCloseTo(setoff - 3 * Math.cos(rad), 9);
  });
});

/** A bar of a knife: straight spine and edge, both sides to one angle. */
const withBar = (design: Design, thickness: number, height: number, angle: number): Design => {
  const [blade] = design.blades;
  if (!blade) throw new Error('no blade');
  const length = 150;
  return {
    ...design,
    blades: [
      {
        ...blade,
        outline: {
          kind: 'curves',
          spine: [
            [0, 0],
            [length, 0],
          ],
          edge: [
            [0, height],
            [length, height],
          ],
        },
        thickness: [{ u: 0, t: thickness }],
        bevels: { left: { kind: 'angle', angle }, right: { kind: 'angle', angle } },
      },
    ],
  };
};

describe('what a spine rest can still grind', () => {
  const design = opened('kitchen-210');
  const fixture = solved(design);
  const limits = limitsOf(fixture);
  const { axes } = fixture.reach ?? raise('no reach');

  it('holds the blades it was made for', () => {
    for (const { places } of fixture.lines)
      for (const { height, thickness, angle } of places.slice(0, 5))
        expect(isProved(limits, boxOf(height, thickness, angle))).toBe(true);
  });

  it('states of blades drawn from the proved bands what the solver finds for them', () => {
    const travel = limits.find(({ id }) => id === 'travel');
    const bands: Band[] = [bandOf([45, 50], [3, 3.5]), bandOf([30, 35], [4, 4.5])];
    for (const band of bands) {
      const angles = provedRun(limits, axes, band);
      if (!angles || !travel) throw new Error('nothing proved');
      expect(angles[1] - angles[0]).toBeGreaterThan(1);
      for (const share of [0, 1]) {
        const [thickness = 0, height = 0, angle = 0] = [band.up, band.across, angles].map(
          ([low, high], i) => low + (i === 1 ? 1 - share : share) * (high - low),
        );
        const other = solveDesign(withBar(design, thickness, height, angle), registry);
        expect(other.ok, JSON.stringify(other.issues)).toBe(true);
        const settings = other.ok ? other.value.settings : [];
        expect(settings.length).toBeGreaterThan(5);
        for (const setting of settings) {
          const reading = (key: string): number =>
            setting.readings.find((one) => one.key === key)?.value ?? NaN;
          const { setoff } = standingRange({
            thickness: point(thickness),
            height: point(height),
            angle: point(setting.angle),
            edge: point(reading('edgeSide')),
            spineRadius: point(design.blades[0]?.spineRadius ?? 0),
            lean: 0,
          });
          expect(setoff[0]).toBeCloseTo(reading('setoff'), 6);
        }
        const [low, high] = travel.found(boxOf(height, thickness, angle));
        // The same blade built for itself needs no more travel than was stated of it.
        const own = other.ok ? limitsOf(other.value).find(({ id }) => id === 'travel') : undefined;
        expect(low).toBeGreaterThanOrEqual(own?.atLeast ?? Infinity);
        expect(high).toBeLessThanOrEqual(own?.atMost ?? -Infinity);
      }
    }
  });

  it('ends where a limit is met: just beyond, some blade of the band is out of reach', () => {
    const band: Band = bandOf([45, 50], [3, 3.5]);
    const angles = provedRun(limits, axes, band);
    if (!angles) throw new Error('nothing proved');
    const corners = (angle: number): boolean[] =>
      band.up.flatMap((thickness) =>
        band.across.map((height) => isProved(limits, boxOf(height, thickness, angle))),
      );
    expect(corners((angles[0] + angles[1]) / 2)).toEqual([true, true, true, true]);
    expect(corners(angles[0] - 0.3)).toContain(false);
    expect(corners(angles[1] + 0.3)).toContain(false);
  });

  it('is tabled as its published schema says, every band inside the ranges', () => {
    if (!fixture.reach) throw new Error('no reach');
    const table = reachTable(design.name, 'Spine rest', fixture.reach);
    const written: unknown = JSON.parse(JSON.stringify(table));
    const schema = JSON.parse(JSON.stringify(toJsonSchema(reachSchema))) as object;
    const validate = new Ajv({ strict: false }).compile(schema);
    expect(validate(written), JSON.stringify(validate.errors)).toBe(true);
    expect(table.bands.length).toBeGreaterThan(20);
    for (const { run } of table.bands) expect(run[1]).toBeGreaterThan(run[0]);
  });

  it('widens with the travel of the step', () => {
    const more: Design = {
      ...design,
      fixture: {
        ...design.fixture,
        parameters: { ...design.fixture.parameters, travelReserve: 5 },
      },
    };
    const travelOf = (of: Fixture): number => {
      const limit = limitsOf(of).find(({ id }) => id === 'travel');
      return (limit?.atMost ?? 0) - (limit?.atLeast ?? 0);
    };
    expect(travelOf(solved(more))).toBeGreaterThan(travelOf(fixture));
  });
});
