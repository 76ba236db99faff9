import * as v from 'valibot';
import type { NumberParameter } from '../../core/parameter.ts';
import {
  group,
  idField,
  kinds,
  listField,
  numberField,
  optionalChoice,
  optionalNumber,
  textField,
} from '../../schema/field.ts';
import { text } from '../../text/index.ts';
import { READINGS_FORMAT, READINGS_VERSION } from './format.ts';
import { readingsParameters as p } from './parameters.ts';

const words = text.setup.readings.parameters;

/** Most places on one test piece. */
const MOST_PLACES = 24;

/** A measured number and its standard uncertainty. */
const quantity = (of: NumberParameter) =>
  v.pipe(
    group({ value: numberField(of), uncertainty: numberField(p.uncertainty) }),
    v.title(of.label),
    v.description(of.meaning),
  );

const common = {
  format: v.literal(READINGS_FORMAT),
  schema: v.literal(READINGS_VERSION),
  setting: idField(words.setting),
  note: v.optional(textField(words.note, 0, 200), ''),
  scatter: optionalChoice(words.scatter, 'stated'),
  wished: v.exactOptional(numberField(p.wished)),
};

const flatSchema = group({
  kind: v.literal('flat'),
  ...common,
  piece: group({
    thickness: quantity(p.thickness),
    height: quantity(p.height),
    spineRadius: optionalNumber(p.spineRadius),
  }),
  edges: optionalChoice(words.edges, 'across'),
  places: listField(
    words.places,
    group({
      label: textField(words.label, 1, 40),
      edge: quantity(p.edge),
      bevelHeight: v.exactOptional(quantity(p.bevelHeight)),
      angle: v.exactOptional(quantity(p.angle)),
    }),
    1,
    MOST_PLACES,
  ),
});

const hollowSchema = group({
  kind: v.literal('hollow'),
  ...common,
  faceOffset: optionalNumber(p.faceOffset),
  places: listField(
    words.places,
    group({
      label: textField(words.label, 1, 40),
      depth: quantity(p.depth),
      lower: v.exactOptional(quantity(p.limit)),
      upper: v.exactOptional(quantity(p.limit)),
    }),
    1,
    MOST_PLACES,
  ),
});

/**
 * Readings of one test piece, ground at one setting: `flat` on a spine rest or a carriage,
 * `hollow` on an edge rest. mm and degrees; every number with its standard uncertainty. Ranges
 * only: `readingsIssues` holds the fields together.
 */
export const readingsSchema = kinds(words.kind, [flatSchema, hollowSchema]);

export type Readings = v.InferOutput<typeof readingsSchema>;
export type FlatReadings = v.InferOutput<typeof flatSchema>;
export type HollowReadings = v.InferOutput<typeof hollowSchema>;
