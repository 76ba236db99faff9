import {
  clearanceHole,
  countersink,
  materialOf,
  polygon,
  rectangle,
  text,
  type CrossHole,
  type Loop,
  type StockPart,
  type Vec2,
} from '../../../src/family/index.ts';
import type { EdgeContext } from '../context.ts';
import { LIP } from '../sizes.ts';

const words = text.family.edgeRest.parts;

/** A piece whose profile lies in y (from its front) and z, sawn to a length along the stroke. */
const length = (
  id: string,
  spec: {
    readonly name: string;
    readonly quantity: number;
    readonly material: string;
    readonly finish: string;
    readonly section: string;
    readonly outline: Loop;
    readonly length: number;
    readonly holes: readonly CrossHole[];
    readonly notes: readonly string[];
  },
): StockPart => ({
  kind: 'stock',
  id,
  name: spec.name,
  quantity: spec.quantity,
  material: spec.material,
  density: materialOf('steel').density,
  finish: spec.finish,
  section: spec.section,
  layers: [{ profile: { outer: spec.outline, holes: [] }, from: 0, to: spec.length }],
  holes: [],
  crossHoles: spec.holes,
  notes: spec.notes,
  tight: [],
});

/** Passages of the lip screws in a piece from x = `from` on, `front` behind its front edge. */
const passages = (
  { x }: EdgeContext,
  from: number,
  to: number,
  front: number,
  purpose: string,
): CrossHole[] => {
  const { diameter, standard } = clearanceHole(LIP.thread, 'normal');
  return x.screws
    .filter((at) => at > from && at < to)
    .map((at, i) => ({
      id: `screw-${String(i + 1)}`,
      face: 'y' as const,
      at: [front, at - from] as Vec2,
      size: diameter,
      depth: 'through' as const,
      purpose: `${purpose} (${standard})`,
    }));
};

/** Strip or pads: sheet folded to a leg under the wear strip and an upstand, the lip. */
const folded = (c: EdgeContext, id: 'lip-strip' | 'lip-pad', from: number, to: number) => {
  const { lipThickness: t, lipHeight, wear } = c.v;
  const [leg, tall] = [t + LIP.depth, t + wear + lipHeight];
  const strip = id === 'lip-strip';
  return length(id, {
    name: strip ? words.names.strip : words.names.pad,
    quantity: strip ? 1 : 2,
    material: words.lipMaterial,
    finish: words.finish.lip,
    section: words.lipSection(t, leg, tall),
    outline: polygon([
      [0, 0],
      [leg, 0],
      [leg, t],
      [t, t],
      [t, tall],
      [0, tall],
    ]),
    length: to - from,
    holes: passages(c, from, to, t + LIP.screw, words.purpose.lipPassage),
    notes: [words.notes.fold(t), words.notes.lipFace(lipHeight)],
  });
};

/** The lip, strip or pads, with the packing that fills the rest of the seat's length. */
export const lipParts = (c: EdgeContext): StockPart[] => {
  const { half, lipEnd, pads } = c.x;
  const t = c.v.lipThickness;
  const [from, to] = pads ? [-lipEnd, lipEnd] : [lipEnd, half];
  return [
    pads ? folded(c, 'lip-pad', lipEnd, half) : folded(c, 'lip-strip', -lipEnd, lipEnd),
    length('lip-packing', {
      name: words.names.packing,
      quantity: pads ? 1 : 2,
      material: words.lipMaterial,
      finish: words.finish.packing,
      section: words.packingSection(t, LIP.depth),
      outline: rectangle([0, 0], [LIP.depth, t]),
      length: to - from,
      holes: passages(c, from, to, LIP.screw, words.purpose.lipPassage),
      notes: [words.notes.packing],
    }),
  ];
};

/** The wear strip: its top is the seat. */
export const wearStrip = (c: EdgeContext): StockPart => {
  const { wear } = c.v;
  const { half } = c.x;
  const head = countersink(LIP.thread).diameter;
  return length('wear-strip', {
    name: words.names.wear,
    quantity: 1,
    material: materialOf('steel').name,
    finish: words.finish.wear,
    section: words.wearSection(wear, LIP.depth),
    outline: rectangle([0, 0], [LIP.depth, wear]),
    length: 2 * half,
    holes: passages(c, -half, half, LIP.screw, words.purpose.wearPassage(head)),
    notes: [words.notes.wear, words.notes.ends],
  });
};
