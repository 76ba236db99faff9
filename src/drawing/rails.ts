import type { Segment } from '../geometry/segment.ts';

type Interval = readonly [number, number];

/**
 * Level and upright edges kept as intervals on their lines, so that pieces join and what is
 * covered by another set can be taken away.
 */
export interface Rails {
  readonly level: ReadonlyMap<number, readonly Interval[]>;
  readonly upright: ReadonlyMap<number, readonly Interval[]>;
}

/** Lines nearer than this are one, mm. */
const GRID = 1e-3;
const EPS = 1e-6;

const joined = (intervals: readonly Interval[]): Interval[] => {
  const sorted = intervals
    .map(([a, b]): Interval => [Math.min(a, b), Math.max(a, b)])
    .filter(([a, b]) => b - a > EPS)
    .sort((p, q) => p[0] - q[0]);
  const out: [number, number][] = [];
  for (const [a, b] of sorted) {
    const last = out.at(-1);
    if (last && a <= last[1] + GRID) last[1] = Math.max(last[1], b);
    else out.push([a, b]);
  }
  return out;
};

const gather = (pairs: readonly { at: number; run: Interval }[]): Map<number, Interval[]> => {
  const map = new Map<number, Interval[]>();
  for (const { at, run } of pairs) {
    const key = Math.round(at / GRID) * GRID;
    map.set(key, joined([...(map.get(key) ?? []), run]));
  }
  return map;
};

export const rails = (edges: readonly Segment[]): Rails => ({
  level: gather(
    edges.filter((e) => e.a[1] === e.b[1]).map((e) => ({ at: e.a[1], run: [e.a[0], e.b[0]] })),
  ),
  upright: gather(
    edges.filter((e) => e.a[0] === e.b[0]).map((e) => ({ at: e.a[0], run: [e.a[1], e.b[1]] })),
  ),
});

/** What is left of some intervals when another is taken away. */
const cut = (runs: readonly Interval[], [c, d]: Interval): Interval[] =>
  runs
    .flatMap(([a, b]): Interval[] =>
      d <= a || c >= b
        ? [[a, b]]
        : [
            [a, c],
            [d, b],
          ],
    )
    .filter(([a, b]) => b - a > GRID);

const without = (
  runs: ReadonlyMap<number, readonly Interval[]>,
  less: ReadonlyMap<number, readonly Interval[]>,
): Map<number, Interval[]> =>
  new Map([...runs].map(([at, list]) => [at, (less.get(at) ?? []).reduce(cut, [...list])]));

/** The edges less whatever coincides with the others. */
export const lessRails = (edges: Rails, others: Rails): Rails => ({
  level: without(edges.level, others.level),
  upright: without(edges.upright, others.upright),
});

export const railEdges = ({ level, upright }: Rails): Segment[] => [
  ...[...level].flatMap(([y, runs]) =>
    runs.map(([a, b]): Segment => ({ a: [a, y], b: [b, y], bulge: 0 })),
  ),
  ...[...upright].flatMap(([x, runs]) =>
    runs.map(([a, b]): Segment => ({ a: [x, a], b: [x, b], bulge: 0 })),
  ),
];
