import { describe, expect, it } from 'vitest';
import { rigAssembly } from '../../jigs/shared/checks/rig-assembly.ts';
import { solve } from '../../jigs/spine-rest/solve.ts';
import { withValue } from '../../src/core/path.ts';
import { examplesOf, valueOf } from '../family/examples.ts';

const examples = examplesOf('spine-rest').map((one) => [one.file, one] as const);

describe('a spine rest from setting to setting', () => {
  it.each(examples)('is looked at where its parts then stand, %s', (_, { design }) => {
    const q = valueOf(valueOf(solve(design)).question());
    const { placements, motions = new Map() } = rigAssembly(q);
    const shifts: number[] = [];
    for (const [i, { id }] of q.plan.settings.entries())
      for (const { name, carrier, frame } of placements) {
        const sweep = motions.get(carrier)?.[i];
        if (sweep?.kind !== 'still') throw new Error(`${carrier} stands nowhere`);
        const [x, y, z] = q.place(id).find((one) => one.name === name)?.frame.origin ?? [];
        const [dx, dy, dz] = sweep.pose.origin;
        expect(frame.origin[0] + dx).toBeCloseTo(x ?? NaN, 9);
        expect(frame.origin[1] + dy).toBeCloseTo(y ?? NaN, 9);
        expect(frame.origin[2] + dz).toBeCloseTo(z ?? NaN, 9);
        shifts.push(Math.abs(dy));
      }
    // Something moves: the bevel is set by it.
    expect(Math.max(...shifts)).toBeGreaterThan(0.01);
  });

  it.each(examples)('keeps to the flat of the platen, %s', (_, { design }) => {
    if (design.grinder.platen.kind === 'none') return;
    const found = (radius: number): number[] => {
      const fixture = valueOf(solve(withValue(design, 'grinder.platen.edgeRadius', radius)));
      const checks = valueOf(fixture.checks());
      return ['gap', 'low', 'high'].map(
        (end) => checks.find(({ id }) => id === `range/platen/${end}`)?.found ?? NaN,
      );
    };
    const [one, other] = [found(4), found(5)];
    // A millimetre more of rounding at either end is a millimetre less of the flat there.
    for (const [i, room] of one.entries()) expect(other[i]).toBeCloseTo(room - 1, 6);
  });
});
