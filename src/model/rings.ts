import { crossings } from '../geometry/intersect.ts';
import { cross2, dot2, sub2, type Vec2 } from '../geometry/vector.ts';

/** Corners of a polygon that lie on the line of their neighbours within this are dropped, mm. */
const STRAIGHT = 1e-7;

/**
 * The polygon without corners on a straight line, which carry no shape and make slivers, and
 * without doubled corners.
 */
export const withoutCollinear = (points: readonly Vec2[]): Vec2[] => {
  const kept: Vec2[] = [...points];
  let i = 0;
  while (kept.length > 3 && i < kept.length) {
    const before = kept[(i + kept.length - 1) % kept.length] ?? [0, 0];
    const corner = kept[i] ?? [0, 0];
    const after = kept[(i + 1) % kept.length] ?? [0, 0];
    const along = sub2(after, before);
    const from = sub2(corner, before);
    const length = Math.hypot(...along);
    const onward = dot2(from, along) >= 0 && dot2(sub2(after, corner), along) >= 0;
    if (length > 0 && onward && Math.abs(cross2(along, from)) / length < STRAIGHT) {
      kept.splice(i, 1);
      // The corner before has a new neighbour and is looked at again.
      i = Math.max(0, i - 1);
    } else i += 1;
  }
  return kept;
};

interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

const boxOf = (points: readonly Vec2[]): Box => ({
  x0: Math.min(...points.map((p) => p[0])),
  y0: Math.min(...points.map((p) => p[1])),
  x1: Math.max(...points.map((p) => p[0])),
  y1: Math.max(...points.map((p) => p[1])),
});

const overlap = (a: Box, b: Box): boolean =>
  a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1;

/** Whether the edges of two polygons cross or touch anywhere. */
export const polygonsMeet = (one: readonly Vec2[], other: readonly Vec2[]): boolean => {
  const otherBox = boxOf(other);
  if (!overlap(boxOf(one), otherBox)) return false;
  return one.some((a, i) => {
    const b = one[(i + 1) % one.length] ?? a;
    if (!overlap(boxOf([a, b]), otherBox)) return false;
    return other.some((c, k) => {
      const d = other[(k + 1) % other.length] ?? c;
      return crossings({ a, b, bulge: 0 }, { a: c, b: d, bulge: 0 }).length > 0;
    });
  });
};
