import { problem } from '../core/issue.ts';
import { chain, fail, ok, type Result } from '../core/result.ts';
import type { Design } from '../document/schema.ts';
import type { Limit, Reach, ReachAxes, ReachAxis, ReachBox, Registry } from '../family/index.ts';
import { point, type Interval } from '../geometry/interval.ts';
import { solveDesign } from '../make/engine.ts';
import { text } from '../text/index.ts';

/** Blades of one cell of the table. */
export type Band = Pick<ReachBox, 'across' | 'up'>;

/** What is proved for a band: the longest run and, with it, the range beside it. */
export interface Proved extends Band {
  readonly run: Interval;
  readonly also?: Interval;
}

export interface ReachTable {
  readonly format: 'platenwright-reach';
  readonly design: string;
  readonly family: string;
  readonly scope: string;
  readonly limits: readonly Omit<Limit, 'found'>[];
  readonly axes: ReachAxes;
  /** Bands with anything in reach, from row to row. */
  readonly bands: readonly Proved[];
}

/** A band is cut up so finely while it is proved: ranges of dependent sizes widen. */
const PIECES = { across: 4, up: 2 } as const;

const within = (range: Interval, { atLeast, atMost }: Limit): boolean =>
  (atLeast === undefined || range[0] >= atLeast) && (atMost === undefined || range[1] <= atMost);

/** Whether every blade of the box is within every limit. */
export const isProved = (limits: readonly Limit[], box: ReachBox): boolean =>
  limits.every((limit) => within(limit.found(box), limit));

const cut = ([low, high]: Interval, count: number): Interval[] =>
  Array.from({ length: count }, (_, i): Interval => [
    low + ((high - low) * i) / count,
    i === count - 1 ? high : low + ((high - low) * (i + 1)) / count,
  ]);

const steps = ({ from, to, step }: ReachAxis): Interval[] =>
  cut([from, to], Math.round((to - from) / step));

const middle = ([low, high]: Interval): Interval => point((low + high) / 2);

const provedAt = (limits: readonly Limit[], box: ReachBox): boolean => {
  const { across, up, run, also } = box;
  // One blade out of reach settles the matter without cutting up the band.
  const one = { across: middle(across), up: middle(up), run: middle(run), also: point(also[0]) };
  return (
    isProved(limits, one) &&
    cut(up, PIECES.up).every((u) =>
      cut(across, PIECES.across).every((a) => isProved(limits, { across: a, up: u, run, also })),
    )
  );
};

/** The longest run for which every blade of the band, at `also`, is within every limit. */
export const provedRun = (
  limits: readonly Limit[],
  { run: axis }: Pick<ReachAxes, 'run'>,
  band: Band,
  also: Interval = point(0),
): Interval | null => {
  let best: Interval | null = null;
  let run: Interval | null = null;
  for (const part of steps(axis)) {
    run = provedAt(limits, { ...band, run: part, also }) ? [run ? run[0] : part[0], part[1]] : null;
    if (run && (!best || run[1] - run[0] > best[1] - best[0])) best = run;
  }
  return best;
};

/**
 * The longest range down from the greatest `also` that is proved with a run: found by halving, as
 * what is proved of a range is proved of every part of it.
 */
const provedDown = (
  limits: readonly Limit[],
  { run: runs }: ReachAxes,
  also: ReachAxis,
  { band, run }: { readonly band: Band; readonly run: Interval },
): Interval => {
  const parts = steps(runs).filter(([low, high]) => low >= run[0] && high <= run[1]);
  const starts = steps(also).map(([from]) => from);
  let [out, proved] = [-1, starts.length - 1];
  while (proved - out > 1) {
    const tried = Math.floor((out + proved) / 2);
    const range: Interval = [starts[tried] ?? also.to, also.to];
    if (parts.every((part) => provedAt(limits, { ...band, run: part, also: range })))
      proved = tried;
    else out = tried;
  }
  return [starts[proved] ?? also.to, also.to];
};

/** What is proved for a band; null where nothing is. */
const provedIn = (limits: readonly Limit[], axes: ReachAxes, band: Band): Proved | null => {
  const { also } = axes;
  const run = provedRun(limits, axes, band, also && steps(also).at(-1));
  if (run === null || also === undefined) return run && { ...band, run };
  return { ...band, run, also: provedDown(limits, axes, also, { band, run }) };
};

/** The table of what a fixture can grind, band by band. */
export const reachTable = (
  design: string,
  family: string,
  { axes, limits, scope }: Reach,
): ReachTable => ({
  format: 'platenwright-reach',
  design,
  family,
  scope,
  limits: limits.map(({ id, label, unit, atLeast, atMost }) => ({
    id,
    label,
    unit,
    ...(atLeast === undefined ? {} : { atLeast }),
    ...(atMost === undefined ? {} : { atMost }),
  })),
  axes,
  bands: steps(axes.up).flatMap((up) =>
    steps(axes.across).flatMap((across) => provedIn(limits, axes, { across, up }) ?? []),
  ),
});

/** What the fixture of a design can grind as it is built; an issue where its family cannot say. */
export const reachOf = (design: Design, registry: Registry): Result<ReachTable> =>
  chain(solveDesign(design, registry), ({ reach, reachless }) => {
    const { family } = design.fixture;
    const label = registry.families[family]?.label ?? family;
    return reach === undefined
      ? fail(
          problem('reach-unknown', 'fixture.family', reachless ?? text.adapt.reachUnknown(label)),
        )
      : ok(reachTable(design.name, label, reach));
  });
