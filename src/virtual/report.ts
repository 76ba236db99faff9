import { placeOn } from '../blade/place.ts';
import { SIDES, type Side } from '../blade/schema.ts';
import type { Certainty } from '../core/certainty.ts';
import { text } from '../text/index.ts';
import { compareWithModel, type ModelLine } from './compare.ts';
import type { Resolution } from './field.ts';
import { grindVirtually } from './grind.ts';
import type { VirtualJob } from './job.ts';
import { finishedLine, lineHeight } from './measure/line.ts';
import {
  edgePlaces,
  greatest,
  linePlaces,
  type EdgePlace,
  type LinePlace,
} from './measure/report.ts';
import type { VirtualGrind } from './types.ts';

/** Grid of a report: some 0.3 s for ten passes on a blade of 210 mm. */
export const USUAL: Resolution = { step: 1, rows: 40 };

/** What a planned blade looks like when it is done; mm and mm^3. */
export interface VirtualReport {
  readonly grind: VirtualGrind;
  readonly edge: readonly EdgePlace[];
  /** Most over the edge wanted where places count, and thickest less thinnest edge. */
  readonly standing: { readonly u: number; readonly value: number };
  readonly uneven: number;
  readonly lines: readonly {
    readonly side: Side;
    readonly places: readonly LinePlace[];
    /** Greatest deviation from the wanted line where places count. */
    readonly worst: { readonly u: number; readonly value: number };
  }[];
  /** Where the section model of the plan is off, and by how much. */
  readonly model: readonly ModelLine[];
  readonly volumes: readonly { readonly id: string; readonly volume: number }[];
  /** Places of the stroke at which the blade could not stand, by pass; none in a sound plan. */
  readonly missed: readonly { readonly id: string; readonly at: readonly number[] }[];
  /** How far the lengths can be trusted, and on what they rest. */
  readonly certainty: Certainty;
  readonly assumptions: readonly string[];
}

/**
 * Error of a grind line at the usual grid, mm; that of an edge is far smaller. See `index.ts`. A
 * hollow runs out flatly: its limits are found that much less closely.
 */
const GRID = { flat: 0.03, hollow: 0.06 } as const;

/**
 * The line of a hollow: its upper limit against the wanted one, at the places of the plan that
 * knows what is wanted there.
 */
const hollowLine = (grind: VirtualGrind, { model, seat }: VirtualJob, side: Side): LinePlace[] => {
  const line = finishedLine(grind, side);
  const places = model.find((one) => one.side === side)?.places ?? [];
  return places.map(({ u, wanted, steers }) => {
    const place = placeOn(grind.shape, u, seat);
    const bevelHeight = lineHeight(grind.finished, line, place);
    return {
      u,
      height: place.height,
      bevelHeight,
      wanted,
      deviation: bevelHeight - wanted,
      steers,
    };
  });
};

/** Grinds one planned blade virtually and says what stands. `progress` is told the share done. */
export const reportOf = (
  job: VirtualJob,
  resolution: Resolution = USUAL,
  progress?: (share: number) => void,
): VirtualReport => {
  const grind = grindVirtually({ ...job, resolution }, progress);
  const { shape, finished } = grind;
  const stroke = job.passes.at(-1)?.stroke ?? { width: 0, from: 0, to: 0 };
  const judged = { seat: job.seat, stroke };
  // Where the fixture does not guide the blade the plan promises nothing.
  const promised = job.model.flatMap(({ places }) => places.filter(({ steers }) => steers));
  const from = Math.min(...promised.map(({ u }) => u));
  const to = Math.max(...promised.map(({ u }) => u));
  const edge = edgePlaces(shape, finished, job.edge, judged).map((place) => ({
    ...place,
    steers: place.steers && place.u >= from && place.u <= to,
  }));
  const counted = edge.filter(({ steers }) => steers);
  const thick = counted.map(({ thickness }) => thickness);
  const isHollow = job.passes.some(({ holding }) => holding.kind === 'edge-rest');
  const words = text.virtual;
  const ground = SIDES.filter((side) => job.passes.some((pass) => pass.side === side));
  return {
    grind,
    edge,
    standing: greatest(counted, (place) => place.standing),
    uneven: thick.length > 0 ? Math.max(...thick) - Math.min(...thick) : 0,
    lines: ground.flatMap((side) => {
      const flat = linePlaces(shape, finished, side, judged);
      const places = flat.length > 0 ? flat : hollowLine(grind, job, side);
      const steering = places.filter(({ steers }) => steers);
      const worst = greatest(steering, ({ deviation }) => deviation);
      return places.length > 0 ? [{ side, places, worst }] : [];
    }),
    model: compareWithModel(grind, job),
    volumes: grind.passes.map(({ pass: { id }, volume }) => ({ id, volume })),
    missed: grind.passes.flatMap(({ pass: { id }, missed: at }) =>
      at.length > 0 ? [{ id, at }] : [],
    ),
    certainty: job.soft
      ? { kind: 'estimate', basis: words.certainty.rigid }
      : { kind: 'bounded', by: GRID[isHollow ? 'hollow' : 'flat'], reason: words.certainty.grid },
    assumptions: [
      ...(job.passes[0] ? words.held[job.passes[0].holding.kind] : []),
      ...words.assumptions,
    ],
  };
};
