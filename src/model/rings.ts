import { crossings } from '../geometry/intersect.ts';
import type { Segment } from '../geometry/segment.ts';
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

const overlap = (a: Box, b: Box): boolean =>
  a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1;

interface Edge extends Box {
  readonly segment: Segment;
}

/** A polygon with what tells quickly that others keep clear of it. */
export interface Outline {
  readonly box: Box;
  readonly edges: readonly Edge[];
}

export const outlineOf = (points: readonly Vec2[]): Outline => {
  const edges = points.map((a, i): Edge => {
    const b = points[(i + 1) % points.length] ?? a;
    return {
      segment: { a, b, bulge: 0 },
      x0: Math.min(a[0], b[0]),
      y0: Math.min(a[1], b[1]),
      x1: Math.max(a[0], b[0]),
      y1: Math.max(a[1], b[1]),
    };
  });
  return { box: around(edges), edges };
};

const around = (edges: readonly Box[]): Box => ({
  x0: Math.min(...edges.map((edge) => edge.x0)),
  y0: Math.min(...edges.map((edge) => edge.y0)),
  x1: Math.max(...edges.map((edge) => edge.x1)),
  y1: Math.max(...edges.map((edge) => edge.y1)),
});

/** Whether a point is in the box round a polygon, its rim included. */
export const isInBox = ({ box }: Outline, [x, y]: Vec2): boolean =>
  x >= box.x0 && x <= box.x1 && y >= box.y0 && y <= box.y1;

/** Whether the edges of two polygons cross or touch anywhere. */
export const outlinesMeet = (one: Outline, other: Outline): boolean => {
  if (!overlap(one.box, other.box)) return false;
  const others = other.edges.filter((t) => overlap(t, one.box));
  return one.edges.some(
    (s) =>
      overlap(s, other.box) &&
      others.some((t) => overlap(s, t) && crossings(s.segment, t.segment).length > 0),
  );
};
