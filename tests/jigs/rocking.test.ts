import { describe, expect, it } from 'vitest';
import { place, localise, type Frame } from '../../src/geometry/frame.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

// A blade is rocked by hand over the ends of what it lies on. In the motions that its clearances are
// proved over it must come up there by the lift that the design allows for, to both sides, and nowhere
// go into what it lies on.

const rad = Math.PI / 180;

describe.each([
  ['spine-rest', 'paring'],
  ['edge-rest', 'herb'],
] as const)('a blade on a %s', (family, file) => {
  const example = examplesOf(family).find((one) => one.file.startsWith(file));
  if (!example) throw new Error('no example');
  const lift = Number(example.design.fixture.parameters.tipLift);
  const { setUps } = valueOf(solved(example).solids?.() ?? { ok: false, issues: [] });

  it('is rocked over both ends of its rest, and lifted off it', () => {
    const ends = new Set<number>();
    const motions = new Set(setUps.flatMap(({ bodies }) => bodies.get('blade')?.motion ?? []));
    for (const sweep of motions) {
      if (sweep.kind !== 'glide') continue;
      const { from, to } = sweep;
      // Turned about the axis across the stroke: by what its own axis rises, which yaws a little.
      const rise = (f: Frame): number => Math.asin(f.x[2] * Math.sign(f.x[0])) / rad;
      const turned = rise(to) - rise(from);
      if (Math.abs(Math.abs(turned) - lift) > 0.01) continue;
      // The point that stays, in the plane that the blade lies on.
      const moved = ([x, z]: readonly [number, number]): number => {
        const after = place(to, localise(from, [x, 0, z]));
        return Math.hypot(after[0] - x, after[2] - z);
      };
      const still = [-1, 1].map((end) => {
        const x = Array.from({ length: 4000 }, (_, i) => (end * i) / 40);
        return x.reduce((best, at) => (moved([at, 0]) < moved([best, 0]) ? at : best));
      });
      const end = still.find((x) => moved([x, 0]) < 0.001);
      expect(end, sweep.label).toBeDefined();
      ends.add(Math.sign(end ?? 0));
      for (const share of [-1, -0.5, 0, 0.5, 1]) {
        const x = share * Math.abs(end ?? NaN);
        const after = place(to, localise(from, [x, 0, 0]));
        const wanted = Math.abs(x - (end ?? NaN)) * Math.sin(lift * rad);
        expect(after[2], `${sweep.label} ${String(x)}`).toBeCloseTo(wanted, 4);
      }
    }
    expect([...ends].sort()).toEqual([-1, 1]);
  });
});
