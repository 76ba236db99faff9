import { angleOf, type Arc } from '../geometry/arc.ts';
import type { Loop } from '../geometry/loop.ts';
import { arcOfSegment, isStraight, segments, type Segment } from '../geometry/segment.ts';
import { add2, cross2, distance2, scale2, sub2, type Vec2 } from '../geometry/vector.ts';

/** A corner of a contour, as a row of a table of corners. */
export interface Corner {
  readonly at: Vec2;
  /** Radius that rounds the corner off. */
  readonly fillet?: number;
  /** Radius of the arc to the next corner, positive where it bulges out of the part. */
  readonly next?: number;
}

/** What has to be dimensioned so that a contour can be drawn again. */
export interface ContourPoints {
  /** Corners, and for fillets the corner their neighbours would make without them. */
  readonly points: readonly Vec2[];
  /** The same in order with what rounds each corner and what bends the edge after it. */
  readonly corners: readonly Corner[];
  /** Arcs that want a radius, and whether the arc rounds off a corner. */
  readonly arcs: readonly { readonly arc: Arc; readonly fillet: boolean }[];
  /** Centre and radius of a contour that is one circle. */
  readonly circle?: { readonly centre: Vec2; readonly radius: number };
}

const SMOOTH = 0.05;

const tangent = (segment: Segment, atEnd: boolean): number => {
  if (isStraight(segment)) return angleOf(sub2(segment.b, segment.a));
  const arc = arcOfSegment(segment);
  return arc.start + (atEnd ? arc.sweep : 0) + (arc.sweep > 0 ? 90 : -90);
};

const smooth = (one: number, other: number): boolean =>
  Math.abs(((((one - other) % 360) + 540) % 360) - 180) < SMOOTH;

/** The corner that an arc rounds off, if it runs smoothly from one straight edge into another. */
const roundedCorner = (before: Segment, arc: Segment, after: Segment): Vec2 | undefined => {
  if (!isStraight(before) || !isStraight(after)) return undefined;
  if (!smooth(tangent(before, true), tangent(arc, false))) return undefined;
  if (!smooth(tangent(arc, true), tangent(after, false))) return undefined;
  if (Math.abs(arcOfSegment(arc).sweep) > 170) return undefined;
  const u = sub2(before.b, before.a);
  const v = sub2(after.b, after.a);
  return add2(arc.a, scale2(u, cross2(sub2(after.a, arc.a), v) / cross2(u, v)));
};

export const contourPoints = (loop: Loop): ContourPoints => {
  if (loop.kind === 'circle') return { points: [], corners: [], arcs: [], circle: loop };
  const edges = segments(loop);
  const at = (i: number): Segment | undefined => edges[(i + edges.length) % edges.length];
  const rounded = edges.map((edge, i) => {
    const before = at(i - 1);
    const after = at(i + 1);
    return before && after && !isStraight(edge) ? roundedCorner(before, edge, after) : undefined;
  });
  const corners = edges.flatMap((edge, i): Corner[] => {
    const sharp = rounded[i];
    if (sharp) return [{ at: sharp, fillet: arcOfSegment(edge).radius }];
    if (rounded[(i + edges.length - 1) % edges.length]) return [];
    if (isStraight(edge)) return [{ at: edge.a }];
    const arc = arcOfSegment(edge);
    return [{ at: edge.a, next: Math.sign(arc.sweep) * arc.radius }];
  });
  const arcs = edges.flatMap((edge, i) =>
    isStraight(edge) ? [] : [{ arc: arcOfSegment(edge), fillet: rounded[i] !== undefined }],
  );
  return { points: corners.map((corner) => corner.at), corners, arcs };
};

/** Width across flats of a contour that is a regular hexagon; undefined for any other. */
export const acrossFlats = (loop: Loop): number | undefined => {
  const edges = segments(loop);
  if (edges.length !== 6 || !edges.every(isStraight)) return undefined;
  const middle = scale2(
    edges.reduce<Vec2>((sum, { a }) => add2(sum, a), [0, 0]),
    1 / 6,
  );
  const sides = edges.map(({ a, b }) => distance2(a, b));
  // In a regular hexagon a corner is as far from the middle as from the next corner.
  const lengths = [...sides, ...edges.map(({ a }) => distance2(a, middle))];
  const side = lengths[0] ?? NaN;
  return lengths.every((length) => Math.abs(length - side) < 1e-6)
    ? side * Math.sqrt(3)
    : undefined;
};

/** A contour with more corners than this is listed in a table, not dimensioned in the view. */
const MANY = 28;
/** One with more than a few is listed as well where it has not this much room for each, mm. */
const FEW = 12;
const ROOM = 0.5;

export const isListed = ({ points }: ContourPoints): boolean => {
  if (points.length <= FEW) return false;
  const extent = (axis: 0 | 1): number => {
    const along = points.map((p) => p[axis]);
    return Math.max(...along) - Math.min(...along);
  };
  return points.length > MANY || Math.min(extent(0), extent(1)) < ROOM * points.length;
};

/** Of a whole turn, so much of a notched rim has to be left for it to be measured across. */
const RIM = 180;

/**
 * The circle that a contour is, or that a listed one was before notches were cut into its rim: all
 * its arcs lie on that, and its corners within. Undefined for any other.
 */
export const roundOf = (loop: Loop): Pick<Arc, 'centre' | 'radius'> | undefined => {
  if (loop.kind === 'circle') return loop;
  const contour = contourPoints(loop);
  const arcs = contour.arcs.map(({ arc }) => arc);
  const [first] = arcs;
  if (first === undefined || !isListed(contour)) return undefined;
  const { centre, radius } = first;
  const isSame = (arc: Arc): boolean =>
    distance2(arc.centre, centre) < 1e-6 && Math.abs(arc.radius - radius) < 1e-6;
  const left = arcs.reduce((sum, { sweep }) => sum + Math.abs(sweep), 0);
  return left > RIM &&
    arcs.every(isSame) &&
    contour.points.every((p) => distance2(p, centre) < radius + 1e-6)
    ? { centre, radius }
    : undefined;
};
