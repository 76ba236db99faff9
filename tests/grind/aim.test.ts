import { describe, expect, it } from 'vitest';
import type { Blade } from '../../src/blade/schema.ts';
import {
  deviationsOf,
  setoffOfLeastDeviation,
  type Aimed,
} from '../../src/grind/spine-rest/aim.ts';
import { bladework, wishOf } from '../../src/grind/spine-rest/stations.ts';
import { strokeOf } from '../../src/grind/spine-rest/windows.ts';
import { kitchen210, strip } from './samples.ts';

const curved = (edge: [number, number][]): Blade['outline'] => ({
  kind: 'curves',
  spine: [
    [0, 0],
    [150, 0],
  ],
  edge,
});

const tapered = strip({
  thickness: [
    { u: 0, t: 3 },
    { u: 150, t: 1.5 },
  ],
});
const belly = strip({
  spineRadius: 0.3,
  outline: kitchen210,
});
const recurve = strip({
  line: { follow: 'edge', allowed: 5 },
  outline: curved([
    [0, 50],
    [40, 50],
    [65, 42],
    [90, 50],
    [150, 50],
  ]),
});
const low = strip({ line: { follow: 'spine', allowed: 5 } }, 90, 28);

const aimedAt = (blade: Blade, tipOverlap: number): Aimed => {
  const work = bladework(blade, 60);
  const wanted = wishOf(work, 'right', 60);
  if (wanted === undefined) throw new Error('not ground');
  const stroke = strokeOf(50, work.shape.length, 0, tipOverlap);
  return { work, wanted, stroke, sections: work.stations.map(({ bar }) => bar) };
};

describe('the setoff of least deviation', () => {
  // Against sampling it densely, which shares the deviation at one setoff but no search.
  it.each([
    ['a taper that stays on the belt', [tapered], 50],
    ['a belly', [belly], 3],
    ['a recurve, held off by its neighbours', [recurve], 3],
    ['a family', [belly, low, recurve, tapered], 10],
  ] as const)('is where the least of 400 samples lies: %s', (_, blades, tipOverlap) => {
    const family = blades.map((blade) => aimedAt(blade, tipOverlap));
    for (const lean of [0, 3, -2]) {
      const question = { side: 'right', edge: 0.2, lean } as const;
      const { at, from, to } = deviationsOf(family, question);
      const worst = (setoff: number): number => {
        const { beyond, short } = at(setoff);
        return Math.max(beyond, short);
      };
      const found = setoffOfLeastDeviation(family, question);
      const step = (to - from) / 400;
      const samples = Array.from({ length: 401 }, (_, i) => worst(from + i * step));
      const least = Math.min(...samples);
      expect(worst(found)).toBeLessThanOrEqual(least);
      expect(Math.abs(found - from - step * samples.indexOf(least))).toBeLessThanOrEqual(step);
    }
  });
});
