import { isDeepStrictEqual } from 'node:util';
import { expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { createWorkshop, type Workshop } from '../../src/check/workshop.ts';
import type { Design } from '../../src/document/schema.ts';
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
