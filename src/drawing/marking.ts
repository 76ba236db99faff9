import { circle } from '../geometry/loop.ts';
import { boundingBox } from '../geometry/loop-measure.ts';
import { translated } from '../geometry/loop-transform.ts';
import { add2, type Vec2 } from '../geometry/vector.ts';
import type { CrossHole, Hole, PlatePart, StockPart } from '../model/part.ts';
import { text } from '../text/index.ts';
import { centreLines, datumMark } from './centre-lines.ts';
import { dimensionText } from './dimension.ts';
import { loopItems } from './edges.ts';
import type { Feature } from './labels.ts';
import { shapeOf } from './hole-rows.ts';
import { bounds, circleItem, frameItem, label, line, move, TEXT } from './items.ts';
import { datumOf } from './part-views.ts';
import type { Item } from './sheet.ts';

/** Lines of a template and the holes that get a name beside them. */
export interface Marked {
  readonly items: readonly Item[];
  readonly features: readonly Feature[];
}

const drillText = (hole: Pick<Hole, 'id' | 'size' | 'thread'>): string => {
  const t = text.drawing.template;
  const size = dimensionText(hole.size);
  if (hole.thread !== undefined) return t.tapped(hole.id, size, hole.thread);
  return t.drilled(hole.id, size);
};

export const heightOfPart = (part: PlatePart | StockPart): number =>
  Math.max(...part.layers.map((l) => l.to)) - datumOf(part).foot;

/** A centre-punch mark: a small circle on the crossing of the centre lines. */
const punch = (at: Vec2): Item => circleItem(at, 0.6, 'visible');

/** The layers from above at full size: saw lines, holes with punch marks. */
const fromAbove = (part: PlatePart | StockPart): Marked => {
  const { at } = datumOf(part);
  const toDatum: Vec2 = [-at[0], -at[1]];
  const contours = part.layers.flatMap(({ profile }) =>
    [profile.outer, ...profile.holes].flatMap((loop) =>
      loopItems(translated(loop, toDatum), 1, 'cut'),
    ),
  );
  const marks = part.holes.flatMap((hole) => {
    const loop = translated(hole.loop, toDatum);
    const shape = shapeOf(loop);
    const points = shape.kind === 'slot' ? shape.ends : [add2(hole.at, toDatum)];
    return [...centreLines(loop, 1), ...points.map(punch)];
  });
  return {
    items: [...contours, ...marks, ...datumMark([0, 0])],
    features: part.holes.map((hole) => {
      const { min, max } = boundingBox(hole.loop);
      const half: Vec2 = [(max[0] - min[0]) / 2, (max[1] - min[1]) / 2];
      return { at: add2(hole.at, toDatum), half, id: drillText(hole) };
    }),
  };
};

/** One face of a bar with the holes drilled into it, from the edge that front and left share. */
const faceOf = (part: StockPart, face: CrossHole['face']): Marked => {
  const { at, foot, box } = datumOf(part);
  const along = face === 'y' ? 0 : 1;
  const sign = face === 'y' ? 1 : -1;
  const length = sign * (box.max[along] - box.min[along]);
  const holes = part.crossHoles.filter((hole) => hole.face === face);
  const spot = (hole: CrossHole): Vec2 => [sign * (hole.at[0] - at[along]), hole.at[1] - foot];
  const outline = {
    x0: Math.min(0, length),
    y0: 0,
    x1: Math.max(0, length),
    y1: heightOfPart(part),
  };
  const marks = holes.flatMap((hole) => {
    const loop = circle(spot(hole), hole.size / 2);
    return [...loopItems(loop, 1, 'cut'), ...centreLines(loop, 1), punch(spot(hole))];
  });
  return {
    items: [frameItem(outline, 'cut'), ...marks],
    features: holes.map((hole) => {
      const half = hole.size / 2;
      return { at: spot(hole), half: [half, half], id: drillText(hole) };
    }),
  };
};

/** The edge along which the paper is folded over the bar. */
const foldLine = (height: number): Item[] => [
  line([0, -4], [0, height + 4], 'phantom'),
  label([0, height + 5.5], text.drawing.template.fold, { height: TEXT.small, align: 'centre' }),
];

/**
 * A bar unfolded: front and left face share the edge along which the paper is folded, so that one
 * wrap marks both; holes from above are marked on a picture of their own below.
 */
const unfolded = (part: StockPart): Marked => {
  const sides = (['x', 'y'] as const).filter((side) =>
    part.crossHoles.some((hole) => hole.face === side),
  );
  if (sides.length === 0) return fromAbove(part);
  const faces = sides.map((side) => faceOf(part, side));
  const items = [
    ...faces.flatMap((face) => face.items),
    ...(sides.length === 2 ? foldLine(heightOfPart(part)) : []),
    ...datumMark([0, 0]),
  ];
  const features = faces.flatMap((face) => face.features);
  if (part.holes.length === 0) return { items, features };
  const above = fromAbove(part);
  const up: Vec2 = [0, bounds(above.items).y1 - bounds(items).y0 + APART];
  return {
    items: [...above.items, ...move(items, up)],
    features: [...above.features, ...features.map((f) => ({ ...f, at: add2(f.at, up) }))],
  };
};

/** Room for names between the pictures of a bar, mm. */
const APART = 25;

/** A part as it is marked out: at full size, the datum at the origin. */
export const markedOut = (part: PlatePart | StockPart): Marked =>
  part.kind === 'stock' ? unfolded(part) : fromAbove(part);
