import { expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { withValue } from '../../src/core/path.ts';
import type { Design } from '../../src/document/schema.ts';
import { examplesOf, valueOf } from '../family/examples.ts';

/** The gap between the push pad and the belt that the blade presses on its platen, mm. */
const padGap = (design: Design): number => {
  const family = registry.families[design.fixture.family];
  if (!family) throw new Error('no family');
  const checks = valueOf(valueOf(family.solve(design)).checks());
  const found = checks.find(({ id }) => id === 'clearance/pad/belt')?.found;
  if (typeof found !== 'number') throw new Error('no such check');
  return found;
};

it('a pad keeps off a belt that is pressed flat, but for its splice', () => {
  const design = examplesOf('spine-rest').find(({ file }) => file.startsWith('paring'))?.design;
  if (!design) throw new Error('no example');
  const as = (key: 'flutter' | 'splice', more: number): number =>
    padGap(withValue(design, `grinder.belt.${key}`, design.grinder.belt[key] + more));
  const now = padGap(design);
  // A square platen: what the belt is thicker by comes off the gap, to the bound of the kernel.
  expect(as('splice', -0.1) - now).toBeCloseTo(0.1, 2);
  expect(as('flutter', -0.1)).toBeCloseTo(now, 6);
});
