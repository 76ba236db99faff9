import * as v from 'valibot';
import {
  choiceField,
  group,
  kinds,
  listField,
  numberField,
  optionalCount,
  optionalNumber,
  pairField,
  textField,
} from '../schema/field.ts';
import { text } from '../text/index.ts';
import { bladeParameters as p } from './parameters.ts';

const words = text.blade.parameters;

/** The most points that describe a curve of the outline. */
export const MAX_POINTS = 400;

const points = (of: typeof words.outline.spine | typeof words.outline.edge) =>
  listField(of, pairField(of, p.outline.pointU, p.outline.pointV), 2, MAX_POINTS);

const outlineSchema = kinds(words.outline, [
  group({
    kind: v.literal('dimensions'),
    length: numberField(p.outline.length),
    heelHeight: numberField(p.outline.heelHeight),
    bellyStart: numberField(p.outline.bellyStart),
    bellyHeight: numberField(p.outline.bellyHeight),
    spineDropStart: numberField(p.outline.spineDropStart),
    tipDrop: numberField(p.outline.tipDrop),
    spineSagitta: optionalNumber(p.outline.spineSagitta),
  }),
  group({
    kind: v.literal('curves'),
    spine: points(words.outline.spine),
    edge: points(words.outline.edge),
  }),
]);

const bevelSchema = (of: typeof words.bevels.left | typeof words.bevels.right) =>
  kinds({ ...of, kinds: words.bevels.kinds }, [
    group({ kind: v.literal('height'), height: numberField(p.bevels.height) }),
    group({ kind: v.literal('angle'), angle: numberField(p.bevels.angle) }),
    group({ kind: v.literal('full') }),
    group({
      kind: v.literal('hollow'),
      depth: numberField(p.bevels.depth),
      centre: numberField(p.bevels.centre),
      /** The flat bevel it is ground into, as it comes; none: the flat of the stock. */
      angle: v.optional(numberField(p.bevels.angle)),
    }),
    group({ kind: v.literal('none') }),
  ]);

/** A blade as stated in a file; ranges only, `src/blade/rules.ts` holds the fields together. */
export const bladeSchema = group({
  name: textField(words.name, 1, 60),
  quantity: optionalCount(p.quantity),
  outline: outlineSchema,
  ricasso: optionalNumber(p.ricasso),
  tang: group({
    kind: choiceField(words.tang.kind),
    length: numberField(p.tang.length),
    height: numberField(p.tang.height),
    thickness: numberField(p.tang.thickness),
    drop: optionalNumber(p.tang.drop),
  }),
  thickness: listField(
    words.thickness,
    group({ u: numberField(p.thickness.u), t: numberField(p.thickness.t) }),
    1,
    12,
  ),
  spineRadius: optionalNumber(p.spineRadius),
  edge: group({
    asHeatTreated: numberField(p.edge.asHeatTreated),
    wanted: numberField(p.edge.wanted),
    shareLeft: optionalNumber(p.edge.shareLeft),
  }),
  bevels: group({ left: bevelSchema(words.bevels.left), right: bevelSchema(words.bevels.right) }),
  line: group({
    follow: choiceField(words.line.follow),
    allowed: optionalNumber(p.line.allowed),
  }),
});

/** One blade of the family to be ground; lengths in mm, angles in degrees. */
export type Blade = v.InferOutput<typeof bladeSchema>;
export type Outline = Blade['outline'];
/** What is ground on one side. */
export type Bevel = Blade['bevels']['left'];
/** Both sides, in the order they are listed everywhere. */
export const SIDES = ['left', 'right'] as const;
/** Seen from the tang with the edge down; left is the side of positive w. */
export type Side = (typeof SIDES)[number];
