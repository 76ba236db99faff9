import { expect, it } from 'vitest';
import { edgeOf } from '../../jigs/shared/reach.ts';
import type { Design } from '../../src/document/schema.ts';
import { openedOf } from './boxes.ts';

it('a range of edges holds both sides of every blade, whichever side takes the greater part', () => {
  const design = openedOf('spine-rest')('hunting-115');
  const [blade] = design.blades;
  const [pass] = design.sequence;
  if (!blade || !pass) throw new Error('no blade or pass');
  const sharing = (...shares: number[]): Design => ({
    ...design,
    blades: shares.map((shareLeft) => ({ ...blade, edge: { ...blade.edge, shareLeft } })),
  });
  const of = (...shares: number[]) => edgeOf(sharing(...shares), { ...pass, edge: 0.6 });
  const within = (range: readonly [number, number], low: number, high: number) => {
    expect(range[0]).toBeCloseTo(low, 9);
    expect(range[1]).toBeCloseTo(high, 9);
  };
  within(of(0.5), 0.3, 0.3);
  // Left 0.25 of 0.6 mm, so right 0.45 mm; and the other way round.
  within(of(0.25), 0.15, 0.45);
  within(of(0.75), 0.15, 0.45);
  within(of(0.6, 0.3), 0.18, 0.42);
});
