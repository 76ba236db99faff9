import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Fixture } from '../../src/family/index.ts';
import { place } from '../../src/geometry/frame.ts';
import { flatten } from '../../src/geometry/flatten.ts';
import { offset } from '../../src/geometry/offset.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import { kerfed } from '../../src/model/kerf.ts';
import type { Part, Placement } from '../../src/model/part.ts';
import { meshOf } from '../../src/model/solid.ts';

const example = (name: string): Design => {
  const opened = openDesign(readFileSync(`jigs/carriage/examples/${name}.jig.json`), registry);
  if (!opened.ok) throw new Error(opened.issues.map(({ message }) => message).join(' '));
  return opened.value;
};

const solve = (design: Design) => {
  const family = registry.families['carriage'];
  if (!family) throw new Error('no carriage');
  return family.solve(design);
};

const valueOf = <T>(
  result: { ok: true; value: T } | { ok: false; issues: readonly { message: string }[] },
): T => {
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join(' '));
  return result.value;
};

const withParameters = (design: Design, parameters: Record<string, string | number>): Design => ({
  ...design,
  fixture: {
    ...design.fixture,
    parameters: { ...design.fixture.parameters, ...parameters },
  },
});

/** Every corner of a placed part's fine mesh, seat frame. */
const corners = (
  parts: readonly Part[],
  placements: readonly Placement[],
  name: string,
): Vec3[] => {
  const placed = placements.find((p) => p.name === name);
  const part = parts.find(({ id }) => id === placed?.part);
  if (!placed || !part) throw new Error(name);
  const { vertices } = valueOf(meshOf(part.layers, { chord: 2e-4 }));
  return Array.from({ length: vertices.length / 3 }, (_, i) =>
    place(placed.frame, [
      vertices[3 * i] ?? NaN,
      vertices[3 * i + 1] ?? NaN,
      vertices[3 * i + 2] ?? NaN,
    ]),
  );
};

const least = (points: readonly Vec3[], axis: 0 | 1 | 2): number =>
  points.reduce((low, p) => Math.min(low, p[axis]), Infinity);
const most = (points: readonly Vec3[], axis: 0 | 1 | 2): number =>
  points.reduce((high, p) => Math.max(high, p[axis]), -Infinity);

/** What a stand of real parts shows at a setting, from the corners of their meshes alone. */
const standing = (fixture: Fixture, id: string, upright: string) => {
  const parts = valueOf(fixture.parts());
  const at = fixture.place(id);
  const of = (name: string) => corners(parts, at, name);
  const [foot, heel, fence, face] = ['foot-bar', 'heel-screw', 'fence', upright].map(of);
  if (!foot || !heel || !fence || !face) throw new Error('part missing');
  // The front face: the lowest corner nearest the belt, and the highest one.
  const nearest = (z: (p: Vec3) => boolean) =>
    face.filter(z).reduce((a, b) => (b[1] < a[1] ? b : a));
  const [low, high] = [least(face, 2), most(face, 2)];
  const bottom = nearest((p) => p[2] < low + 2);
  const top = nearest((p) => p[2] > high - 2);
  return {
    foot: least(foot, 2),
    heel: least(heel, 2),
    gap: least(foot, 1) - most(fence, 1),
    fence: most(fence, 1),
    angle: (Math.atan2(bottom[1] - top[1], top[2] - bottom[2]) * 180) / Math.PI,
  };
};

describe('the carriage of finished parts', () => {
  const uprights = { plates: 'upright', angle: 'upright-angle' } as const;

  it('stands on foot and heel tip, against its fence, at its angle, on random designs', () => {
    const design = example('sheepsfoot-95');
    fc.assert(
      fc.property(
        fc.record({
          length: fc.integer({ min: 90, max: 130 }),
          edgeHeight: fc.integer({ min: 88, max: 110 }),
          bevel: fc.integer({ min: 16, max: 26 }),
          thickness: fc.integer({ min: 4, max: 6 }),
        }),
        ({ length, edgeHeight, bevel, thickness }) => {
          const [blade] = design.blades;
          if (!blade) throw new Error('no blade');
          const bevels = {
            left: { kind: 'height', height: bevel },
            right: { kind: 'height', height: bevel },
          } as const;
          const given = withParameters(
            {
              ...design,
              blades: [
                {
                  ...blade,
                  bevels,
                  thickness: [{ u: 0, t: thickness }],
                  tang: { ...blade.tang, thickness },
                },
              ],
            },
            { length, edgeHeight },
          );
          const fixture = valueOf(solve(given));
          const side = fixture.settings[5];
          for (const setting of [fixture.settings[0], side]) {
            if (!setting) throw new Error('no setting');
            const stand = standing(fixture, setting.id, uprights.plates);
            expect(Math.abs(stand.foot)).toBeLessThan(1e-3);
            expect(Math.abs(stand.heel)).toBeLessThan(3e-3);
            expect(Math.abs(stand.gap)).toBeLessThan(1e-3);
            // The reading of the fence is what a gauge finds between belt and rear face.
            const fence = setting.readings.find(({ key }) => key === 'fence')?.value ?? NaN;
            expect(stand.fence).toBeCloseTo(fence, 6);
            const tilt = setting.readings.find(({ key }) => key === 'tilt')?.value ?? NaN;
            expect(Math.abs(stand.angle - tilt)).toBeLessThan(0.01);
          }
        },
      ),
      { numRuns: 6, seed: 4 },
    );
  }, 60_000);

  it('stands the same on a drilled angle', () => {
    const fixture = valueOf(solve(example('marking-60')));
    const [setting] = fixture.settings;
    const stand = standing(fixture, setting?.id ?? '', uprights.angle);
    const tilt = setting?.readings.find(({ key }) => key === 'tilt')?.value ?? NaN;
    expect(Math.abs(stand.angle - tilt)).toBeLessThan(0.01);
    expect(Math.abs(stand.heel)).toBeLessThan(3e-3);
  });

  it('keeps jaw and tang beside the belt at both ends of the stroke on both sides', () => {
    const design = example('sheepsfoot-95');
    const fixture = valueOf(solve(design));
    const parts = valueOf(fixture.parts());
    const { width, tracking } = design.grinder.belt;
    for (const { id, side } of fixture.settings) {
      const blade = design.blades[0]?.name ?? '';
      const jaw = corners(parts, fixture.place(id), 'jaw');
      const [first, last] = [fixture.poses(id, blade)[0], fixture.poses(id, blade).at(-1)];
      if (!first || !last) throw new Error('no pose');
      // The assembly is placed with the plunge at the belt; at the other end it is farther off.
      const away = side === 'left' ? -1 : 1;
      const near = away < 0 ? -most(jaw, 0) : least(jaw, 0);
      expect(near - width / 2 - tracking).toBeCloseTo(6 + 1 - tracking, 6);
      const moved = last.frame.origin[0] - first.frame.origin[0];
      expect(away * moved).toBeGreaterThan(0);
      // The plunge stands a millimetre outside the belt.
      expect(Math.abs(first.frame.origin[0])).toBeCloseTo(width / 2 + 1, 6);
    }
  });
});

describe('tabs and slots', () => {
  const fixture = valueOf(solve(example('sheepsfoot-95')));
  const parts = valueOf(fixture.parts());
  const slotsOf = (id: string) => {
    const part = parts.find((one) => one.id === id);
    return part?.kind === 'plate' ? part.holes.filter((hole) => hole.id.startsWith('tab')) : [];
  };
  const widthOf = (loop: Parameters<typeof offset>[0]): number => {
    if (loop.kind !== 'path') throw new Error('round');
    const xs = loop.vertices.map(({ x }) => x);
    return Math.max(...xs) - Math.min(...xs);
  };

  it('leave the stated play once the beam has taken its kerf', () => {
    for (const id of ['sole', 'upright']) {
      expect(slotsOf(id)).toHaveLength(4);
      for (const { loop } of slotsOf(id))
        for (const kerf of [0, 0.2, 1]) {
          const part = parts.find((one) => one.id === id);
          const outer = part?.layers[0]?.profile.outer;
          if (!outer) throw new Error('no outline');
          const path = valueOf(kerfed({ outer, holes: [loop] }, kerf)).holes[0];
          if (!path) throw new Error('no path');
          // The beam leaves half its width on either side of its path.
          const finished = widthOf(path) + kerf;
          expect(finished - 8).toBeCloseTo(0.15, 6);
          // A shop that follows the line itself makes the slot wider by the kerf.
          expect(widthOf(loop) + kerf - 8).toBeCloseTo(0.15 + kerf, 6);
        }
    }
  });

  it('meet: every tab lies in its slot and ends below the face it enters', () => {
    const placements = fixture.place('1-left');
    for (const plate of ['sole', 'upright'] as const) {
      const target = placements.find(({ name }) => name === plate);
      if (!target) throw new Error(plate);
      for (const n of [1, 2, 3, 4]) {
        const inside = corners(parts, placements, `gusset-${String(n)}`)
          .map((p): Vec3 => {
            const d: Vec3 = [
              p[0] - target.frame.origin[0],
              p[1] - target.frame.origin[1],
              p[2] - target.frame.origin[2],
            ];
            const along = (a: Vec3) => d[0] * a[0] + d[1] * a[1] + d[2] * a[2];
            return [along(target.frame.x), along(target.frame.y), along(target.frame.z)];
          })
          // Corners strictly within the plate's thickness are the tab's.
          .filter(([, , z]) => z > 1e-6 && z < 8 - 1e-6);
        expect(inside.length).toBe(4);
        const slot = slotsOf(plate).find(({ at }) => Math.abs(at[0] - (inside[0]?.[0] ?? 0)) < 5);
        if (slot?.loop.kind !== 'path') throw new Error('no slot');
        const xs = slot.loop.vertices.map(({ x }) => x);
        const ys = slot.loop.vertices.map(({ y }) => y);
        for (const [x, y] of inside) {
          expect(x).toBeGreaterThan(Math.min(...xs));
          expect(x).toBeLessThan(Math.max(...xs));
          expect(y).toBeGreaterThan(Math.min(...ys));
          expect(y).toBeLessThan(Math.max(...ys));
        }
      }
    }
  });
});

describe('what no carriage can be built for', () => {
  const design = example('sheepsfoot-95');
  const codes = (given: Design): string[] => {
    const result = solve(given);
    expect(result.ok).toBe(false);
    return result.issues.map(({ code }) => code);
  };
  const blade = design.blades[0];
  if (!blade) throw new Error('no blade');

  it.each([
    ['thickness-missing', withParameters(design, { plate: 9 })],
    ['gap-at-belt', withParameters(design, { beltGap: 0.6 })],
    ['jaw-at-belt', withParameters(design, { jawGap: 3, runningClearance: 3 })],
    ['edge-too-low', withParameters(design, { edgeHeight: 70 })],
    ['angle-turned', withParameters(design, { upright: 'angle', tipSettings: 1 })],
    [
      'tabs-need-cut',
      {
        ...design,
        making: {
          ...design.making,
          plates: { ...design.making.plates, process: 'saw-drill' as const },
        },
      },
    ],
    ['tang-short', { ...design, blades: [{ ...blade, tang: { ...blade.tang, length: 15 } }] }],
    [
      'tang-thin',
      { ...design, blades: [{ ...blade, ricasso: 0, tang: { ...blade.tang, thickness: 4 } }] },
    ],
    [
      'jaw-straddles',
      { ...design, blades: [{ ...blade, ricasso: 15, tang: { ...blade.tang, thickness: 3 } }] },
    ],
    ['tilt-out-of-reach', { ...design, grinder: { ...design.grinder, lean: -15 } }],
  ])('names %s with its mend', (code, given) => {
    expect(codes(given)).toContain(code);
    const { issues } = solve(given);
    for (const issue of issues) {
      expect(issue.path).not.toBe('');
      expect(issue.fix).not.toBe('');
    }
  });
});

describe('a carriage so short that two pairs of gussets have no web between their slots', () => {
  it('stands on the inner pair alone, and every part can be cut', () => {
    const short = example('marking-60');
    const [blade] = short.blades;
    if (blade?.outline.kind !== 'dimensions') throw new Error('marking-60 has changed');
    const design = withParameters(
      {
        ...short,
        blades: [
          {
            ...blade,
            outline: { ...blade.outline, length: 30, bellyStart: 20, spineDropStart: 5 },
          },
        ],
        making: { ...short.making, plates: { ...short.making.plates, process: 'laser' } },
      },
      { upright: 'plates', jawGap: 3.5, jawWidth: 16, plate: 10, tipOverlap: 12 },
    );
    const fixture = valueOf(solve(design));
    const parts = valueOf(fixture.parts());
    expect(parts.find(({ id }) => id === 'gusset')?.quantity).toBe(2);
    const checks = valueOf(fixture.checks()).filter(({ kind }) => kind === 'fabrication');
    expect(checks.filter(({ passed }) => !passed).map(({ message }) => message)).toEqual([]);
  });
});

describe('base and fence', () => {
  it.each(['marking-60', 'camp-90', 'sheepsfoot-95'])(
    'of %s can be marked out with a rule, and keep their reserve at either end',
    (name) => {
      const fixture = valueOf(solve(example(name)));
      const quarters = valueOf(fixture.parts()).flatMap((part) => {
        if (part.kind !== 'plate' || !['base', 'fence'].includes(part.id)) return [];
        const [layer] = part.layers;
        const outer = layer ? flatten(layer.profile.outer, 0.01) : [];
        const depth = Math.max(...outer.map(([, y]) => y));
        return [2 * depth, ...part.holes.map(({ at }) => 4 * at[1])];
      });
      expect(quarters.length).toBeGreaterThan(8);
      for (const q of quarters) expect(q).toBeCloseTo(Math.round(q), 6);
      const reserve = valueOf(fixture.checks()).find(({ id }) => id === 'finished/fence-travel');
      const asked = example(name).fixture.parameters['travelReserve'] ?? 1.5;
      expect(reserve?.found).toBeGreaterThan(Number(asked) - 1e-6);
    },
  );
});

describe('screws of the carriage', () => {
  const sheets = (design: Design, plate: number, base: number): Design => {
    const thicknesses = [...new Set([plate, base])].sort((a, b) => a - b);
    const making = { ...design.making, plates: { ...design.making.plates, thicknesses } };
    return withParameters({ ...design, making }, { plate, base });
  };

  it.each(['marking-60', 'camp-90', 'sheepsfoot-95'])(
    'of %s are found in every pair of plates, or a base is named in which they are',
    (name) => {
      for (const plate of [7, 8, 8.5, 10])
        for (const base of [6, 7, 9]) {
          const design = sheets(example(name), plate, base);
          const found = solve(design);
          const errors = found.issues.filter(({ severity }) => severity === 'error');
          if (errors.length === 0) continue;
          expect(errors.map(({ code }) => code)).toEqual(['sole-dips']);
          const mend = errors[0]?.mend;
          if (!mend) throw new Error('no mend');
          expect(mend.path).toBe('fixture.parameters.base');
          expect(solve(sheets(design, plate, Number(mend.value))).ok).toBe(true);
        }
    },
  );

  it('names the pass that tips it too far when no base helps', () => {
    const steep = example('marking-60');
    const sequence = steep.sequence.map((pass, i) => (i === 0 ? { ...pass, steeper: 8 } : pass));
    const { issues } = solve({ ...steep, sequence });
    const dips = issues.find(({ code }) => code === 'sole-dips');
    expect(dips?.path).toBe('sequence.0.steeper');
    const mended = steep.sequence.map((pass, i) =>
      i === 0 ? { ...pass, steeper: Number(dips?.mend?.value) } : pass,
    );
    const codes = solve({ ...steep, sequence: mended }).issues.map(({ code }) => code);
    expect(codes).not.toContain('sole-dips');
  });
});

describe('the foot screws', () => {
  it('stand clear of an upright that a steep bevel brings forward', () => {
    const camp = example('camp-90');
    const bevel = { kind: 'height', height: 10 } as const;
    const blades = camp.blades.map((one) => ({
      ...one,
      bevels: { left: bevel, right: bevel },
    }));
    const fixture = valueOf(solve({ ...camp, blades }));
    const inside = valueOf(fixture.checks('near')).filter(({ id }) => id.startsWith('inside/'));
    expect(inside.length).toBeGreaterThan(0);
    expect(inside.filter(({ passed }) => !passed).map(({ message }) => message)).toEqual([]);
  });
});
