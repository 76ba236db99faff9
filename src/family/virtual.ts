import type { Blade } from '../blade/schema.ts';
import type { CarriageInput, CarriagePlan } from '../grind/carriage/types.ts';
import type { EdgeRestInput, EdgeRestPlan } from '../grind/edge-rest/types.ts';
import type { SpineRestInput, SpineRestPlan } from '../grind/spine-rest/types.ts';
import type { SpineRestBody, StripWish } from '../virtual/index.ts';

/**
 * What is to be ground virtually, as plain data: the virtual grind itself is fetched only by those
 * who ask for it. A spine rest also says what is asked of a strip that mends a wandering line.
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
