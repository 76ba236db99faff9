import type { Blade, Side } from '../../blade/schema.ts';
import { problem } from '../../core/issue.ts';
import { all, chain, fail, ok, type Result } from '../../core/result.ts';
import type { Design } from '../../document/schema.ts';
import type { Fixture, StripKit } from '../../family/index.ts';
import { text } from '../../text/index.ts';
import {
  reportOf,
  USUAL,
  type Cure,
  type Resolution,
  type StrokeAdvice,
  type VirtualReport,
} from '../../virtual/index.ts';
import { workOf, type VirtualWork, type YawOffer } from './work.ts';

const words = text.virtual.command;
/** Share of the work that grinding without a strip is where one is looked for, roughly. */
const PLAIN = 0.2;

export interface GroundOptions {
  /** Name of the one blade to grind; all of the design when left out. */
  readonly blade?: string | undefined;
  /** Spacing of the grid along the blade, mm. */
  readonly step?: number | undefined;
  /** Whether strokes are to be compared. */
  readonly advice?: boolean;
  /** Whether a strip is to be looked for that mends the grind line. */
  readonly cure?: boolean;
  /** Whether what that strip takes is to be drawn up and checked on the solids: some seconds. */
  readonly kit?: boolean;
  /** Told the share that is done, 0 to 1. */
  readonly progress?: (share: number) => void;
}

/** One blade ground virtually. */
export interface Ground {
  readonly blade: Blade;
  readonly work: VirtualWork;
  readonly step: number;
  readonly report: VirtualReport;
  readonly advice?: StrokeAdvice;
  /** What a step turned by half the taper does, or why none is, where advice was asked for. */
  readonly yaw?: Result<YawOffer>;
  /** The same on the straight step, where it was asked for a rest that is made for the strip. */
  readonly straight?: VirtualReport;
  /** The strip, or why there is none, where it was asked for. */
  readonly cure?: Result<Cure>;
  /** What that strip takes, checked, where it was asked for and a strip was found. */
  readonly kit?: Result<StripKit>;
}

const asked = ({ blades }: Design, name: string | undefined): Result<readonly Blade[]> => {
  const chosen = name === undefined ? blades : blades.filter((blade) => blade.name === name);
  const known = blades.map((blade) => blade.name).join(', ');
  return chosen.length > 0
    ? ok(chosen)
    : fail(problem('blade-unknown', 'blades', words.noBlade(name ?? '', known)));
};

const cureOf = (
  { cure }: VirtualWork,
  resolution: Resolution,
  progress: (share: number) => void,
): Result<Cure> =>
  cure?.(resolution, progress) ?? fail(problem('no-cure', 'fixture.family', words.noCure));

/** The strip with what it takes, which is left out where none was found, and the blade without. */
const curedOf = (
  work: VirtualWork,
  resolution: Resolution,
  withKit: boolean,
  progress: (share: number) => void,
): Pick<Ground, 'cure' | 'kit' | 'straight'> => {
  const cure = cureOf(work, resolution, progress);
  const kit = withKit && cure.ok ? work.kit?.(cure.value) : undefined;
  return {
    cure,
    ...(kit ? { kit } : {}),
    // On the grid of the strip that the rest is made for.
    ...(work.straight ? { straight: reportOf(work.straight, USUAL) } : {}),
  };
};

const adviceOf = (work: VirtualWork, isAsked: boolean): Result<StrokeAdvice | undefined> =>
  isAsked && work.advice ? work.advice() : ok(undefined);

/**
 * The blades of a solved fixture as the belt leaves them. Fails for a blade that the design does not
 * have, and for a family whose blades cannot be ground virtually.
 */
export const groundBlades = (
  design: Design,
  fixture: Fixture,
  {
    blade,
    step = USUAL.step,
    advice = false,
    cure = false,
    kit = false,
    progress = () => undefined,
  }: GroundOptions = {},
): Result<Ground[]> =>
  chain(asked(design, blade), (blades) =>
    all(
      blades.map((one, i): Result<Ground> => {
        const order = fixture.virtual?.(one.name);
        if (order === undefined)
          return fail(problem('no-virtual', 'fixture.family', words.none(design.fixture.family)));
        const work = workOf(order);
        const told = (share: number): void => progress((i + share) / blades.length);
        const report = reportOf(work.job, { ...USUAL, step }, (share) =>
          told(cure ? PLAIN * share : share),
        );
        return chain(adviceOf(work, advice), (best) =>
          ok({
            blade: one,
            work,
            step,
            report,
            ...(best ? { advice: best } : {}),
            ...(advice && work.yaw ? { yaw: work.yaw({ ...USUAL, step }) } : {}),
            ...(cure
              ? curedOf(work, { ...USUAL, step }, kit, (share) => told(PLAIN + (1 - PLAIN) * share))
              : {}),
          }),
        );
      }),
    ),
  );

/** A place of the edge with both grind lines, mm. */
export interface GroundPlace {
  readonly u: number;
  readonly thickness: number;
  readonly standing: number;
  readonly lines: Readonly<
    Partial<Record<Side, { readonly height: number; readonly wanted: number }>>
  >;
  readonly steers: boolean;
}

/** Places `spacing` mm apart along the blade, and the last one. */
export const groundPlaces = ({ report }: Ground, spacing: number): GroundPlace[] => {
  const { edge, lines } = report;
  const last = edge.at(-1)?.u ?? 0;
  return edge.flatMap((place, i): GroundPlace[] => {
    const before = edge[i - 1]?.u ?? -Infinity;
    const due = Math.floor(place.u / spacing) > Math.floor(before / spacing) || place.u === last;
    if (!due) return [];
    const at = lines.flatMap(({ side, places }) => {
      const near = places.filter(({ u }) => Math.abs(u - place.u) < spacing / 2);
      const [best] = near.sort((p, q) => Math.abs(p.u - place.u) - Math.abs(q.u - place.u));
      return best ? [[side, { height: best.bevelHeight, wanted: best.wanted }] as const] : [];
    });
    const { u, thickness, standing, steers } = place;
    return [{ u, thickness, standing, steers, lines: Object.fromEntries(at) }];
  });
};
