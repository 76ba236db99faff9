import * as v from 'valibot';
import { bladeSchema } from '../blade/schema.ts';
import type { Parameter } from '../core/parameter.ts';
import { grinderSchema } from '../grinder/schema.ts';
import {
  choiceField,
  group,
  idField,
  listField,
  numberField,
  optionalChoice,
  optionalCount,
  optionalNumber,
  recordField,
  textField,
} from '../schema/field.ts';
import { text } from '../text/index.ts';
import { designParameters as p } from './parameters.ts';

const words = text.document.parameters;

/** Marks a design file and its version; see `migrations.ts`. */
export const DESIGN_FORMAT = 'platenwright-design';
export const DESIGN_VERSION = 1;

/** What the document has to know of the fixture families; the registry is passed in. */
export interface Families {
  readonly families: Readonly<
    Record<string, { readonly parameters: Readonly<Record<string, Parameter>> }>
  >;
}

/** Cut files of many parts on one sheet, beside those of the single parts. */
const nestSchema = v.optional(
  group({
    sheets: optionalChoice(words.making.nest.sheets, 'no'),
    width: optionalNumber(p.making.plates.nest.width),
    height: optionalNumber(p.making.plates.nest.height),
    gap: optionalNumber(p.making.plates.nest.gap),
    margin: optionalNumber(p.making.plates.nest.margin),
  }),
  {},
);

const platesSchema = group({
  process: choiceField(words.making.process),
  material: choiceField(words.making.material),
  thicknesses: listField(words.making.thicknesses, numberField(p.making.plates.thickness), 1, 10),
  kerf: optionalNumber(p.making.plates.kerf),
  inches: optionalChoice(words.making.inches, 'no'),
  nest: nestSchema,
});

const printsSchema = group({
  material: choiceField(words.making.filament),
  fit: optionalChoice(words.making.fit, 'clearance'),
  play: v.optional(
    group({
      clearance: optionalNumber(p.making.prints.play.clearance),
      close: optionalNumber(p.making.prints.play.close),
      press: optionalNumber(p.making.prints.play.press),
    }),
    {},
  ),
  nozzle: optionalNumber(p.making.prints.nozzle),
  layer: optionalNumber(p.making.prints.layer),
  bed: v.optional(
    group({
      width: optionalNumber(p.making.prints.bed.width),
      depth: optionalNumber(p.making.prints.bed.depth),
      height: optionalNumber(p.making.prints.bed.height),
    }),
    {},
  ),
});

const passSchema = group({
  belt: idField(words.sequence.belt),
  backing: idField(words.sequence.backing),
  edge: numberField(p.sequence.edge),
  steeper: optionalNumber(p.sequence.steeper),
  depthLeft: v.optional(numberField(p.sequence.depthLeft)),
});

/** What a test piece told of the fixture as built; absent until it was calibrated. */
export const calibrationSchema = v.exactOptional(
  group({
    offset: numberField(p.calibration.offset),
    uncertainty: optionalNumber(p.calibration.uncertainty),
    note: v.optional(textField(words.fixture.calibration.note, 0, 200), ''),
  }),
);

/**
 * A whole design: blades, grinder, fixture, making and sequence. Ranges only: `rules.ts` holds
 * the fields together, and the family's own table checks `fixture.parameters`.
 */
export const documentSchema = group({
  format: v.literal(DESIGN_FORMAT),
  schema: v.literal(DESIGN_VERSION),
  name: textField(words.name, 1, 80),
  notes: v.optional(textField(words.notes, 0, 2000, true), ''),
  revision: optionalCount(p.revision),
  blades: listField(words.blades, bladeSchema, 1, 12),
  grinder: grinderSchema,
  fixture: group({
    family: idField(words.fixture.family),
    parameters: recordField(words.fixture.parameters),
    calibration: calibrationSchema,
  }),
  making: group({
    units: optionalChoice(words.making.units, 'mm'),
    plates: platesSchema,
    prints: printsSchema,
  }),
  sequence: listField(words.sequence, passSchema, 1, 12),
});

export type Design = v.InferOutput<typeof documentSchema>;
export type Making = Design['making'];
/** One belt of the sequence. */
export type Pass = Design['sequence'][number];
