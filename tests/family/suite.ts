import { describe, expect, it } from 'vitest';
import { audit, meshVolume } from '../../src/model/audit.ts';
import { stackVolume } from '../../src/model/measure.ts';
import { meshOf } from '../../src/model/solid.ts';
import type { Family, Fixture, Measured } from '../../src/family/index.ts';
import type { Mesh } from '../../src/geometry/mesh.ts';
import type { Part } from '../../src/model/part.ts';
import { isByHand, solved, valueOf, type Example } from './examples.ts';
import { shortScrews, strayScrews, unknownSizes } from './holes.ts';
import { sharedVolumes } from './overlap.ts';

const once = <T>(make: () => T): (() => T) => {
  let made: { value: T } | undefined;
  return () => (made ??= { value: make() }).value;
};

/** Every number in plain data that is not finite, by path. */
const notFinite = (value: unknown, path = ''): string[] => {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`));
};

/** What measured and promised may differ by: mm and degrees; the bound where one is stated. */
const tolerance = ({ certainty }: Measured): number =>
  certainty.kind === 'exact' ? 0.01 : certainty.kind === 'bounded' ? certainty.by + 0.01 : 0.05;

const meshesOf = (parts: readonly Part[]): Map<string, Mesh> =>
  new Map(parts.map(({ id, layers }) => [id, valueOf(meshOf(layers))]));

const promised = (fixture: Fixture, { blade, side, u }: Measured) => {
  const line = fixture.lines.find((l) => l.blade === blade && l.side === side);
  return [...(line?.places ?? [])].sort((a, b) => Math.abs(a.u - u) - Math.abs(b.u - u))[0];
};

/** What every family has to hold with every design it ships. */
export const familySuite = (family: Family, examples: readonly Example[]): void => {
  describe(`family ${family.id}`, () => {
    it('states every parameter with words, range and an initial value in it', () => {
      expect(Object.keys(family.parameters).length).toBeGreaterThan(0);
      for (const [key, p] of Object.entries(family.parameters)) {
        expect([key, p.label !== '' && p.meaning !== '' && p.reason !== '']).toEqual([key, true]);
        const fits =
          p.kind === 'number'
            ? p.min <= p.initial && p.initial <= p.max && p.min < p.max
            : p.options.some(({ value }) => value === p.initial);
        expect([key, fits]).toEqual([key, true]);
      }
    });

    it('ships three examples or more', () => {
      expect(examples.length).toBeGreaterThanOrEqual(3);
    });

    for (const example of examples) exampleSuite(example);
  });
};

const exampleSuite = (example: Example): void => {
  describe(example.file, () => {
    const fixture = once(() => solved(example));
    const parts = once(() => valueOf(fixture().parts()));
    const meshes = once(() => meshesOf(parts()));
    const first = once(() => fixture().settings[0]?.id ?? '');
    const placements = once(() => fixture().place(first()));

    it('gives settings, lines and facts without a number that is none', () => {
      const { settings, lines, facts, assembly, zeroing, cautions } = fixture();
      expect(settings.length).toBeGreaterThan(0);
      expect(lines.length).toBeGreaterThan(0);
      expect(notFinite({ settings, lines, facts })).toEqual([]);
      for (const list of [assembly, zeroing, cautions]) expect(list.length).toBeGreaterThan(3);
      expect(notFinite(settings.map(({ id }) => fixture().section(id)))).toEqual([]);
    });

    it('names its parts once, with names that are safe for files', () => {
      const ids = parts().map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const id of ids) expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    });

    it('makes parts whose meshes are sound after single precision and hold their volume', () => {
      for (const part of parts()) {
        const mesh = meshes().get(part.id);
        expect(mesh).toBeDefined();
        if (!mesh) continue;
        expect([part.id, audit(mesh).sound]).toEqual([part.id, true]);
        const exactly = stackVolume(part.layers);
        expect(Math.abs(meshVolume(mesh) - exactly) / exactly).toBeLessThan(0.01);
      }
    });

    it('takes the size of every hole from the published rows', () => {
      expect(parts().flatMap(unknownSizes)).toEqual([]);
    });

    it('places every part, as often as it is wanted, with touches that exist both ways', () => {
      const names = new Map(placements().map((p) => [p.name, p]));
      expect(names.size).toBe(placements().length);
      const known = new Set(parts().map(({ id }) => id));
      for (const p of placements()) {
        expect(known.has(p.part)).toBe(true);
        for (const other of p.touches)
          expect([p.name, other, names.get(other)?.touches.includes(p.name)]).toEqual([
            p.name,
            other,
            true,
          ]);
      }
      for (const part of parts()) {
        const placed = placements().filter(({ part: id }) => id === part.id).length;
        expect(placed).toBeLessThanOrEqual(part.quantity);
        if (part.kind === 'plate' || part.kind === 'stock') expect(placed).toBe(part.quantity);
      }
    });

    it('passes every screw and pin through holes that fit it', () => {
      expect(strayScrews(parts(), placements())).toEqual([]);
    });

    it('turns every screw far enough into its thread', () => {
      expect(shortScrews(parts(), placements())).toEqual([]);
    });

    it('lets no two parts share room that are not meant to touch', () => {
      const last = fixture().settings.at(-1)?.id ?? '';
      for (const setting of [first(), last])
        expect(sharedVolumes(fixture().place(setting), meshes(), 0.01)).toEqual([]);
    });

    it('passes its own checks, each with its numbers', () => {
      const checks = valueOf(fixture().checks());
      // A gauge that the hand carries meets nothing of the machine: it is checked by itself alone.
      expect(checks.length).toBeGreaterThan(isByHand(fixture()) ? 5 : 20);
      expect(checks.filter(({ passed }) => !passed).map(({ message }) => message)).toEqual([]);
      expect(checks.filter(({ found }) => found === null).map(({ id }) => id)).toEqual([]);
      expect(new Set(checks.map(({ id }) => id)).size).toBe(checks.length);
    }, 300_000);

    it('measures on the finished blades what the solver promised', () => {
      const measured = valueOf(fixture().measured());
      expect(measured.length).toBeGreaterThan(0);
      for (const m of measured) {
        const place = promised(fixture(), m);
        const allowed = tolerance(m);
        const where = `${m.blade} ${m.side} ${m.u.toFixed(1)}`;
        expect(Math.abs(m.angle - (place?.angle ?? NaN)), where).toBeLessThan(allowed);
        expect(Math.abs(m.bevelHeight - (place?.bevelHeight ?? NaN)), where).toBeLessThan(allowed);
        expect(m.edgeThickness, where).toBeGreaterThan(0);
      }
    }, 300_000);
  });
};
