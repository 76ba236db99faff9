import type { Vec2 } from '../../geometry/vector.ts';
import type { Field } from '../field.ts';

/** A region of the blade between two levels of a map; loops are closed, not repeated, mm. */
export interface Band {
  readonly from: number;
  readonly to: number;
  readonly loops: readonly (readonly Vec2[])[];
}

/** A run of one column that lies in a band, v. */
type Run = readonly [top: number, bottom: number];

/** Adds a run, or lengthens the last one where it goes on. */
const add = (runs: [number, number][], top: number, bottom: number): void => {
  const last = runs.at(-1);
  if (last !== undefined && top - last[1] < 1e-9) last[1] = bottom;
  else runs.push([top, bottom]);
};

/** Where a value that runs straight from a to b is at a level, as a share of the way. */
const shareAt = (a: number, b: number, level: number): number =>
  a === b ? NaN : (level - a) / (b - a);

/** The stretches of a column whose value, straight between nodes, lies from one level to another. */
const runsOf = (
  v: ArrayLike<number>,
  value: ArrayLike<number>,
  first: number,
  rows: number,
  from: number,
  to: number,
): Run[] => {
  const runs: [number, number][] = [];
  for (let k = first; k < first + rows - 1; k += 1) {
    const [a, b] = [value[k] ?? 0, value[k + 1] ?? 0];
    // Most pieces lie wholly beyond the band or wholly in it.
    if ((a < from && b < from) || (a >= to && b >= to)) continue;
    const [va, vb] = [v[k] ?? 0, v[k + 1] ?? 0];
    if (a >= from && b >= from && a < to && b < to) {
      add(runs, va, va + (vb - va));
      continue;
    }
    const stops = [0, shareAt(a, b, from), shareAt(a, b, to), 1]
      .filter((t) => t >= 0 && t <= 1)
      .sort((p, q) => p - q);
    for (let i = 1; i < stops.length; i += 1) {
      const [start, end] = [stops[i - 1] ?? 0, stops[i] ?? 0];
      const middle = a + ((start + end) / 2) * (b - a);
      if (end > start && middle >= from && middle < to)
        add(runs, va + start * (vb - va), va + end * (vb - va));
    }
  }
  return runs;
};

/** Runs of neighbouring columns that belong together. */
interface Strand {
  readonly top: Vec2[];
  readonly bottom: Vec2[];
  last: Run;
}

/** Halfway between two columns; at the ends of the blade the column itself. */
const halfway = (u: number, beside: number | undefined): number =>
  beside === undefined ? u : (u + beside) / 2;

/** Lengthens a strand to u at the height of its last run. */
const extend = (strand: Strand, u: number): void => {
  strand.top.push([u, -strand.last[0]]);
  strand.bottom.push([u, -strand.last[1]]);
};

const overlap = (a: Run, b: Run): number => Math.min(a[1], b[1]) - Math.max(a[0], b[0]);

/** A strand as a loop: along its top, back along its bottom. */
const loopOf = ({ top, bottom }: Strand): Vec2[] => [...top, ...bottom.toReversed()];

/**
 * The regions of a blade where a value at the nodes lies between neighbouring levels, as loops in
 * (u, -v): the spine up, the tip to the right. In every column the value runs straight from node to
 * node; the runs of neighbouring columns that overlap most are joined, and a run that has nothing to
 * join reaches halfway to the next column.
 */
export const bandsOf = (
  { us, rows, v }: Field,
  value: ArrayLike<number>,
  levels: readonly number[],
): Band[] =>
  levels.slice(1).map((to, i): Band => {
    const from = levels[i] ?? 0;
    const done: Strand[] = [];
    let active: Strand[] = [];
    us.forEach((u, column) => {
      if (u < 0) return;
      const before = us[column - 1];
      const start = halfway(u, before === undefined || before < 0 ? undefined : before);
      const next: Strand[] = [];
      const free = new Set(active);
      for (const run of runsOf(v, value, column * rows, rows, from, to)) {
        const best = [...free]
          .filter((strand) => overlap(strand.last, run) > 0)
          .sort((p, q) => overlap(q.last, run) - overlap(p.last, run))[0];
        const strand = best ?? { top: [], bottom: [], last: run };
        if (best !== undefined) free.delete(best);
        else if (start < u) extend(strand, start);
        strand.last = run;
        extend(strand, u);
        next.push(strand);
      }
      for (const strand of free) extend(strand, start);
      done.push(...free);
      active = next;
    });
    const strands = [...done, ...active].filter(({ top }) => top.length > 1);
    return { from, to, loops: strands.map(loopOf) };
  });
