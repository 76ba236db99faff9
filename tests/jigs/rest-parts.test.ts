import { describe, expect, it } from 'vitest';
import { insideChecks } from '../../jigs/shared/checks/inside.ts';
import { barPlaces, type PlacedRest } from '../../jigs/shared/layout/mount.ts';
import { behindOf } from '../../jigs/shared/needs-of.ts';
import { mainPads } from '../../jigs/spine-rest/pads.ts';
import { rangeChecks } from '../../jigs/spine-rest/checks/ranges.ts';
import { solve } from '../../jigs/spine-rest/solve.ts';
import { createWorkshop } from '../../src/check/workshop.ts';
import { withValue } from '../../src/core/path.ts';
import type { Body } from '../../src/check/distance/index.ts';
import type { Assembly } from '../../src/check/set-up.ts';
import { frame } from '../../src/geometry/frame.ts';
import { dot3, type Vec3 } from '../../src/geometry/vector.ts';
import type { Placement } from '../../src/model/part.ts';
import { bar } from '../check/shapes.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

const exampleOf = (family: string, file: string) => {
  const example = examplesOf(family).find((one) => one.file.startsWith(file));
  if (!example) throw new Error('no example');
  return example;
};

/** Corners of a body's one convex solid, where the body was built. */
const cornersOf = ({ solids: [solid] }: Body): Vec3[] => {
  if (solid?.kind !== 'tree') throw new Error('no solid');
  const { points } = solid.pieces;
  return Array.from({ length: points.length / 3 }, (_, i): Vec3 => [
    points[3 * i] ?? NaN,
    points[3 * i + 1] ?? NaN,
    points[3 * i + 2] ?? NaN,
  ]);
};

const spanAlong = (points: readonly Vec3[], way: Vec3): readonly [number, number] => {
  const all = points.map((p) => dot3(p, way));
  return [Math.min(...all), Math.max(...all)];
};

describe('the hand on a push stick', () => {
  // The handle rises at 45 degrees; fingers take 25 mm under it, a palm 40 mm to either side (common
  // practice, no source).
  it.each([
    ['spine-rest', 'paring'],
    ['edge-rest', 'herb'],
  ])('holds the handle of the stick as it stands on a %s', (family, file) => {
    const { setUps } = valueOf(
      solved(exampleOf(family, file)).solids?.() ?? { ok: false, issues: [] },
    );
    const bodies = setUps.find((one) => one.bodies.has('handOnStick'))?.bodies;
    const [stick, hand] = ['stick', 'handOnStick'].map((name) => bodies?.get(name));
    if (!stick || !hand) throw new Error('no stick');
    const half = Math.SQRT1_2;
    const [along, up]: Vec3[] = [
      [0, half, half],
      [0, -half, half],
    ];
    if (!along || !up) throw new Error('no ways');
    const [handle, held] = [cornersOf(stick), cornersOf(hand)];
    const [, end] = spanAlong(handle, along);
    // Its last 5 mm are handle alone: no stop stands out of them.
    const last = handle.filter((p) => dot3(p, along) > end - 12);
    const [low, high] = spanAlong(last, up);
    expect(spanAlong(held, up)[0]).toBeCloseTo(low - 25, 5);
    expect(spanAlong(held, up)[1]).toBeGreaterThanOrEqual(high - 1e-5);
    expect(spanAlong(held, along)[1]).toBeCloseTo(end, 5);
    const [left, right] = spanAlong(held, [1, 0, 0]);
    expect(left).toBeCloseTo(-40, 9);
    expect(right).toBeCloseTo(40, 9);
  });
});

describe('what stands behind the plunge', () => {
  const [given] = exampleOf('spine-rest', 'kitchen').design.blades;
  if (!given) throw new Error('no blade');
  const blade = {
    ...given,
    ricasso: 10,
    tang: { ...given.tang, drop: 3, height: 12, thickness: 9 },
  };

  it('is the ricasso alone where the collar lies on it, and the tang too where it reaches there', () => {
    const thickness = blade.thickness[0]?.t ?? NaN;
    const on = behindOf(blade, -8, -2);
    expect(on.thickness).toBeLessThan(9);
    expect(on.thickness).toBeCloseTo(thickness, 1);
    expect(on.to - on.from).toBeGreaterThan(12);
    // From 20 behind the plunge: 10 mm of ricasso and 8 of tang.
    const both = behindOf(blade, -20, -2);
    expect(both.thickness).toBe(9);
    expect(both.to).toBeCloseTo(on.to, 0);
    expect(both.from).toBeCloseTo(Math.min(on.from, 3), 6);
    // Behind it the tang alone.
    expect(behindOf(blade, -30, -12)).toEqual({ from: 3, to: 15, thickness: 9 });
  });
});

describe('clamp bars beside a narrow base', () => {
  it('start behind its ears', () => {
    const rest: PlacedRest = {
      kind: 'table',
      half: 60,
      front: 2,
      back: 142,
      thickness: 10,
      pattern: { kind: 'edges' },
      offset: 0,
    };
    const base = { half: 45, front: 4, back: 140 };
    const [width, ears] = [20, 50];
    const at = barPlaces(rest, base, [], 3, ears, width);
    expect(at).toHaveLength(4);
    // The whole bar lies under the ears.
    for (const [, y] of at) expect(y - width / 2).toBeGreaterThanOrEqual(ears);
  });
});

describe('parts that are carried to other places', () => {
  const placement = (name: string, y: number, carrier: Placement['carrier']): Placement => ({
    part: name,
    name,
    frame: frame([0, y, 0]),
    carrier,
    touches: [],
  });

  it.each([
    [40, true],
    [-85, false],
  ])('are held apart wherever they stand, moved by %s mm at the second setting', (by, sound) => {
    const assembly: Assembly = {
      parts: ['fixed', 'slide'].map((id) => bar(id, 10, 10, 10)),
      workshop: createWorkshop(),
      placements: [placement('fixed', 0, 'ground'), placement('slide', 80, 'step')],
      motions: new Map([
        [
          'step',
          [0, by].map((y, i) => ({
            kind: 'still' as const,
            label: String(i),
            pose: frame([0, y, 0]),
          })),
        ],
      ]),
      faces: [],
      up: [0, 0, 1],
      prefix: 'contact',
    };
    const all = valueOf(insideChecks(assembly)).find(({ id }) => id === 'inside/all');
    expect(all?.passed).toBe(sound);
  });
});

describe('a spine rest', () => {
  const { design } = exampleOf('spine-rest', 'kitchen');
  const question = (of = design) => valueOf(valueOf(solve(of)).question());
  const find = (of = design) => {
    const checks = rangeChecks(question(of));
    return (id: string) => checks.find((one) => one.id === id);
  };

  it('is held to its gap by the thinnest place of any spine', () => {
    const { t = NaN } = design.blades[0]?.thickness[0] ?? {};
    const { noseGap = 1 } = design.fixture.parameters;
    const thin = Number(noseGap) + 0.3;
    expect(thin).toBeLessThan(t);
    const q = question();
    const [first, ...others] = q.design.blades;
    if (!first) throw new Error('no blade');
    const tapered = { ...first, thickness: [...first.thickness, { u: 1e3, t: thin }] };
    const checks = rangeChecks({ ...q, design: { ...q.design, blades: [tapered, ...others] } });
    expect(checks.find(({ id }) => id === 'range/gap/spine')?.found).toBeCloseTo(0.3, 9);
  });

  it('pushes every blade of a family below its edge by the margin, each pad by the last tenth', () => {
    const q = question();
    const names = q.design.blades.map(({ name }) => name);
    expect(names.length).toBeGreaterThan(1);
    // A window so narrow that what is wished stands above it: the pad ends the margin below its top.
    const settings = q.plan.settings.map((setting) => ({
      ...setting,
      blades: setting.blades.map((blade) => ({
        ...blade,
        expected: blade.expected.map((one) => ({
          ...one,
          push: { ...one.push, from: 5, to: 14.32 },
        })),
      })),
    }));
    const [, second] = mainPads({ ...q.plan, settings }, names, q.v);
    expect(second?.height).toBeLessThanOrEqual(14.32 - q.v.padMargin + 1e-9);
    expect(second?.height).toBeGreaterThan(14.32 - q.v.padMargin - 0.1);
    // Where window and margin leave no room the check of the second pad fails, and at a tenth it passes.
    for (const [room, passed] of [
      [0.2, true],
      [-0.05, false],
    ] as const) {
      const narrow = settings.map((setting) => ({
        ...setting,
        blades: setting.blades.map((blade) => ({
          ...blade,
          expected: blade.expected.map((one) => ({
            ...one,
            push: { ...one.push, from: 14.32 - q.v.padMargin - room, to: 14.32 },
          })),
        })),
      }));
      const checks = rangeChecks({ ...q, plan: { ...q.plan, settings: narrow } });
      expect(checks.find(({ id }) => id === 'force/push/low/1')?.passed).toBe(passed);
    }
  });

  it('ends both slots of its slide at once, for both are as long as it travels', () => {
    const checks = valueOf(solved({ file: '', design }).checks());
    const found = (id: string) => checks.find((one) => one.id === id)?.found ?? NaN;
    expect(found('range/travel/guide')).toBeCloseTo(found('range/travel/lock'), 6);
  });

  it('is set by the feeler that fits where nose and leaning belt are nearest', () => {
    const leaning = withValue(design, 'grinder.lean', 3);
    const wide = withValue(leaning, 'fixture.parameters.noseGap', 1.3);
    const fixture = valueOf(solve(wide));
    const { v } = valueOf(fixture.question());
    // The face through the seat's origin, leaning back by 3 degrees; the nose's lower front edge.
    const t = (3 * Math.PI) / 180;
    const apart = v.noseGap * Math.cos(t) - v.plate * Math.sin(t);
    const told = fixture.settings[0]?.readings.find(({ key }) => key === 'noseGap')?.value;
    expect(told).toBeCloseTo(apart, 6);
    expect(find(wide)('range/gap/running')?.found).toBeLessThan(apart);
  });
});
