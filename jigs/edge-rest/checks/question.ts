import {
  text,
  type BladePose,
  type Design,
  type EdgeRestPlan,
  type Part,
  type Placement,
  type Workshop,
} from '../../../src/family/index.ts';
import type { EdgeContext } from '../context.ts';
import type { Values } from '../parameters.ts';

/** Everything the checks look at: the finished parts where they stand, not the wishes. */
export interface Question {
  readonly design: Design;
  readonly v: Values;
  readonly plan: EdgeRestPlan;
  readonly context: EdgeContext;
  readonly parts: readonly Part[];
  /** Where the solids of the parts are kept. */
  readonly workshop: Workshop;
  readonly place: (setting: string) => readonly Placement[];
  /** What the blade carries, in blade coordinates. */
  readonly onBlade: readonly Placement[];
  readonly poses: (setting: string, blade: string) => readonly BladePose[];
}

export const words = text.family.edgeRest.checks;

export const parameterPath = (key: keyof Values): string => `fixture.parameters.${key}`;
