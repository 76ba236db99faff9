import type { Blade } from '../blade/schema.ts';
import type { CarriageInput, CarriagePlan } from '../grind/carriage/types.ts';
import type { EdgeRestInput, EdgeRestPlan } from '../grind/edge-rest/types.ts';
import type { SpineRestInput, SpineRestPlan } from '../grind/spine-rest/types.ts';
import type { CheckResult } from '../check/result.ts';
import type { Result } from '../core/result.ts';
import type { Part } from '../model/part.ts';
import type { BladePose } from './blade-pose.ts';
import type { Cure, SpineRestBody, StripWish } from '../virtual/index.ts';

/** A strip that was found for a blade, and how the blade stands on it at each setting. */
export interface StripFound {
  readonly cure: Cure;
  /** Poses along the stroke, from plunge to tip, by the id of the setting. */
  readonly poses: (setting: string) => readonly BladePose[];
}

/** A setting of the rounded step with the strip on the blade; mm and turns of the feed screw. */
export interface StripSetting {
  readonly setting: string;
  readonly setoff: number;
  readonly turnsFromZero: number;
  /** What the knob shows, counted from the zero. */
  readonly division: number;
  /** Lowest push that carries the reserve, and the edge it stays below, mm over the seat. */
  readonly push: { readonly from: number; readonly to: number };
}

/** What is made and set for a strip: rounded step and strips, settings, and what was checked. */
export interface StripKit {
  readonly parts: readonly Part[];
  readonly settings: readonly StripSetting[];
  readonly checks: readonly CheckResult[];
}

/**
 * What is to be ground virtually: the virtual grind itself is fetched only by those who ask for it.
 * A spine rest also says what is asked of a strip that mends a wandering line, and what it takes.
 */
export type VirtualOrder =
  | {
      readonly kind: 'spine-rest';
      readonly blade: Blade;
      readonly input: SpineRestInput;
      readonly plan: SpineRestPlan;
      /** Nose and step, as the blade is ground against them. */
      readonly body: SpineRestBody;
      readonly wish: StripWish;
      /** The rest with a rounded step in place of its straight one, checked with the strip. */
      readonly kit: (found: StripFound) => Result<StripKit>;
      /** The strip that this rest is made for, and the straight step's plan that it came from. */
      readonly carried?: { readonly found: StripFound; readonly straight: SpineRestPlan };
    }
  | {
      readonly kind: 'edge-rest';
      readonly blade: Blade;
      readonly input: EdgeRestInput;
      readonly plan: EdgeRestPlan;
    }
  | {
      readonly kind: 'carriage';
      readonly blade: Blade;
      readonly input: CarriageInput;
      readonly plan: CarriagePlan;
    };

/** The virtual grind of a blade by its name; undefined for a name that is none. */
export type VirtualGrinding = (blade: string) => VirtualOrder | undefined;

/** The order for every blade of a list. */
export const virtualGrinding =
  (blades: readonly Blade[], order: (blade: Blade) => VirtualOrder): VirtualGrinding =>
  (name) => {
    const blade = blades.find((one) => one.name === name);
    return blade && order(blade);
  };
