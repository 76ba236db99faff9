import { expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { createWorkshop } from '../../src/check/workshop.ts';
import type { Design } from '../../src/document/schema.ts';
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
