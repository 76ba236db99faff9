import { describe, expect, it } from 'vitest';
import { reachTable } from '../../src/adapt/reach.ts';
import type { Limit, ReachAxes, ReachAxis, ReachBox } from '../../src/family/index.ts';
import type { Interval } from '../../src/geometry/interval.ts';

const axis = (from: number, to: number, step: number): ReachAxis => ({
  label: 'Size',
  unit: 'mm',
  from,
  to,
  step,
});
const axes: ReachAxes = {
  across: axis(0, 20, 10),
  up: axis(2, 4, 1),
  run: axis(0, 6, 1),
  also: axis(10, 20, 2),
};

const limit = (
  found: (box: ReachBox) => Interval,
  held: Pick<Limit, 'atLeast' | 'atMost'>,
): Limit => ({ id: 'x', label: 'x', unit: 'mm', found, ...held });

/** Bands in short: across and up by their lower ends, then run and what is told beside it. */
const told = (limits: readonly Limit[]) =>
  reachTable('design', 'family', { axes, limits, scope: '' }).bands.map(
    ({ across, up, run, also }) => [across[0], up[0], run, also],
  );
const all = [
  [0, 2, [0, 6], [10, 20]],
  [10, 2, [0, 6], [10, 20]],
  [0, 3, [0, 6], [10, 20]],
  [10, 3, [0, 6], [10, 20]],
];

// Limits on one size alone, whose bands can be told by hand.
describe('the table of a reach', () => {
  it('has every band where every blade of it is within every limit', () => {
    expect(told([])).toEqual(all);
    // At the limit itself a blade is within it.
    expect(told([limit(({ up }) => up, { atLeast: 2, atMost: 4 })])).toEqual(all);
    expect(told([limit(({ across }) => across, { atLeast: 0, atMost: 20 })])).toEqual(all);
  });

  it('has no band of which some blades are beyond a limit, on whichever side', () => {
    expect(told([limit(({ up }) => up, { atMost: 3.9 })])).toEqual(all.slice(0, 2));
    expect(told([limit(({ up }) => up, { atLeast: 2.1 })])).toEqual(all.slice(2));
    const columns = (column: number) => all.filter(([across]) => across === column);
    expect(told([limit(({ across }) => across, { atMost: 19 })])).toEqual(columns(0));
    expect(told([limit(({ across }) => across, { atLeast: 1 })])).toEqual(columns(10));
  });

  it('has of a run the longest stretch, and beside it what holds for all of that', () => {
    const runs = (limits: readonly Limit[]) => told(limits).map(([, , run]) => run);
    expect(runs([limit(({ run }) => run, { atLeast: 0.5, atMost: 5 })])).toEqual(
      Array(4).fill([1, 5]),
    );
    // A gap from 1.2 to 1.8: four steps after it are longer than one before it.
    const gap = ({ run }: ReachBox): Interval => (run[0] < 1.8 && run[1] > 1.2 ? [1, 1] : [0, 0]);
    expect(runs([limit(gap, { atMost: 0 })])).toEqual(Array(4).fill([2, 6]));

    const besides = (limits: readonly Limit[]) => told(limits).map(([, , , also]) => also);
    expect(besides([limit(({ also }) => also, { atLeast: 13 })])).toEqual(Array(4).fill([14, 20]));
    // The last step of the run alone asks for no less than 17, or the first.
    const ends: readonly ((run: Interval) => boolean)[] = [
      (run) => run[1] > 5.5,
      (run) => run[0] < 0.5,
    ];
    for (const isEnd of ends) {
      const found = ({ run, also }: ReachBox): Interval => (isEnd(run) ? also : [20, 20]);
      expect(besides([limit(found, { atLeast: 17 })])).toEqual(Array(4).fill([18, 20]));
    }
  });
});
