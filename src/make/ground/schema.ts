import * as v from 'valibot';
import type { StrokeCandidate } from '../../virtual/index.ts';
import { certaintySchema, checkResultSchema, factSchema, issueSchema } from '../output-schema.ts';
import type { At, BladeReport, CureReport, GrindReport } from './report.ts';

type Schema<T> = v.GenericSchema<unknown, T>;

const list = v.array;
const side = v.picklist(['left', 'right']);
const at: Schema<At> = v.object({ u: v.number(), value: v.number() });

const modelPlace = v.object({
  u: v.number(),
  model: v.number(),
  ground: v.number(),
  off: v.number(),
  modelStanding: v.number(),
  standing: v.number(),
  steers: v.boolean(),
});

const candidate: Schema<StrokeCandidate> = v.object({
  tipOverlap: v.number(),
  first: side,
  twice: v.boolean(),
  uneven: v.number(),
  standing: at,
  line: v.number(),
});

const cureSchema: Schema<CureReport> = v.object({
  oneForBoth: v.boolean(),
  sides: list(
    v.object({
      side,
      part: v.string(),
      without: v.number(),
      with: v.number(),
      profile: list(v.object({ u: v.number(), thickness: v.number() })),
    }),
  ),
  settings: list(v.object({ setting: v.string(), setoff: v.number() })),
  facts: list(factSchema),
  kit: v.nullable(
    v.object({
      parts: list(v.string()),
      settings: list(
        v.object({
          setting: v.string(),
          setoff: v.number(),
          turnsFromZero: v.number(),
          division: v.number(),
          push: v.object({ from: v.number(), to: v.number() }),
        }),
      ),
      checks: list(checkResultSchema),
    }),
  ),
  kitIssues: list(issueSchema),
});

const bladeSchema: Schema<BladeReport> = v.object({
  blade: v.string(),
  step: v.number(),
  standing: at,
  uneven: v.number(),
  edge: list(
    v.object({
      u: v.number(),
      left: v.number(),
      right: v.number(),
      thickness: v.number(),
      standing: v.number(),
      steers: v.boolean(),
    }),
  ),
  lines: list(
    v.object({
      side,
      worst: at,
      places: list(
        v.object({
          u: v.number(),
          height: v.number(),
          bevelHeight: v.number(),
          wanted: v.number(),
          deviation: v.number(),
          steers: v.boolean(),
        }),
      ),
    }),
  ),
  model: list(v.object({ side, worst: v.nullable(modelPlace), places: list(modelPlace) })),
  passes: list(
    v.object({ setting: v.string(), side, volume: v.number(), missed: list(v.number()) }),
  ),
  certainty: certaintySchema,
  assumptions: list(v.string()),
  advice: v.nullable(
    v.object({ sentence: v.string(), planned: candidate, candidates: list(candidate) }),
  ),
  turnedStep: v.nullable(v.string()),
  cure: v.nullable(cureSchema),
  cureIssues: list(issueSchema),
});

/** What `grind` answers, as published by `jig schema grind`. */
export const grindSchema: Schema<GrindReport> = v.object({
  format: v.literal('platenwright-grind'),
  design: v.string(),
  family: v.string(),
  blades: list(bladeSchema),
});
