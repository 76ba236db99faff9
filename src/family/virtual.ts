import type { Blade } from '../blade/schema.ts';
import type { Result } from '../core/result.ts';
import type { CarriageInput, CarriagePlan } from '../grind/carriage/types.ts';
import type { EdgeRestInput, EdgeRestPlan } from '../grind/edge-rest/types.ts';
import type { SpineRestInput, SpineRestPlan } from '../grind/spine-rest/types.ts';
import {
  adviseStroke,
  carriageJob,
  cureLine,
  edgeRestJob,
  spineRestJob,
  type Cure,
  type Resolution,
  type SpineRestBody,
  type StripWish,
  type StrokeAdvice,
  type VirtualJob,
} from '../virtual/index.ts';

/** What a fixture offers to the virtual grind of one blade; nothing is computed before it is asked. */
export interface VirtualWork {
  readonly job: VirtualJob;
  /** Which stroke leaves the evenest edge; absent where the family has no stroke to choose. */
  readonly advice?: () => Result<StrokeAdvice>;
  /** The strip that mends a wandering grind line; absent where the family has no step for it. */
  readonly cure?: (resolution: Resolution) => Result<Cure>;
}

/** The virtual grind of a blade by its name; undefined for a name that is none. */
export type VirtualGrinding = (blade: string) => VirtualWork | undefined;

const named =
  (blades: readonly Blade[], work: (blade: Blade) => VirtualWork): VirtualGrinding =>
  (name) => {
    const blade = blades.find((one) => one.name === name);
    return blade && work(blade);
  };

/** A spine rest's nose and step, as its blades are ground against them; `wish` asks for a strip. */
export const spineRestGrinding = (
  input: SpineRestInput,
  plan: SpineRestPlan,
  body: SpineRestBody,
  wish: (blade: Blade) => StripWish,
): VirtualGrinding =>
  named(input.blades, (blade) => ({
    job: spineRestJob(blade, input, plan, body),
    cure: (resolution) =>
      cureLine({
        virtual: { ...spineRestJob(blade, input, plan, body), resolution },
        wish: wish(blade),
      }),
    advice: () => adviseStroke(input, blade, body),
  }));

/** An edge rest's blades as its wheel hollows them. */
export const edgeRestGrinding = (input: EdgeRestInput, plan: EdgeRestPlan): VirtualGrinding =>
  named(input.blades, (blade) => ({ job: edgeRestJob(blade, input, plan) }));

/** A carriage's blades as the belt grinds them. */
export const carriageGrinding = (input: CarriageInput, plan: CarriagePlan): VirtualGrinding =>
  named(input.blades, (blade) => ({ job: carriageJob(blade, input, plan) }));
