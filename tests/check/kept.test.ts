import { isDeepStrictEqual } from 'node:util';
import { expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { answer, clear } from '../../src/check/answers.ts';
import { prepare, type Body } from '../../src/check/distance/index.ts';
import { createWorkshop, type Workshop } from '../../src/check/workshop.ts';
import type { Design } from '../../src/document/schema.ts';
import { frame } from '../../src/geometry/frame.ts';
import { sceneOf } from '../../src/worker/scene.ts';
import { examplesOf, valueOf } from '../family/examples.ts';

const FAMILY = 'backing-carrier';

const withPlate = (design: Design, plate: number): Design => ({
  ...design,
  fixture: {
    ...design.fixture,
    parameters: { ...design.fixture.parameters, plate },
  },
});

it('what a workshop kept of other designs changes no answer, to the last digit', () => {
  const design = examplesOf(FAMILY).find(({ file }) => file.startsWith('leather-leaning'))?.design;
  const family = registry.families[FAMILY];
  if (!design || !family) throw new Error('no example');
  const workshop = createWorkshop();
  const designs = [8, 6, 8].map((plate) => withPlate(design, plate));
  const kept = designs.map((one) => valueOf(valueOf(family.solve(one, workshop)).checks()));
  const anew = designs.map((one) => valueOf(valueOf(family.solve(one)).checks()));
  expect(kept).toEqual(anew);
  expect(kept[1]).not.toEqual(kept[0]);
});

it('an answer that was kept is that to what is asked now: its gap, and up to where it is measured', () => {
  const workshop = createWorkshop();
  const box = (name: string, x: number): [string, Body] => [
    name,
    {
      name,
      solids: [valueOf(prepare(name, { kind: 'box', frame: frame([x, 0, 0]), size: [2, 2, 2] }))],
      chordError: 0,
    },
  ];
  const bodies = new Map([box('base', 0), box('step', 5)]);
  const told = { names: {}, pose: () => undefined };
  const ask = (gap: number, known?: number, shop = workshop) =>
    answer(
      [clear('base', 'step', gap, '')],
      bodies,
      told,
      new Map(known === undefined ? [] : [['clearance/base/step', known]]),
      shop,
    )[0];
  // 3 mm apart.
  for (const [gap, known] of [
    [1, undefined],
    [4, undefined],
    [1, 2],
    [1, undefined],
    [2.9, 2],
  ] as const) {
    expect(ask(gap, known)).toEqual(ask(gap, known, createWorkshop()));
    expect(ask(gap)?.passed).toBe(gap < 3);
  }
});

/** A design, and others that differ from it in one thing of those that poses and pictures come from. */
const changes: readonly ((design: Design) => Design)[] = [
  (design) => design,
  (design) => ({
    ...design,
    blades: design.blades.map((blade, i) =>
      i > 0
        ? blade
        : { ...blade, thickness: blade.thickness.map(({ u, t }) => ({ u, t: t + 0.1 })) },
    ),
  }),
  ...Object.entries({ stepWing: 0.5, plungeMargin: 0.5, plate: 2 }).map(
    ([name, by]) =>
      (design: Design): Design => {
        const { fixture } = design;
        const known = registry.families[fixture.family]?.parameters[name];
        const now = fixture.parameters[name] ?? (known?.kind === 'number' ? known.initial : NaN);
        const parameters = { ...fixture.parameters, [name]: Number(now) + by };
        return { ...design, fixture: { ...fixture, parameters } };
      },
  ),
];

it.each([
  ['spine-rest', 'paring-80'],
  ['edge-rest', 'herb-110'],
])('poses and pictures on a %s are those of the design asked about: %s', (id, file) => {
  const design = examplesOf(id).find((one) => one.file.startsWith(file))?.design;
  const family = registry.families[id];
  if (!design || !family) throw new Error('no example');
  const told = (one: Design, workshop: Workshop) => {
    const fixture = valueOf(family.solve(one, workshop));
    const scene = valueOf(sceneOf(one, fixture, workshop));
    const poses = fixture.settings.map((setting) =>
      one.blades.map(({ name }) => fixture.poses(setting.id, name)),
    );
    return { scene, poses };
  };
  const workshop = createWorkshop();
  for (const change of changes) {
    const one = change(design);
    expect(isDeepStrictEqual(told(one, workshop), told(one, createWorkshop()))).toBe(true);
  }
});
