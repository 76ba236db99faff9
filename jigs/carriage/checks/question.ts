import { text, type Part, type Workshop } from '../../../src/family/index.ts';
import type { Context } from '../context.ts';
import type { Values } from '../parameters.ts';
import type { Item } from '../place/item.ts';

/** Everything the checks look at: the finished parts where they stand, not the wishes. */
export interface Question {
  readonly c: Context;
  readonly parts: readonly Part[];
  /** Where the solids of the parts are kept. */
  readonly workshop: Workshop;
  readonly items: readonly Item[];
  /** Height of the push over the base, most tilted, mm. */
  readonly pushHeight: number;
}

export const words = text.family.carriage.checks;

export const parameterPath = (key: keyof Values): string => `fixture.parameters.${key}`;
