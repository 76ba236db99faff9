import { tan } from '../core/trigonometry.ts';
import { angleOf, anticlockwise, onCircle } from '../geometry/arc.ts';
import { crossings } from '../geometry/intersect.ts';
import type { Loop, Profile } from '../geometry/loop.ts';
import { containsPoint, distanceToLoop } from '../geometry/loop-measure.ts';
import { arcOfSegment, isStraight, segments, type Segment } from '../geometry/segment.ts';
import { distance2, scale2, type Vec2 } from '../geometry/vector.ts';
import { line } from './items.ts';
import type { Item, Stroke } from './sheet.ts';

/** What is seen along an axis: edges in view coordinates, mm of the real thing. */
export interface ViewEdges {
  readonly visible: readonly Segment[];
  readonly hidden: readonly Segment[];
}

/** Edges nearer than this are one, mm. */
export const SAME = 1e-5;

/** Position of a point along an edge: distance from the start, or degrees turned for an arc. */
const along = (segment: Segment, p: Vec2): number => {
  if (isStraight(segment)) return distance2(segment.a, p);
  const arc = arcOfSegment(segment);
  const turned = angleOf([p[0] - arc.centre[0], p[1] - arc.centre[1]]) - arc.start;
  const forward = arc.sweep > 0 ? turned : -turned;
  const wrapped = ((forward % 360) + 360) % 360;
  return wrapped > 360 - 1e-7 ? 0 : wrapped;
};

/** The part of an edge between two positions along it. */
const part = (segment: Segment, from: number, to: number): Segment => {
  if (isStraight(segment)) {
    const length = distance2(segment.a, segment.b);
    const at = (t: number): Vec2 => [
      segment.a[0] + ((segment.b[0] - segment.a[0]) * t) / length,
      segment.a[1] + ((segment.b[1] - segment.a[1]) * t) / length,
    ];
    return { a: at(from), b: at(to), bulge: 0 };
  }
  const arc = arcOfSegment(segment);
  const sign = Math.sign(arc.sweep);
  const at = (turn: number): Vec2 => onCircle(arc.centre, arc.radius, arc.start + sign * turn);
  return { a: at(from), b: at(to), bulge: sign * tan(((to - from) * Math.PI) / 720) };
};

export const middleOf = (segment: Segment): Vec2 => {
  if (isStraight(segment))
    return scale2([segment.a[0] + segment.b[0], segment.a[1] + segment.b[1]], 0.5);
  const arc = arcOfSegment(segment);
  return onCircle(arc.centre, arc.radius, arc.start + arc.sweep / 2);
};

const extent = (segment: Segment): number =>
  isStraight(segment) ? distance2(segment.a, segment.b) : Math.abs(arcOfSegment(segment).sweep);

/** The edge cut wherever it meets one of the contours. */
export const cutAt = (segment: Segment, contours: readonly Loop[]): Segment[] => {
  const end = extent(segment);
  const cuts = contours
    .flatMap((loop) => segments(loop).flatMap((other) => crossings(segment, other)))
    .map((p) => along(segment, p))
    .filter((t) => t > 1e-6 && t < end - 1e-6)
    .sort((p, q) => p - q)
    .filter((t, i, all) => i === 0 || t - (all[i - 1] ?? 0) > 1e-6);
  if (cuts.length === 0) return [segment];
  const limits = [0, ...cuts, end];
  return limits.slice(1).map((to, i) => part(segment, limits[i] ?? 0, to));
};

export const loopsOf = (profile: Profile): Loop[] => [profile.outer, ...profile.holes];

/** Whether material of the region lies over a point; its contours do not count. */
export const covers = (profile: Profile, p: Vec2): boolean =>
  containsPoint(profile.outer, p) && !profile.holes.some((hole) => containsPoint(hole, p));

export const touches = (profile: Profile, p: Vec2): boolean =>
  loopsOf(profile).some((loop) => distanceToLoop(p, loop) < SAME);

/** An edge on the paper, `k` times as large as real. */
export const edgeItem = (segment: Segment, k: number, stroke: Stroke): Item => {
  const a = scale2(segment.a, k);
  const b = scale2(segment.b, k);
  if (isStraight(segment)) return line(a, b, stroke);
  const arc = arcOfSegment({ a, b, bulge: segment.bulge });
  const { start, end } = anticlockwise(arc);
  return { kind: 'arc', centre: arc.centre, radius: arc.radius, from: start, to: end, stroke };
};

/** A contour on the paper: a whole circle stays one. */
export const loopItems = (loop: Loop, k: number, stroke: Stroke): Item[] =>
  loop.kind === 'circle'
    ? [{ kind: 'circle', centre: scale2(loop.centre, k), radius: loop.radius * k, stroke }]
    : segments(loop).map((segment) => edgeItem(segment, k, stroke));
