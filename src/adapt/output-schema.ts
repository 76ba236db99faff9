import * as v from 'valibot';
import { checkResultSchema, issueSchema, unitSchema } from '../make/output-schema.ts';
import type { Adaptation } from './adapt.ts';
import type { AreaConsequence, Comparison } from './compare.ts';
import type { Difference } from './differences.ts';
import type { MendReport } from './mend-all.ts';
import type { PartChange, Purchase } from './part-changes.ts';
import type { ReachTable } from './reach.ts';
import type { SettingChange } from './setting-changes.ts';

/** What comparing, mending and adapting answer, as schemas bound to their types. */
type Schema<T> = v.GenericSchema<unknown, T>;

const list = v.array;

const differenceSchema: Schema<Difference> = v.object({
  path: v.string(),
  area: v.string(),
  areaLabel: v.string(),
  label: v.string(),
  from: v.nullable(v.string()),
  to: v.nullable(v.string()),
});

const partChangeSchema: Schema<PartChange> = v.object({
  part: v.string(),
  name: v.string(),
  kind: v.picklist(['plate', 'print', 'stock']),
  change: v.picklist(['unchanged', 'rework', 'remake', 'new', 'left-over', 'more']),
  quantity: v.number(),
  reasons: list(v.string()),
  content: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)),
});

const purchaseSchema: Schema<Purchase> = v.object({
  designation: v.string(),
  name: v.string(),
  have: v.number(),
  need: v.number(),
});

const settingChangeSchema: Schema<SettingChange> = v.object({
  setting: v.string(),
  step: v.number(),
  side: v.picklist(['left', 'right']),
  belt: v.string(),
  nth: v.number(),
  state: v.picklist(['changed', 'new', 'gone']),
  key: v.string(),
  label: v.string(),
  unit: unitSchema,
  from: v.nullable(v.number()),
  to: v.nullable(v.number()),
});

const consequenceFields = {
  settings: list(settingChangeSchema),
  parts: list(partChangeSchema),
  purchases: list(purchaseSchema),
};
const consequenceSchema = v.object(consequenceFields);

const areaSchema: Schema<AreaConsequence> = v.object({
  area: v.string(),
  consequence: v.nullable(consequenceSchema),
  issues: list(issueSchema),
});

const rangeSchema = v.tuple([v.number(), v.number()]);

const axisSchema = v.object({
  label: v.string(),
  unit: v.picklist(['mm', 'deg']),
  from: v.number(),
  to: v.number(),
  step: v.number(),
});

export const reachSchema: Schema<ReachTable> = v.object({
  format: v.literal('platenwright-reach'),
  design: v.string(),
  family: v.string(),
  scope: v.string(),
  limits: list(
    v.object({
      id: v.string(),
      label: v.string(),
      unit: unitSchema,
      atLeast: v.exactOptional(v.number()),
      atMost: v.exactOptional(v.number()),
    }),
  ),
  axes: v.object({
    across: axisSchema,
    up: axisSchema,
    run: axisSchema,
    also: v.exactOptional(axisSchema),
  }),
  bands: list(
    v.object({
      across: rangeSchema,
      up: rangeSchema,
      run: rangeSchema,
      also: v.exactOptional(rangeSchema),
    }),
  ),
});

export const mendedSchema: Schema<MendReport> = v.object({
  format: v.literal('platenwright-mended'),
  design: v.string(),
  differences: list(differenceSchema),
  failed: list(checkResultSchema),
});

export const comparisonSchema: Schema<Comparison> = v.object({
  format: v.literal('platenwright-comparison'),
  from: v.string(),
  to: v.string(),
  differences: list(differenceSchema),
  consequence: v.nullable(consequenceSchema),
  issues: list(issueSchema),
  areas: list(areaSchema),
});

export const adaptationSchema: Schema<Adaptation> = v.object({
  format: v.literal('platenwright-adaptation'),
  design: v.string(),
  grinder: v.string(),
  passed: v.boolean(),
  differences: list(differenceSchema),
  notes: list(issueSchema),
  ...consequenceFields,
  failed: list(checkResultSchema),
  checks: v.number(),
});
