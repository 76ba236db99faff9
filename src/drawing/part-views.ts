import { plain } from '../core/units.ts';
import { boundingBox, unionBox, type Box2 } from '../geometry/loop-measure.ts';
import { circle, type Loop } from '../geometry/loop.ts';
import { mapProfile, translated } from '../geometry/loop-transform.ts';
import { sub2, type Vec2 } from '../geometry/vector.ts';
import type { CrossHole, Hole, Layer, Part } from '../model/part.ts';
import { text } from '../text/index.ts';
import { centreLines, datumMark, threadItem } from './centre-lines.ts';
import { acrossFlats, contourPoints, isListed, roundOf } from './corners.ts';
import { drilledLines } from './cross-holes.ts';
import { dimensionText } from './dimension.ts';
import { edgeItem } from './edges.ts';
import { elevation, turnedLeft } from './elevation.ts';
import { dimensioned, type Face } from './face.ts';
import type { Feature } from './labels.ts';
import { shapeOf } from './hole-rows.ts';
import { bounds, circleItem, label, line, move, TEXT } from './items.ts';
import { planItems } from './plan.ts';
import { factor, SCALES, scaleText, type Scale } from './scales.ts';
import type { Item } from './sheet.ts';

/** Parallel lines are not drawn nearer to each other (0.7 mm by ISO 128), mm on the paper. */
const CLOSE = 0.8;

/** White space between two views, mm. */
const BETWEEN = 10;

/** The box around a contour; a rim is as large as it was before it was notched. */
const boxOf = (loop: Loop): Box2 => {
  const round = roundOf(loop);
  return boundingBox(round ? circle(round.centre, round.radius) : loop);
};

/** Part coordinates of the datum: lower left corner of the box around everything, at the foot. */
export const datumOf = (
  part: Part,
): { readonly at: Vec2; readonly foot: number; readonly box: Box2 } => {
  const box = unionBox(part.layers.map(({ profile }) => boxOf(profile.outer)));
  return { at: box.min, foot: Math.min(...part.layers.map((l) => l.from)), box };
};

/** The layers with the datum at the origin. */
const fromDatum = (part: Part): Layer[] => {
  const { at, foot } = datumOf(part);
  return part.layers.map((layer) => ({
    profile: mapProfile(layer.profile, (loop) => translated(loop, [-at[0], -at[1]])),
    from: layer.from - foot,
    to: layer.to - foot,
  }));
};

const holesOf = (part: Part): readonly Hole[] => (part.kind === 'hardware' ? [] : part.holes);

export const crossHolesOf = (part: Part): readonly CrossHole[] =>
  part.kind === 'stock' ? part.crossHoles : [];

const halfSize = (loop: Loop): Vec2 => {
  const { min, max } = boundingBox(loop);
  return [(max[0] - min[0]) / 2, (max[1] - min[1]) / 2];
};

const holeFeatures = (hole: Hole, origin: Vec2): Feature[] => {
  const loop = translated(hole.loop, [-origin[0], -origin[1]]);
  const named: Feature = { at: sub2(hole.at, origin), half: halfSize(loop), id: hole.id };
  const corners = shapeOf(loop).kind === 'contour' ? contourPoints(loop).points : [];
  return [named, ...corners.map((at): Feature => ({ at, half: [0, 0] }))];
};

/** Hexagons are located by their middles and told across their flats, those alike once. */
const hexagonFeatures = (loops: readonly Loop[]): Feature[] => {
  const found = loops.flatMap((loop) => {
    const width = acrossFlats(loop);
    return width === undefined ? [] : [{ loop, width: dimensionText(width) }];
  });
  return found.map(({ loop, width }, i): Feature => {
    const { min, max } = boundingBox(loop);
    const at: Vec2 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
    const alike = found.flatMap((other, n) => (other.width === width ? [n] : []));
    const id = text.drawing.acrossFlats(width, alike.length);
    return { at, half: halfSize(loop), ...(alike[0] === i ? { id } : {}) };
  });
};

/** Contours of the layers that are nobody's hole: outlines, windows, pockets. */
const freeContours = (layers: readonly Layer[], holes: readonly Loop[]): Loop[] => {
  const known = new Set(holes.map((loop) => JSON.stringify(keyOf(loop))));
  const loops = layers.flatMap(({ profile }) => [
    profile.outer,
    ...profile.holes.filter((hole) => !known.has(JSON.stringify(keyOf(hole)))),
  ]);
  return loops.filter((loop, i) => {
    const key = JSON.stringify(keyOf(loop));
    return loops.findIndex((other) => JSON.stringify(keyOf(other)) === key) === i;
  });
};

/** Box and kind of a contour: enough to know it again when it is run the other way round. */
const keyOf = (loop: Loop): unknown => {
  const { min, max } = boundingBox(loop);
  const size = loop.kind === 'path' ? loop.vertices.length : 0;
  return [...min, ...max].map((v) => v.toFixed(4)).concat(String(size));
};

/** Layers thinner than this, mm, are slices of something rounded where there are many. */
const SLICE = 0.5;
const MANY_SLICES = 5;

/** The layers whose own edges are drawn and dimensioned: what is rounded is told in a note. */
const withoutSlices = (layers: readonly Layer[]): readonly Layer[] => {
  const thick = layers.filter(({ from, to }) => to - from >= SLICE);
  return thick.length > 0 && layers.length - thick.length >= MANY_SLICES ? thick : layers;
};

/** The view from above with its dimensions; the datum is at the origin. */
export const planFace = (part: Part, k: number): Face => {
  const { at: origin, box } = datumOf(part);
  const layers = withoutSlices(fromDatum(part));
  const holes = holesOf(part);
  const size = sub2(box.max, box.min);
  const toDatum = (loop: Loop): Loop => translated(loop, [-origin[0], -origin[1]]);
  const contours = freeContours(
    layers,
    holes.map((hole) => toDatum(hole.loop)),
  );
  const points = contours
    .filter((loop) => acrossFlats(loop) === undefined)
    .map(contourPoints)
    .filter((contour) => !isListed(contour));
  const contourHoles = holes
    .map((hole) => toDatum(hole.loop))
    .filter((loop) => shapeOf(loop).kind === 'contour')
    .map(contourPoints);
  const isRound = contours[0] !== undefined && roundOf(contours[0]) !== undefined;
  const corners = points.flatMap((p) => p.points);
  const overall = (axis: 0 | 1): string => {
    const value = dimensionText(size[axis]);
    // An extent that no corner has follows from the others: auxiliary, in parentheses (ISO 129-1).
    return corners.some((p) => dimensionText(p[axis]) === value)
      ? value
      : `(${plain(size[axis], 2)})`;
  };
  return {
    items: [
      ...planItems(layers, k),
      ...crossHolesOf(part).flatMap((hole) => crossLines(part, hole, origin, k)),
      ...holes.flatMap((hole) => centreLines(toDatum(hole.loop), k)),
      ...contours.flatMap((loop) => (loop.kind === 'circle' ? centreLines(loop, k) : [])),
      ...holes.flatMap((hole) =>
        hole.thread === undefined ? [] : threadItem(sub2(hole.at, origin), hole.thread, k),
      ),
      ...datumMark([0, 0]),
    ],
    size,
    k,
    features: [
      { at: [0, 0], half: [0, 0] },
      ...points.flatMap((p) => p.points.map((at): Feature => ({ at, half: [0, 0] }))),
      ...points.flatMap((p) =>
        p.circle
          ? [{ at: p.circle.centre, half: [p.circle.radius, p.circle.radius] } satisfies Feature]
          : [],
      ),
      ...holes.flatMap((hole) => holeFeatures(hole, origin)),
      ...hexagonFeatures(contours),
    ],
    arcs: [...points, ...contourHoles].flatMap((p) => p.arcs.map(({ arc }) => arc)),
    overall: isRound
      ? { x: text.drawing.diameter(dimensionText(size[0])) }
      : { x: overall(0), y: overall(1) },
  };
};

/** Hidden edges of a cross hole seen from above: it enters at the front or at the left. */
const crossLines = (part: Part, hole: CrossHole, origin: Vec2, k: number): Item[] => {
  const across = hole.face === 'y' ? 0 : 1;
  const middle = (hole.at[0] - origin[across]) * k;
  return drilledLines(part, hole, origin, k, (along, into) =>
    across === 0 ? [middle + along, into] : [into, middle + along],
  );
};

/** The levels at which a stack changes, to be measured from its foot. */
const levelsOf = (layers: readonly Layer[]): Feature[] =>
  layers.flatMap((l) => [l.from, l.to].map((z): Feature => ({ at: [0, z], half: [0, 0] })));

/** Centre lines of the upright holes in an elevation, once for each place. */
const axes = (layers: readonly Layer[], k: number): Item[] => {
  const lines = new Map<string, Item>();
  const top = Math.max(...layers.map((l) => l.to));
  for (const loop of layers.flatMap((l) => l.profile.holes)) {
    const { min, max } = boundingBox(loop);
    const x = ((min[0] + max[0]) / 2) * k;
    lines.set(x.toFixed(3), line([x, -2], [x, top * k + 2], 'centre'));
  }
  return [...lines.values()];
};

/** The view from the front or from the left with the cross holes drilled into that face. */
const sideFace = (part: Part, side: CrossHole['face'], k: number): Face => {
  const { at: origin, foot, box } = datumOf(part);
  const layers = fromDatum(part);
  const turned = side === 'y' ? layers : turnedLeft(layers);
  const { visible, hidden } = elevation(turned, CLOSE / k);
  const holes = crossHolesOf(part).filter((hole) => hole.face === side);
  const others = crossHolesOf(part).filter((hole) => hole.face !== side);
  const size = sub2(box.max, box.min);
  const height = Math.max(...layers.map((l) => l.to));
  const width = side === 'y' ? size[0] : -size[1];
  const spot = (hole: CrossHole): Vec2 =>
    side === 'y'
      ? [hole.at[0] - origin[0], hole.at[1] - foot]
      : [origin[1] - hole.at[0], hole.at[1] - foot];
  // Seen along its side: from the left edge of the front view, or from the right of the left view.
  const sign = side === 'y' ? 1 : -1;
  const behind = others.flatMap((hole) =>
    drilledLines(part, hole, origin, k, (along, into) => [
      sign * into,
      (hole.at[1] - foot) * k + along,
    ]),
  );
  return {
    items: [
      ...hidden.map((edge) => edgeItem(edge, k, 'hidden')),
      ...behind,
      ...visible.map((edge) => edgeItem(edge, k, 'visible')),
      ...axes(turned, k),
      ...holes.flatMap((hole) => {
        const at = spot(hole);
        return [
          circleItem([at[0] * k, at[1] * k], (hole.size / 2) * k, 'visible'),
          ...centreLines({ kind: 'circle', centre: at, radius: hole.size / 2 }, k),
          ...(hole.thread === undefined ? [] : threadItem(at, hole.thread, k)),
        ];
      }),
    ],
    size: [width, height],
    k,
    features: [
      ...(side === 'y' ? levelsOf(withoutSlices(turned)) : []),
      { at: [0, 0], half: [0, 0] },
      ...holes.map((hole): Feature => ({
        at: spot(hole),
        half: [hole.size / 2, hole.size / 2],
        id: hole.id,
      })),
    ],
    arcs: [],
    overall: side === 'y' ? { y: dimensionText(height) } : {},
  };
};

const needsLeft = (part: Part): boolean =>
  new Set(part.layers.map((l) => JSON.stringify(l.profile.outer))).size > 1 ||
  crossHolesOf(part).some((hole) => hole.face === 'x');

/** A bar's profile smaller than this on the paper is drawn again larger, up to that, mm. */
const SMALL = 20;
const LARGE = 75;
/** Letter of a detail: from the end of the alphabet, as cutting planes have those of its start. */
const DETAIL = 'Z';

/** The scale at which a small profile is shown beside the views; undefined where it is large. */
const detailScale = (part: Part, k: number): Scale | undefined => {
  if (part.kind !== 'stock' || part.layers.some((l) => l.profile.outer.kind === 'circle'))
    return undefined;
  const { box } = datumOf(part);
  const size = Math.max(...sub2(box.max, box.min));
  return size * k >= SMALL
    ? undefined
    : SCALES.find((s) => factor(s) >= 2 * k && factor(s) * size <= LARGE);
};

/** A thin circle around what is shown larger elsewhere, with its letter (ISO 128-3). */
const encircled = (items: readonly Item[]): Item[] => {
  const { x0, x1, y0, y1 } = bounds(items);
  const at: Vec2 = [(x0 + x1) / 2, (y0 + y1) / 2];
  const radius = Math.hypot(x1 - x0, y1 - y0) / 2 + 1;
  return [
    circleItem(at, radius, 'dimension'),
    label([at[0] + radius * 0.75 + 1.5, at[1] + radius * 0.75 + 1], DETAIL, {
      height: TEXT.heading,
    }),
  ];
};

/**
 * The views of a part in first-angle projection: front, below it the view from above (which
 * carries the datum), right of it the view from the left where it tells anything new. The small
 * profile of a bar is dimensioned in an enlarged detail beside them.
 */
export const partViews = (part: Part, k: number): Item[] => {
  const detail = detailScale(part, k);
  if (!detail) return viewsAround(part, k, dimensioned(planFace(part, k)));
  const { items } = planFace(part, k);
  const views = viewsAround(part, k, [...items, ...encircled(items)]);
  const large = dimensioned(planFace(part, factor(detail)));
  const box = bounds(large);
  const title = label([box.x0, box.y1 + 5], text.drawing.detail(DETAIL, scaleText(detail)), {
    height: TEXT.heading,
  });
  const right = bounds(views).x1 - box.x0 + 2 * BETWEEN;
  return [...views, ...move([...large, title], [right, bounds(items).y0 - box.y0])];
};

/** The plan with the other views around it. */
const viewsAround = (part: Part, k: number, plan: readonly Item[]): Item[] => {
  const front = dimensioned(sideFace(part, 'y', k));
  const up = bounds(plan).y1 - bounds(front).y0 + BETWEEN;
  const raised = move(front, [0, up]);
  if (!needsLeft(part)) return [...plan, ...raised];
  const left = dimensioned(sideFace(part, 'x', k));
  const right = bounds(raised).x1 - bounds(left).x0 + BETWEEN;
  return [...plan, ...raised, ...move(left, [right, up])];
};
