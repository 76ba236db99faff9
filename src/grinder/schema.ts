import * as v from 'valibot';
import {
  choiceField,
  group,
  idField,
  kinds,
  listField,
  numberField,
  optionalCount,
  optionalNumber,
  pairField,
  textField,
  tripleField,
} from '../schema/field.ts';
import { text } from '../text/index.ts';
import { grinderParameters as p } from './parameters.ts';

const words = text.grinder.parameters;

/** Marks a grinder file and its version; see `src/document/migrations.ts`. */
export const GRINDER_FORMAT = 'platenwright-grinder';
export const GRINDER_VERSION = 1;

const beltSchema = group({
  width: numberField(p.belt.width),
  length: numberField(p.belt.length),
  tracking: optionalNumber(p.belt.tracking),
  flutter: optionalNumber(p.belt.flutter),
  splice: optionalNumber(p.belt.splice),
  direction: choiceField(words.belt.direction),
});

const abrasiveSchema = group({
  id: idField(words.id),
  grit: optionalCount(p.belts.grit),
  thickness: numberField(p.belts.thickness),
  purpose: v.optional(textField(words.purpose, 0, 80), ''),
});

const soft = (kind: 'leather' | 'rubber') =>
  group({
    kind: v.literal(kind),
    id: idField(words.id),
    thickness: numberField(p.backings.thickness),
  });

const backingSchema = kinds({ ...words.backings, kinds: words.backings.kind.options }, [
  group({
    kind: v.literal('none'),
    id: idField(words.id),
    thickness: optionalNumber(p.backings.thickness),
  }),
  soft('leather'),
  soft('rubber'),
  group({
    kind: v.literal('radius'),
    id: idField(words.id),
    thickness: numberField(p.backings.thickness),
    radius: numberField(p.backings.radius),
  }),
]);

const platenFields = {
  width: numberField(p.platen.width),
  bottom: numberField(p.platen.bottom),
  top: numberField(p.platen.top),
  edgeRadius: optionalNumber(p.platen.edgeRadius),
  liner: optionalNumber(p.platen.liner),
};

const platenSchema = kinds(words.platen, [
  group({ kind: v.literal('flat'), ...platenFields }),
  group({
    kind: v.literal('radius'),
    radius: numberField(p.platen.radius),
    ...platenFields,
  }),
  group({ kind: v.literal('none') }),
]);

const wheelSchema = group({
  id: idField(words.id),
  role: choiceField(words.wheels.role),
  diameter: numberField(p.wheels.diameter),
  width: numberField(p.wheels.width),
  centre: pairField(words.wheels.centre, p.wheels.y, p.wheels.z),
  surface: choiceField(words.wheels.surface),
});

const slotSchema = group({
  at: numberField(p.rest.slotAt),
  from: numberField(p.rest.slotFrom),
  to: numberField(p.rest.slotTo),
  width: numberField(p.rest.slotWidth),
});

const patternSchema = kinds(words.rest.pattern, [
  group({
    kind: v.literal('slots'),
    axis: choiceField(words.rest.axis),
    slots: listField(words.rest.slots, slotSchema, 1, 12),
  }),
  group({
    kind: v.literal('holes'),
    at: listField(words.rest.holes, pairField(words.rest.holes, p.rest.holeX, p.rest.holeY), 2, 60),
    hole: kinds(words.rest.hole, [
      group({ kind: v.literal('tapped'), thread: choiceField(words.rest.thread) }),
      group({ kind: v.literal('plain'), diameter: numberField(p.rest.holeDiameter) }),
    ]),
  }),
  group({ kind: v.literal('edges') }),
]);

const travel = {
  travelY: optionalNumber(p.rest.travelY),
  travelZ: optionalNumber(p.rest.travelZ),
};

const restSchema = kinds(words.rest, [
  group({
    kind: v.literal('table'),
    width: numberField(p.rest.width),
    depth: numberField(p.rest.depth),
    thickness: numberField(p.rest.thickness),
    gap: numberField(p.rest.gap),
    pattern: patternSchema,
    ...travel,
  }),
  group({
    kind: v.literal('arm'),
    width: numberField(p.rest.armWidth),
    height: numberField(p.rest.armHeight),
    reach: numberField(p.rest.armReach),
    slots: v.optional(listField(words.rest.slots, slotSchema, 0, 4), []),
    ...travel,
  }),
]);

const corner = (of: typeof words.keepOuts.min | typeof words.keepOuts.max) =>
  tripleField(of, p.keepOuts.coordinate);

/**
 * A belt grinder, as it stands in its own file or inside a design. Frame: x along the stroke (0
 * at the belt's centreline), y from the bare platen's face towards the maker, z up from the top
 * of the rest. Platen and wheels are stated as they stand at no lean; `lean` then turns them
 * about the line where the bare face meets the plane of the rest. The slots of a tool arm run
 * along y. Ranges only: `src/grinder/rules.ts` holds the fields together.
 */
export const grinderSchema = group({
  format: v.literal(GRINDER_FORMAT),
  schema: v.literal(GRINDER_VERSION),
  name: textField(words.name, 1, 60),
  belt: beltSchema,
  belts: listField(words.belts, abrasiveSchema, 1, 24),
  backings: listField(words.backings, backingSchema, 1, 12),
  platen: platenSchema,
  wheels: listField(words.wheels, wheelSchema, 1, 8),
  rest: restSchema,
  lean: optionalNumber(p.lean),
  keepOuts: v.optional(
    listField(
      words.keepOuts,
      group({
        name: textField(words.keepOuts.name, 1, 60),
        min: corner(words.keepOuts.min),
        max: corner(words.keepOuts.max),
        // Left out it stays, as every box did before it could lean.
        goes: v.optional(choiceField(words.keepOuts.goes)),
      }),
      0,
      24,
    ),
    [],
  ),
  drive: group({
    shaftSpeed: numberField(p.drive.shaftSpeed),
    pulleyDiameter: numberField(p.drive.pulleyDiameter),
    beltRating: optionalNumber(p.drive.beltRating),
    wheelRating: optionalNumber(p.drive.wheelRating),
  }),
});

export type Grinder = v.InferOutput<typeof grinderSchema>;
/** One abrasive belt. */
export type Abrasive = Grinder['belts'][number];
export type Backing = Grinder['backings'][number];
export type Platen = Grinder['platen'];
export type Wheel = Grinder['wheels'][number];
export type Rest = Grinder['rest'];
export type KeepOut = Grinder['keepOuts'][number];
