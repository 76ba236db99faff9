import {
  text,
  type BladePose,
  type Design,
  type Part,
  type Placement,
  type SpineRestPlan,
  type Workshop,
} from '../../../src/family/index.ts';
import type { Context } from '../../shared/parts/context.ts';
import type { Stand } from '../../shared/site.ts';
import type { Values } from '../parameters.ts';
import type { Carried } from '../strip/carried.ts';

/** Everything the checks look at: the finished parts where they stand, not the wishes. */
export interface Question {
  readonly design: Design;
  readonly v: Values;
  readonly plan: SpineRestPlan;
  readonly context: Context;
  /** One a pass of the sequence. */
  readonly stands: readonly Stand[];
  readonly parts: readonly Part[];
  /** Where the solids of the parts are kept. */
  readonly workshop: Workshop;
  readonly place: (setting: string) => readonly Placement[];
  /** What the blade carries, in blade coordinates. */
  readonly onBlade: readonly Placement[];
  /** The strip on the blade, where the step is rounded for one. */
  readonly strip?: Carried;
  readonly poses: (setting: string, blade: string) => readonly BladePose[];
}

export const words = text.family.spineRest.checks;

export const parameterPath = (key: keyof Values): string => `fixture.parameters.${key}`;
