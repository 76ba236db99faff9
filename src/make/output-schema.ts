import * as v from 'valibot';
import type { CheckResult } from '../check/result.ts';
import type { Issue } from '../core/issue.ts';
import type { Certainty } from '../core/certainty.ts';
import { UNITS } from '../core/parameter.ts';
import type { Fact, GrindLine, Setting } from '../family/index.ts';
import type { Manifest } from '../export/package.ts';
import type { DialRange } from './free-range/dials.ts';
import type { NumberRange } from './free-range/numbers.ts';
import type { RangeEnd } from './free-range/search.ts';
import type { Report, ReportPart, Solution, Verdict } from './report.ts';

/**
 * What the program writes, as schemas: published by `jig schema`, held against every answer in
 * the tests, and bound to the types here so that the two cannot drift apart.
 */
type Schema<T> = v.GenericSchema<unknown, T>;

export const unitSchema = v.picklist(UNITS);
const side = v.picklist(['left', 'right']);
const list = v.array;

export const certaintySchema: Schema<Certainty> = v.variant('kind', [
  v.object({ kind: v.literal('exact') }),
  v.object({ kind: v.literal('bounded'), by: v.number(), reason: v.string() }),
  v.object({ kind: v.literal('estimate'), basis: v.string() }),
]);

const settingSchema = v.object({
  id: v.string(),
  step: v.number(),
  side,
  belt: v.string(),
  backing: v.string(),
  edgeStop: v.number(),
  angle: v.number(),
  readings: list(
    v.object({
      key: v.string(),
      label: v.string(),
      value: v.number(),
      unit: unitSchema,
      dial: v.exactOptional(
        v.object({
          turnsFromZero: v.number(),
          turnsFromLast: v.number(),
          division: v.number(),
        }),
      ),
    }),
  ),
  progress: list(v.object({ edge: v.number(), angle: v.number(), bevelHeight: v.number() })),
  expected: list(
    v.object({
      blade: v.string(),
      place: v.picklist(['heel', 'middle', 'tip']),
      u: v.number(),
      bevelHeight: v.number(),
    }),
  ),
  push: v.object({
    from: v.number(),
    to: v.number(),
    stepForce: v.tuple([v.number(), v.number()]),
  }),
  volume: list(v.object({ blade: v.string(), value: v.number() })),
  notes: list(v.string()),
  hollow: v.exactOptional(
    v.object({
      stop: v.number(),
      progress: list(v.object({ depth: v.number(), lower: v.number(), upper: v.number() })),
    }),
  ),
});

const lineSchema = v.object({
  blade: v.string(),
  side,
  places: list(
    v.object({
      u: v.number(),
      height: v.number(),
      thickness: v.number(),
      angle: v.number(),
      bevelHeight: v.number(),
      wanted: v.number(),
      deviation: v.number(),
      leftStanding: v.number(),
      certainty: certaintySchema,
    }),
  ),
});

export const factSchema = v.object({
  key: v.string(),
  label: v.string(),
  value: v.number(),
  unit: unitSchema,
  certainty: certaintySchema,
});

export const issueSchema: Schema<Issue> = v.object({
  code: v.string(),
  severity: v.picklist(['error', 'warning', 'note']),
  path: v.string(),
  message: v.string(),
  fix: v.string(),
  mend: v.exactOptional(v.object({ path: v.string(), value: v.union([v.number(), v.string()]) })),
});

const point = v.tuple([v.number(), v.number(), v.number()]);

export const checkResultSchema = v.object({
  id: v.string(),
  label: v.string(),
  kind: v.picklist(['clearance', 'contact', 'range', 'fabrication', 'force', 'hand']),
  passed: v.boolean(),
  unit: v.picklist(['mm', 'deg', 'N', 'ratio', 'm/s']),
  found: v.nullable(v.number()),
  atLeast: v.exactOptional(v.number()),
  atMost: v.exactOptional(v.number()),
  basis: v.string(),
  pose: v.exactOptional(
    v.object({
      setting: v.string(),
      blade: v.exactOptional(v.string()),
      u: v.exactOptional(v.number()),
    }),
  ),
  points: v.exactOptional(v.tuple([point, point])),
  shared: v.exactOptional(v.number()),
  message: v.string(),
  fix: v.string(),
  parameter: v.exactOptional(v.string()),
});

const partSchema: Schema<ReportPart> = v.object({
  id: v.string(),
  kind: v.picklist(['plate', 'print', 'stock', 'hardware']),
  name: v.string(),
  quantity: v.number(),
  material: v.string(),
  designation: v.string(),
  mass: v.number(),
});

const settings: Schema<Setting[]> = list(settingSchema);
const lines: Schema<GrindLine[]> = list(lineSchema);
const facts: Schema<Fact[]> = list(factSchema);
const checks: Schema<CheckResult[]> = list(checkResultSchema);

export const solutionSchema: Schema<Solution> = v.object({
  format: v.literal('platenwright-solution'),
  design: v.string(),
  family: v.string(),
  settings,
  lines,
  facts,
});

const rangeEnd: Schema<RangeEnd> = v.object({
  good: v.number(),
  stop: v.picklist(['limit', 'check', 'refused', 'far']),
  bad: v.exactOptional(v.number()),
  fails: list(v.string()),
  tried: v.number(),
});

const dials: Schema<DialRange[]> = list(
  v.object({
    reading: v.string(),
    label: v.string(),
    bodies: list(v.string()),
    free: v.nullable(v.number()),
    check: v.string(),
  }),
);

const numbers: Schema<NumberRange[]> = list(
  v.object({
    path: v.string(),
    label: v.string(),
    unit: v.union([unitSchema, v.literal('')]),
    value: v.number(),
    tolerance: v.number(),
    down: rangeEnd,
    up: rangeEnd,
  }),
);

export const verdictSchema: Schema<Verdict> = v.object({
  format: v.literal('platenwright-checks'),
  design: v.string(),
  passed: v.boolean(),
  checks,
  dials,
  numbers: v.exactOptional(numbers),
});

export const reportSchema: Schema<Report> = v.object({
  format: v.literal('platenwright-report'),
  design: v.string(),
  revision: v.number(),
  family: v.string(),
  passed: v.boolean(),
  settings,
  lines,
  facts,
  checks,
  dials,
  parts: list(partSchema),
  carried: v.string(),
});

export const manifestSchema: Schema<Manifest> = v.object({
  format: v.literal('platenwright-package'),
  schema: v.literal(1),
  design: v.string(),
  passed: v.boolean(),
  files: list(
    v.object({
      path: v.string(),
      kind: v.string(),
      part: v.exactOptional(v.string()),
      quantity: v.exactOptional(v.number()),
      sha256: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)),
    }),
  ),
  carried: v.exactOptional(v.string()),
});
