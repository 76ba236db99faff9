import { expect, it } from 'vitest';
import { cutsOf } from '../../jigs/edge-rest/blade.ts';
import { bladeBodies, bladeSolids, type AsItComes } from '../../jigs/shared/checks/blade-solids.ts';
import { createWorkshop, type Workshop } from '../../src/check/workshop.ts';
import { examplesOf, valueOf } from '../family/examples.ts';

// What is kept of a blade is asked for out of one workshop and of a fresh one.
it('keeps a blade apart from the same as it comes, and from one that is thicker', () => {
  const [blade] = examplesOf('edge-rest')[0]?.design.blades ?? [];
  if (blade === undefined) throw new Error('no blade');
  const thicker = { ...blade, thickness: blade.thickness.map(({ u, t }) => ({ u, t: t + 0.01 })) };
  const comes: AsItComes = { kind: 'blade to be hollowed', sides: (own) => cutsOf(own) };
  const kept = createWorkshop();
  const named = [blade, thicker].flatMap((one) =>
    [undefined, comes].map((as) => {
      // Bodies of one name are alike to the last bit.
      const nameOf = (workshop: Workshop): string => {
        const body = bladeBodies(valueOf(bladeSolids({ ...one }, workshop, as)), []).get('blade');
        return (body && kept.nameOf(body)) ?? '';
      };
      return { first: nameOf(kept), again: nameOf(kept), fresh: nameOf(createWorkshop()) };
    }),
  );
  for (const { first, again, fresh } of named) expect([again, fresh]).toEqual([first, first]);
  expect(new Set(named.map(({ first }) => first)).size).toBe(named.length);
});
