import { problem } from '../core/issue.ts';
import { chain, fail, ok, type Result } from '../core/result.ts';
import type { Design } from '../document/schema.ts';
import type { Limit, Reach, Registry, SectionBox } from '../family/index.ts';
import type { Interval } from '../geometry/interval.ts';
import { solveDesign } from '../make/engine.ts';
import { text } from '../text/index.ts';

/** Blades of a band of spine thickness and of height, mm. */
export interface Band {
  readonly thickness: Interval;
  readonly height: Interval;
}

/** What is proved for a band: the longest run of angles, degrees; null where none is. */
export interface Proved extends Band {
  readonly angles: Interval | null;
}

export interface ReachTable {
  readonly format: 'platenwright-reach';
  readonly design: string;
  readonly family: string;
  readonly scope: string;
  readonly limits: readonly Omit<Limit, 'found'>[];
  /** Steps in which angles were looked for, degrees. */
  readonly step: number;
  /** Bands with anything in reach, by thickness, then by height. */
  readonly bands: readonly Proved[];
}

/** What is tabled: thicknesses, heights and angles that knives come in. */
const THICKNESS = { from: 1, to: 7, step: 0.5 } as const;
const HEIGHT = { from: 10, to: 80, step: 5 } as const;
const ANGLE = { from: 0.5, to: 15, step: 0.1 } as const;

/** A band is cut up so finely while it is proved: ranges of dependent sizes widen. */
const PIECES = { thickness: 2, height: 4 } as const;

const within = (range: Interval, { atLeast, atMost }: Limit): boolean =>
  (atLeast === undefined || range[0] >= atLeast) && (atMost === undefined || range[1] <= atMost);

/** Whether every blade of the box is within every limit. */
export const isProved = (limits: readonly Limit[], box: SectionBox): boolean =>
  limits.every((limit) => within(limit.found(box), limit));

const cut = ([low, high]: Interval, count: number): Interval[] =>
  Array.from({ length: count }, (_, i): Interval => [
    low + ((high - low) * i) / count,
    i === count - 1 ? high : low + ((high - low) * (i + 1)) / count,
  ]);

const steps = ({ from, to, step }: { from: number; to: number; step: number }): Interval[] =>
  cut([from, to], Math.round((to - from) / step));

const middle = ([low, high]: Interval): Interval => [(low + high) / 2, (low + high) / 2];

const provedAt = (limits: readonly Limit[], { thickness, height }: Band, angle: Interval) => {
  // One blade out of reach settles the matter without cutting up the band.
  const one = { thickness: middle(thickness), height: middle(height), angle: middle(angle) };
  return (
    isProved(limits, one) &&
    cut(thickness, PIECES.thickness).every((t) =>
      cut(height, PIECES.height).every((h) => isProved(limits, { thickness: t, height: h, angle })),
    )
  );
};

/** The longest run of angles for which every blade of the band is within every limit. */
export const provedAngles = (limits: readonly Limit[], band: Band): Interval | null => {
  let best: Interval | null = null;
  let run: Interval | null = null;
  for (const angle of steps(ANGLE)) {
    run = provedAt(limits, band, angle) ? [run ? run[0] : angle[0], angle[1]] : null;
    if (run && (!best || run[1] - run[0] > best[1] - best[0])) best = run;
  }
  return best;
};

/** The table of what a fixture can grind, band by band. */
export const reachTable = (
  design: string,
  family: string,
  { limits, scope, heightStep = HEIGHT.step }: Reach,
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
  step: ANGLE.step,
  bands: steps(THICKNESS)
    .flatMap((thickness) =>
      steps({ ...HEIGHT, step: heightStep }).map((height) => ({ thickness, height })),
    )
    .map((band) => ({ ...band, angles: provedAngles(limits, band) }))
    .filter(({ angles }) => angles !== null),
});

/** What the fixture of a design can grind as it is built; an issue where its family cannot say. */
export const reachOf = (design: Design, registry: Registry): Result<ReachTable> =>
  chain(solveDesign(design, registry), ({ reach }) => {
    const { family } = design.fixture;
    const label = registry.families[family]?.label ?? family;
    return reach === undefined
      ? fail(problem('reach-unknown', 'fixture.family', text.adapt.reachUnknown(label)))
      : ok(reachTable(design.name, label, reach));
  });
