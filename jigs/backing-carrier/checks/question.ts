import {
  text,
  type Design,
  type Part,
  type Placement,
  type Workshop,
} from '../../../src/family/index.ts';
import type { Aim } from '../aim.ts';
import type { Layout } from '../layout.ts';
import type { Values } from '../parameters.ts';

/** Everything the checks look at. */
export interface Question {
  readonly design: Design;
  readonly v: Values;
  readonly l: Layout;
  readonly aims: readonly Aim[];
  readonly parts: readonly Part[];
  /** Where the solids of the parts are kept. */
  readonly workshop: Workshop;
  readonly placements: readonly Placement[];
  /** What the belt's path grows by, mm. */
  readonly path: number;
  /** Id of the first setting. */
  readonly first: string;
}

export const words = text.family.backingCarrier.checks;

export const parameterPath = (key: keyof Values): string => `fixture.parameters.${key}`;
