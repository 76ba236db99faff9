import { is } from 'valibot';
import { describe, expect, it } from 'vitest';
import { scaledTo } from '../../src/blade/scaled.ts';
import { registry } from '../../jigs/registry.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Family } from '../../src/family/index.ts';
import { adapted } from '../../src/make/suit/adapted.ts';
import { bridged, byHand, tipFall } from '../../src/make/suit/by-hand.ts';
import { suitSchema } from '../../src/make/suit/schema.ts';
import { sensitivityOf } from '../../src/make/suit/sensitivity.ts';
import { suitDesign } from '../../src/make/suit/suit.ts';
import { flatSurface, wheelSurface, type VirtualJob } from '../../src/virtual/index.ts';
import { examplesOf, valueOf } from '../family/examples.ts';
import { bladeOf, passOf } from '../virtual/blades.ts';

const rad = Math.PI / 180;

const jobOf = (passes: VirtualJob['passes'], edge = 0.2): VirtualJob => ({
  blade: bladeOf({ ricasso: 0, edge }),
  passes,
  start: { kind: 'bar' },
  edge,
  seat: 0,
  soft: false,
  model: [],
});

describe('what a tenth of a millimetre does', () => {
  it('is on a spine rest what s = (T/2 + e) cos a + H sin a says', () => {
    // Section 3 of any textbook sum: a bar 3 thick and 50 high, edge 0.1 a side.
    const s = (a: number): number => 1.6 * Math.cos(a) + 50 * Math.sin(a);
    const a = 3.5 * rad;
    let [low, high] = [a, 2 * a];
    for (let i = 0; i < 60; i += 1) {
      const middle = (low + high) / 2;
      if (s(middle) < s(a) + 0.1) low = middle;
      else high = middle;
    }
    const found = sensitivityOf(jobOf([passOf('left', s(a), 150)]));
    expect(found?.degrees).toBeCloseTo((low - a) / rad, 3);
    expect(found?.bevelHeight).toBeCloseTo(1.4 / Math.tan(low) - 1.4 / Math.tan(a), 2);
  });

  it('is on a carriage a shift of the face: no angle, and 0.1 / sin a of bevel', () => {
    const angle = 5;
    const found = sensitivityOf(
      jobOf([
        {
          id: 'carriage',
          side: 'left',
          holding: { kind: 'carriage', angle, place: 60, turn: 0, edgeHeight: 70 },
          surface: flatSurface(0),
          edge: 0.2,
          stroke: { width: 50, from: 26, to: 120 },
        },
      ]),
    );
    expect(found?.degrees).toBeCloseTo(0, 6);
    expect(found?.bevelHeight).toBeCloseTo(-0.1 / Math.sin(angle * rad), 4);
  });

  it('moves a hollow by 0.1 (lip + R) / c', () => {
    // Axis over the lip: (lip + R)^2 + drop^2 = (R - d)^2 + c^2, the flank running to the edge.
    const [radius, depth, centre] = [125, 0.3, 20];
    const lip = Math.hypot(radius - depth, centre) - radius;
    const found = sensitivityOf(
      jobOf(
        [
          {
            id: 'wheel',
            side: 'left',
            holding: {
              kind: 'edge-rest',
              depth,
              body: { seatHalf: 40, lip, lipHeight: 0.01, lipFrom: 0, lipTo: 35 },
            },
            surface: wheelSurface(radius, 0),
            edge: 0,
            stroke: { width: 50, from: 26, to: 110 },
          },
        ],
        0,
      ),
    );
    expect(found?.degrees).toBeNull();
    expect(Math.abs((found?.bevelHeight ?? NaN) - (0.1 * (lip + radius)) / centre)).toBeLessThan(
      0.03,
    );
  });
});

describe('work by hand', () => {
  it('is asked for by a hollow edge, as deep as its sagitta under the belt', () => {
    // An arc of radius 400 bent into the blade: over 50 mm its sagitta is 400 - sqrt(400^2 - 25^2).
    const edge = Array.from({ length: 31 }, (_, i): [number, number] => {
      const x = 5 * i - 75;
      return [5 * i, 60 - Math.sqrt(400 ** 2 - x ** 2) + Math.sqrt(400 ** 2 - 75 ** 2) - 10];
    });
    const spine = Array.from({ length: 16 }, (_, i): [number, number] => [10 * i, 0]);
    const blade = bladeOf({ outline: { kind: 'curves', spine, edge }, ricasso: 0 });
    const sagitta = 400 - Math.sqrt(400 ** 2 - 25 ** 2);
    expect(bridged(blade, 50)).toBeCloseTo(sagitta, 1);
    expect(byHand(blade, 50).find(({ id }) => id === 'freehand')?.reasons).toHaveLength(1);
  });

  it('is not asked for by a straight bar, but by one shorter than the belt is wide', () => {
    expect(bridged(bladeOf(), 50)).toBe(0);
    expect(tipFall(bladeOf())).toBeCloseTo(0, 9);
    expect(byHand(bladeOf(), 50).flatMap(({ reasons }) => reasons)).toEqual([]);
    const stick = byHand(bladeOf({ length: 40 }), 50).find(({ id }) => id === 'push-stick');
    expect(stick?.reasons).toHaveLength(1);
  });
});

describe('which fixture suits', () => {
  const given = examplesOf('carriage').find(({ file }) => file.startsWith('camp-90'));
  if (given === undefined) throw new Error('no example');

  it('answers for every family that holds a blade, by the published schema', () => {
    const suit = valueOf(suitDesign(given.design, registry));
    expect(is(suitSchema, JSON.parse(JSON.stringify(suit)))).toBe(true);
    const [one] = suit.blades;
    if (one === undefined) throw new Error('no blade');
    const [best] = one.families;
    expect([best?.family, best?.verdict]).toEqual(['carriage', 'with-limits']);
    const ids = one.families.map(({ family }) => family);
    expect(ids).toEqual(expect.arrayContaining(['carriage', 'edge-rest', 'spine-rest']));
    // Its tip falls, and one plane leaves metal there; the others cannot hold it, and say why.
    for (const { verdict, whyNot } of one.families)
      if (verdict !== 'suits') expect(whyNot.length).toBeGreaterThan(0);
    expect(one.byHand.map(({ id }) => id)).toEqual(['freehand', 'push-stick']);
  }, 120_000);

  it('judges several blades at the settings they share: what suits each may not suit both', () => {
    const spine = registry.families['spine-rest'];
    const [kitchen] = examplesOf('spine-rest').filter(({ file }) => file.startsWith('kitchen-210'));
    const [blade] = kitchen?.design.blades ?? [];
    if (!spine || !kitchen || !blade) throw new Error('no example');
    // Each is even by itself; a much lower bevel on much the same blade asks for another setting.
    const bevel = { kind: 'height', height: 15 } as const;
    const lower = { ...scaledTo(blade, 190), name: 'Lower', bevels: { left: bevel, right: bevel } };
    const blades = [blade, lower];
    const one = { ...registry, families: { 'spine-rest': spine } };
    const suit = valueOf(suitDesign({ ...kitchen.design, blades }, one));
    const alone = suit.blades.map(({ families }) => families[0]?.line ?? NaN);
    expect(Math.max(...alone)).toBeLessThan(blade.line.allowed);
    const [both] = suit.together;
    expect(both?.line ?? NaN).toBeGreaterThan(blade.line.allowed);
    expect(both?.verdict).not.toBe('suits');
    expect(both?.whyNot.some((reason) => reason.includes('Lower'))).toBe(true);
    expect(suit.sentence).not.toBe(suit.blades[0]?.sentence);
  }, 60_000);

  it('says why none suits where the grinder has nothing to grind on', () => {
    const grinder = structuredClone(grinderPresets['platen-50']);
    if (grinder === undefined) throw new Error('no preset');
    const bare = { ...given.design, grinder: { ...grinder, platen: { kind: 'none' as const } } };
    const suit = valueOf(suitDesign(bare, registry));
    const [one] = suit.blades;
    expect(one?.families.every(({ verdict }) => verdict === 'not')).toBe(true);
    expect(suit.sentence).toContain(one?.blade);
    // Another blade of the same design is asked about by itself.
    const [camp] = given.design.blades;
    if (camp === undefined) throw new Error('no blade');
    const blades = [camp, { ...camp, name: 'Other' }];
    const both = valueOf(suitDesign({ ...bare, blades }, registry));
    expect(both.blades.map(({ blade }) => blade)).toEqual([camp.name, 'Other']);
    expect(valueOf(suitDesign({ ...bare, blades }, registry, 'Other')).blades).toHaveLength(1);
    const missing = suitDesign(given.design, registry, 'None');
    expect(missing.ok ? [] : missing.issues.map(({ code }) => code)).toEqual(['blade-unknown']);
  }, 60_000);
});

describe('moving a family so that a blade fits', () => {
  const exampleOf = (family: string, name: string): Design => {
    const found = examplesOf(family).find(({ file }) => file.startsWith(name));
    if (found === undefined) throw new Error('no example');
    return found.design;
  };
  const familyOf = (id: string): Family => {
    const family = registry.families[id];
    if (family === undefined) throw new Error('no family');
    return family;
  };

  it('takes another choice where one is in the way', () => {
    // Its plates are sawn: a slot as guide asks for a cut one.
    const { changed } = adapted(exampleOf('carriage', 'marking-60'), familyOf('edge-rest'), {});
    expect(changed.map(({ to }) => to)).toContain('Between bolted strips');
  });

  it('gives a blade whose line wanders a strip where that does better', () => {
    const worked = exampleOf('spine-rest', 'tapered-210');
    const { fixture } = worked;
    const parameters = { ...fixture.parameters, step: 'straight' };
    const design = { ...worked, sequence: worked.sequence.slice(-1) };
    const alone = { families: { 'spine-rest': familyOf('spine-rest') } };
    const suit = valueOf(suitDesign({ ...design, fixture: { ...fixture, parameters } }, alone));
    const [found] = suit.blades[0]?.families ?? [];
    expect(found?.verdict).toBe('suits');
    expect(found?.line ?? Infinity).toBeLessThan(worked.blades[0]?.line.allowed ?? 0);
    expect(found?.changed.map(({ label }) => label)).toEqual(['Form of the step']);
  }, 60_000);

  it('says what it tried in vain, and leaves wishes and what is at odds as they were', () => {
    const camp = exampleOf('carriage', 'camp-90');
    const { solved, changed, tried } = adapted(camp, familyOf('spine-rest'), {});
    expect(solved.ok).toBe(false);
    expect(changed).toEqual([]);
    expect(solved.issues.map(({ code }) => code)).toContain('no-bearing');
    expect(tried.length).toBeGreaterThan(10);
    const labels = tried.map(({ label }) => label);
    expect(labels).not.toContain(familyOf('spine-rest').parameters['handDistance']?.label);
  });

  it('never asks for less than its maker wished', () => {
    const design = exampleOf('spine-rest', 'kitchen-210');
    const given = { ...design.fixture.parameters, noseGap: 0.5 };
    const { solved, changed } = adapted(design, familyOf('spine-rest'), given);
    expect(solved.ok).toBe(true);
    expect(changed.map(({ label }) => label)).toEqual(['Gap at the belt']);
  });
});
