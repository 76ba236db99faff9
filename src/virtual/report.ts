import type { Blade, Side } from '../blade/schema.ts';
import type { Certainty } from '../core/certainty.ts';
import type { SpineRestInput, SpineRestPlan } from '../grind/spine-rest/types.ts';
import { text } from '../text/index.ts';
import { compareWithPlan, type ModelLine } from './compare.ts';
import type { Resolution } from './field.ts';
import { passesOf, startOf } from './from-plan.ts';
import { grindVirtually } from './grind.ts';
import type { SpineRestBody } from './hold/spine-settle.ts';
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

/** Error of a grind line at the usual grid, mm; that of an edge is far smaller. See `index.ts`. */
const GRID = 0.03;

/** Grinds one planned blade of a family virtually and says what stands. */
export const virtualReport = (
  input: SpineRestInput,
  plan: SpineRestPlan,
  blade: Blade,
  body: SpineRestBody,
  resolution: Resolution = USUAL,
): VirtualReport => {
  const passes = passesOf(blade, input, plan, body);
  const grind = grindVirtually({ blade, passes, start: startOf(blade, plan), resolution });
  const { shape, finished } = grind;
  const stroke = passes.at(-1)?.stroke ?? { width: 0, from: 0, to: 0 };
  const judged = { seat: 2 * body.noseHalf, stroke };
  const edge = edgePlaces(shape, finished, input.sequence.at(-1)?.edge ?? 0, judged);
  const counted = edge.filter(({ steers }) => steers);
  const thick = counted.map(({ thickness }) => thickness);
  const soft = input.sequence.some(({ backing: id }) => {
    const backing = input.grinder.backings.find((b) => b.id === id);
    return backing?.kind === 'leather' || backing?.kind === 'rubber';
  });
  const words = text.virtual.certainty;
  return {
    grind,
    edge,
    standing: greatest(counted, (place) => place.standing),
    uneven: thick.length > 0 ? Math.max(...thick) - Math.min(...thick) : 0,
    lines: (['left', 'right'] as const).flatMap((side) => {
      const places = linePlaces(shape, finished, side, judged);
      const steering = places.filter(({ steers }) => steers);
      const worst = greatest(steering, ({ deviation }) => deviation);
      return places.length > 0 ? [{ side, places, worst }] : [];
    }),
    model: compareWithPlan(grind, plan, judged.seat),
    volumes: grind.passes.map(({ pass: { id }, volume }) => ({ id, volume })),
    missed: grind.passes.flatMap(({ pass: { id }, missed: at }) =>
      at.length > 0 ? [{ id, at }] : [],
    ),
    certainty: soft
      ? { kind: 'estimate', basis: words.rigid }
      : { kind: 'bounded', by: GRID, reason: words.grid },
    assumptions: text.virtual.assumptions,
  };
};
