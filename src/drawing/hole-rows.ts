import { angleOf } from '../geometry/arc.ts';
import { distance2, scale2, add2, sub2, type Vec2 } from '../geometry/vector.ts';
import { isStraight, segments } from '../geometry/segment.ts';
import type { Loop } from '../geometry/loop.ts';
import type { Hole, Layer } from '../model/part.ts';
import { text } from '../text/index.ts';
import { contourPoints } from './corners.ts';
import { dimensionText } from './dimension.ts';

/** A hole as a shop makes it. */
export type HoleShape =
  | { readonly kind: 'round' }
  | {
      readonly kind: 'slot';
      /** Centres of the round ends. */
      readonly ends: readonly [Vec2, Vec2];
      readonly width: number;
      readonly angle: number;
    }
  | { readonly kind: 'rectangle'; readonly width: number; readonly height: number }
  | { readonly kind: 'contour' };

/** Angle of an undirected line, degrees from 0 up to 180. */
const undirected = (d: Vec2): number => {
  const angle = ((angleOf(d) % 180) + 180) % 180;
  return angle > 180 - 1e-6 ? 0 : angle;
};

/**
 * The shape of a hole's contour: a slot is two straight edges and two half circles, a rectangle
 * four straight edges along the axes; any other contour is dimensioned corner by corner.
 */
export const shapeOf = (loop: Loop): HoleShape => {
  if (loop.kind === 'circle') return { kind: 'round' };
  const edges = segments(loop);
  const straight = edges.filter(isStraight);
  const ends = edges.filter((e) => Math.abs(Math.abs(e.bulge) - 1) < 1e-6);
  if (edges.length === 4 && straight.length === 2 && ends.length === 2) {
    const [p, q] = ends.map((e) => scale2(add2(e.a, e.b), 0.5));
    const width = ends[0] ? distance2(ends[0].a, ends[0].b) : 0;
    if (p && q) return { kind: 'slot', ends: [p, q], width, angle: undirected(sub2(q, p)) };
  }
  const level = straight.filter((e) => Math.abs(e.a[1] - e.b[1]) < 1e-6);
  const upright = straight.filter((e) => Math.abs(e.a[0] - e.b[0]) < 1e-6);
  const [first] = level;
  const [second] = upright;
  if (edges.length === 4 && level.length === 2 && upright.length === 2 && first && second)
    return {
      kind: 'rectangle',
      width: distance2(first.a, first.b),
      height: distance2(second.a, second.b),
    };
  return { kind: 'contour' };
};

/** "Ø6.6", "6.6 × 20 slot at 90°", "12 × 8" or a reference to the dimensions in the view. */
export const sizeText = (hole: Hole): string => {
  const t = text.drawing.holes;
  const shape = shapeOf(hole.loop);
  if (hole.loop.kind === 'circle') return t.diameter(dimensionText(2 * hole.loop.radius));
  if (shape.kind === 'slot') {
    const [a, b] = shape.ends;
    const length = distance2(a, b) + shape.width;
    return t.slot(dimensionText(shape.width), dimensionText(length), dimensionText(shape.angle));
  }
  if (shape.kind === 'rectangle')
    return t.rectangle(dimensionText(shape.width), dimensionText(shape.height));
  return t.contour(dimensionText(hole.size));
};

const has = (layer: Layer, loop: Loop): boolean =>
  layer.profile.holes.some((other) =>
    loop.kind === 'circle'
      ? other.kind === 'circle' &&
        distance2(other.centre, loop.centre) < 1e-6 &&
        Math.abs(other.radius - loop.radius) < 1e-6
      : JSON.stringify(contourPoints(other).points.map(rounded).sort()) ===
        JSON.stringify(contourPoints(loop).points.map(rounded).sort()),
  );

const rounded = ([x, y]: Vec2): string => `${x.toFixed(4)} ${y.toFixed(4)}`;

/** "through", or the levels between which the hole runs; with its thread when it is tapped. */
export const depthText = (hole: Hole, layers: readonly Layer[]): string => {
  const t = text.drawing.holes;
  const cut = layers.filter((layer) => has(layer, hole.loop));
  const from = Math.min(...cut.map((layer) => layer.from));
  const to = Math.max(...cut.map((layer) => layer.to));
  const bottom = Math.min(...layers.map((layer) => layer.from));
  const top = Math.max(...layers.map((layer) => layer.to));
  const isThrough = from <= bottom && to >= top;
  const levels = cut.length === 0 ? t.seeView : t.levels(dimensionText(from), dimensionText(to));
  const depth = isThrough ? t.through : levels;
  return hole.thread === undefined ? depth : t.tapped(hole.thread, depth);
};
