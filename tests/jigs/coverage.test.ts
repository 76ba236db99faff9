import { beforeEach, describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { answer } from '../../src/check/answers.ts';
import { clearance, shiftBody, type Body } from '../../src/check/distance/index.ts';
import type { Asked, SetUp, Solids } from '../../src/check/set-up.ts';
import { problem } from '../../src/core/issue.ts';
import { fail } from '../../src/core/result.ts';
import { scale3, sub3, unit3, type Vec3 } from '../../src/geometry/vector.ts';
import { examplesOf, isByHand, solved, valueOf } from '../family/examples.ts';
import { unnoticedFaces, unnoticedParts } from './sabotage/assembly.ts';

const NONE = problem('no-solids', '', { message: 'no solids are told', fix: '' });

/** Of the machine: what stands still together and is never compared with itself. */
const MACHINE: ReadonlySet<string> = new Set(['belt', 'platen', 'wheels', 'rest', 'guards']);
/** What no assembly holds: it is asked about by pairs alone. */
const CARRIED: ReadonlySet<string> = new Set([
  'blade',
  'tang',
  'collar',
  'hand',
  'stick',
  'handOnStick',
  'strip',
]);

const keyOf = (a: string, b: string): string => [a, b].sort().join(' and ');

/** Pairs of bodies that stand together somewhere and that nothing speaks of. */
const forgotten = ({ setUps, unasked }: Solids): string[] => {
  const spoken = new Set([
    ...setUps.flatMap(({ asked }) => asked.map(({ rule }) => keyOf(rule.a, rule.b))),
    ...unasked.map(({ a, b }) => keyOf(a, b)),
    // The stop meets the finished face of the body that is called the seat elsewhere.
    ...setUps.flatMap(({ asked }) =>
      asked.filter(({ rule }) => rule.b === 'wear-strip').map(({ rule }) => keyOf(rule.a, 'seat')),
    ),
  ]);
  const pairs = setUps.flatMap(({ bodies }) => {
    const names = [...bodies.keys()];
    return names.flatMap((a, i) =>
      names
        .slice(i + 1)
        .filter((b) => !(MACHINE.has(a) && MACHINE.has(b)))
        // Two bodies of the fixture itself are compared part by part in the assemblies.
        .filter((b) => [a, b].some((name) => MACHINE.has(name) || CARRIED.has(name)))
        .map((b) => keyOf(a, b)),
    );
  });
  return [...new Set(pairs)].filter((pair) => !spoken.has(pair)).sort();
};

/** A set-up with one body shifted at every configuration. */
const shifted = (setUp: SetUp, name: string, by: Vec3): SetUp => {
  const body = setUp.bodies.get(name);
  if (!body) return setUp;
  return { ...setUp, bodies: new Map([...setUp.bodies, [name, shiftBody(body, by)]]) };
};

const WAYS: readonly Vec3[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];

const near = (a: Body, b: Body): { gap: number; way: Vec3 } | undefined => {
  const found = clearance(a, b);
  if (!found.ok || found.value.state !== 'apart') return undefined;
  const { gap, pointA, pointB } = found.value;
  return { gap, way: gap > 1e-6 ? unit3(sub3(pointB, pointA)) : [0, 0, 1] };
};

/** Shifts of the first body that use up the margin of what is asked, one of which must be noticed. */
const sabotage = ({ rule }: Asked, a: Body, b: Body): Vec3[] => {
  if (rule.kind === 'clear') {
    const found = near(a, b);
    return found ? [scale3(found.way, found.gap - rule.gap + 0.01)] : [];
  }
  const found = near(a, b);
  const deep = rule.tolerance + Math.max(found?.gap ?? 0, 0) + 0.05;
  return [...(found ? [found.way] : []), ...WAYS].map((way) => scale3(way, deep));
};

const fails = (setUp: SetUp, asked: Asked): boolean =>
  answer([asked], setUp.bodies, setUp.told).some(({ passed }) => !passed);

/** Checks of solids that do not notice when their first body is moved by its margin. */
const unnoticed = ({ setUps }: Solids): string[] => {
  const noticed = new Map<string, boolean>();
  for (const setUp of setUps) {
    for (const asked of setUp.asked) {
      if (noticed.get(asked.id) === true) continue;
      const [a, b] = [setUp.bodies.get(asked.rule.a), setUp.bodies.get(asked.rule.b)];
      // A grinder without platen, wheel or keep-out has nothing to run into.
      if (!a || !b) continue;
      // What may rest on the other but stands beside it is not reached by one straight shift.
      if (asked.rule.kind === 'seat' && (near(a, b)?.gap ?? 0) > 0.05) continue;
      const shifts = sabotage(asked, a, b);
      noticed.set(
        asked.id,
        shifts.some((by) => fails(shifted(setUp, asked.rule.a, by), asked)),
      );
    }
  }
  return [...noticed].filter(([, found]) => !found).map(([id]) => id);
};

for (const family of Object.values(registry.families)) {
  describe(`what the checks of ${family.id} look at`, () => {
    const [example] = examplesOf(family.id);
    let told: Solids | undefined;
    beforeEach(({ skip }) => {
      if (example && isByHand(solved(example))) skip();
    });
    const solids = (): Solids => {
      const found = told ?? (example && valueOf(solved(example).solids?.() ?? fail(NONE)));
      if (!found) throw new Error('no example');
      told = found;
      return found;
    };

    it('is every pair of bodies, save those that are left out with a reason', () => {
      expect(forgotten(solids())).toEqual([]);
      expect(solids().unasked.filter(({ reason }) => reason === '')).toEqual([]);
    });

    it('is noticed by every check when the first of its bodies moves by its margin', () => {
      expect(unnoticed(solids())).toEqual([]);
    }, 120_000);

    it('is noticed in the fixture itself when a face opens or any part nears another', () => {
      const [assembly] = solids().assemblies;
      if (!assembly) throw new Error('no assembly');
      const [faces, parts] = [unnoticedFaces(assembly), unnoticedParts(assembly)];
      expect(faces.tried).toBeGreaterThan(3);
      expect(parts.tried).toBeGreaterThan(assembly.placements.length / 2);
      expect([...faces.wrong, ...parts.wrong]).toEqual([]);
    }, 120_000);

    it('holds every part that is placed', () => {
      const fixture = example && solved(example);
      const names = fixture?.place(fixture.settings[0]?.id ?? '').map(({ name }) => name) ?? [];
      const { assemblies, setUps } = solids();
      const inside = new Set(assemblies.flatMap(({ placements }) => placements.map((p) => p.name)));
      const outside = names.filter((name) => !inside.has(name));
      // What the blade carries is the collar, which is asked about by pairs.
      expect(outside.filter((name) => !name.includes('collar'))).toEqual([]);
      if (outside.length > 0) expect(setUps.some(({ bodies }) => bodies.has('collar'))).toBe(true);
    });
  });
}

/** Designs with faces that the first of their family has not: a guided slide, an angle's edge. */
const OTHERS = [
  ['edge-rest', 'side-165'],
  ['carriage', 'marking-60'],
] as const;

describe.each(OTHERS)('contacts that only some designs have: %s, %s', (family, name) => {
  it('are noticed when they open', () => {
    const example = examplesOf(family).find(({ file }) => file.startsWith(name));
    const { setUps, assemblies } = valueOf((example && solved(example).solids?.()) ?? fail(NONE));
    const [assembly] = assemblies;
    if (!assembly) throw new Error('no assembly');
    const { tried, wrong } = unnoticedFaces(assembly);
    expect(tried).toBeGreaterThan(3);
    expect(wrong).toEqual([]);
    const contacts = setUps.map((setUp) => ({
      ...setUp,
      asked: setUp.asked.filter(({ id }) => id.startsWith('contact/')),
    }));
    expect(unnoticed({ setUps: contacts, assemblies: [], unasked: [] })).toEqual([]);
  }, 120_000);
});

describe('what the checks of a rounded step look at', () => {
  const example = examplesOf('spine-rest').find(
    ({ design }) => design.fixture.parameters.step === 'rounded',
  );
  const solids = (): Solids => {
    if (!example) throw new Error('no example');
    // The last belt stands for all: it is the same strip.
    const sequence = example.design.sequence.slice(-1);
    const design = { ...example.design, sequence };
    return valueOf(solved({ ...example, design }).solids?.() ?? fail(NONE));
  };

  it('is every pair of bodies with the strip, and a strip that moves is noticed', () => {
    const told = solids();
    expect(forgotten(told)).toEqual([]);
    const setUps = told.setUps.map((setUp) => ({
      ...setUp,
      asked: setUp.asked.filter(
        ({ id, rule }) => [rule.a, rule.b].includes('strip') || id === 'clearance/blade/step',
      ),
    }));
    expect(setUps.flatMap(({ asked }) => asked).length).toBeGreaterThan(10);
    expect(unnoticed({ ...told, setUps })).toEqual([]);
  }, 120_000);
});
