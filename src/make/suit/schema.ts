import * as v from 'valibot';
import type { BladeSuit, FamilySuit, Suit } from './suit.ts';

type Schema<T> = v.GenericSchema<unknown, T>;

const list = v.array;

const moved = v.union([v.number(), v.string()]);

const familySchema: Schema<FamilySuit> = v.object({
  family: v.string(),
  label: v.string(),
  verdict: v.picklist(['suits', 'with-limits', 'not']),
  line: v.nullable(v.number()),
  allowed: v.number(),
  standing: v.nullable(v.number()),
  clearance: v.nullable(v.object({ label: v.string(), found: v.number(), spare: v.number() })),
  sensitivity: v.nullable(v.object({ degrees: v.nullable(v.number()), bevelHeight: v.number() })),
  toMake: v.nullable(
    v.object({
      plates: v.number(),
      prints: v.number(),
      stock: v.number(),
      bought: v.number(),
      mass: v.number(),
    }),
  ),
  cost: v.string(),
  parameters: v.nullable(v.record(v.string(), moved)),
  changed: list(v.object({ label: v.string(), from: moved, to: moved })),
  tried: list(v.object({ label: v.string(), values: v.number() })),
  whyNot: list(v.string()),
});

const bladeSchema: Schema<BladeSuit> = v.object({
  blade: v.string(),
  families: list(familySchema),
  byHand: list(
    v.object({
      id: v.picklist(['freehand', 'push-stick']),
      label: v.string(),
      about: v.string(),
      reasons: list(v.string()),
    }),
  ),
  sentence: v.string(),
});

/** What `suit` answers, as published by `jig schema suit`. */
export const suitSchema: Schema<Suit> = v.object({
  format: v.literal('platenwright-suit'),
  design: v.string(),
  blades: list(bladeSchema),
  together: list(familySchema),
  sentence: v.string(),
});
