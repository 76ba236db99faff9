import type { Loop, PathLoop, Profile, Vertex } from './loop.ts';
import { arcOf } from './arc.ts';
import { crossings } from './intersect.ts';
import {
  boxedSegments,
  boxGap2,
  distanceToSegment,
  segmentArea,
  segmentBox,
  segmentGap,
  segmentLength,
  segments,
  type Box2,
} from './segment.ts';
import { distance2, type Vec2 } from './vector.ts';

export type { Box2 } from './segment.ts';

/** Smallest box around several boxes; there must be at least one. */
export const unionBox = (boxes: readonly Box2[]): Box2 => ({
  min: [Math.min(...boxes.map((b) => b.min[0])), Math.min(...boxes.map((b) => b.min[1]))],
  max: [Math.max(...boxes.map((b) => b.max[0])), Math.max(...boxes.map((b) => b.max[1]))],
});

/** Exact bounding box of a contour, arcs included, mm. */
export const boundingBox = (loop: Loop): Box2 => {
  if (loop.kind === 'circle') {
    const [x, y] = loop.centre;
    return { min: [x - loop.radius, y - loop.radius], max: [x + loop.radius, y + loop.radius] };
  }
  return unionBox(segments(loop).map(segmentBox));
};

/**
 * Exact enclosed area, mm^2: the shoelace sum over the chords and the circular segments over
 * them. Positive for an anticlockwise contour; a circle counts as anticlockwise.
 */
export const signedArea = (loop: Loop): number => {
  if (loop.kind === 'circle') return Math.PI * loop.radius * loop.radius;
  // Measured from the first corner, so that a contour far from the origin keeps its digits.
  const { vertices } = loop;
  const [first] = vertices;
  if (first === undefined) return 0;
  let sum = 0;
  for (let i = 0; i < vertices.length; i += 1) {
    const a = vertices[i] ?? first;
    const b = vertices[i + 1] ?? first;
    sum += ((a.x - first.x) * (b.y - first.y) - (a.y - first.y) * (b.x - first.x)) / 2;
    if (a.bulge !== 0) sum += segmentArea({ a: [a.x, a.y], b: [b.x, b.y], bulge: a.bulge });
  }
  return sum;
};

/** Exact length of the contour, mm. */
export const perimeter = (loop: Loop): number =>
  loop.kind === 'circle'
    ? 2 * Math.PI * loop.radius
    : segments(loop).reduce((sum, s) => sum + segmentLength(s), 0);

/** Exact area of a region, mm^2: outer contour less its holes. */
export const profileArea = (profile: Profile): number =>
  profile.holes.reduce(
    (sum, hole) => sum - Math.abs(signedArea(hole)),
    Math.abs(signedArea(profile.outer)),
  );

/** Whether a point lies inside a contour of either direction; on the contour itself either way. */
export const containsPoint = (loop: Loop, p: Vec2): boolean => {
  if (loop.kind === 'circle') return distance2(p, loop.centre) < loop.radius;
  const { vertices } = loop;
  const [px, py] = p;
  let winding = 0;
  let from = vertices.at(-1);
  for (const to of vertices) {
    const at = from;
    from = to;
    if (!at) continue;
    const { bulge } = at;
    const side = (to.x - at.x) * (py - at.y) - (to.y - at.y) * (px - at.x);
    // A point on a level chord counts as just above it, as the half-open rule below has it.
    const left = side > 0 || (side === 0 && at.y === to.y && to.x > at.x);
    if (at.y <= py && to.y > py && left) winding += 1;
    if (at.y > py && to.y <= py && !left) winding -= 1;
    // The arc passes on the other side of the points between it and its chord.
    if (Math.abs(bulge) < 1e-12 || left !== bulge < 0) continue;
    const { centre, radius } = arcOf([at.x, at.y], [to.x, to.y], bulge);
    if (distance2(p, centre) < radius) winding += Math.sign(bulge);
  }
  return winding !== 0;
};

/** Shortest distance from a point to the contour itself, mm, inside or out. */
export const distanceToLoop = (p: Vec2, loop: Loop): number =>
  loop.kind === 'circle'
    ? Math.abs(distance2(p, loop.centre) - loop.radius)
    : Math.min(...segments(loop).map((s) => distanceToSegment(p, s)));

/**
 * Whether a point lies within `near` of a contour, mm: `distanceToLoop` compared, without measuring
 * the edges that are farther in the direction of an axis.
 */
export const isOn = ({ vertices }: PathLoop, [x, y]: Vec2, near: number): boolean => {
  for (let i = 0; i < vertices.length; i += 1) {
    const a = vertices[i] as Vertex;
    const b = vertices[i + 1] ?? (vertices[0] as Vertex);
    // An arc stays within its height, at most this, of its chord.
    const slack = near + (Math.abs(a.bulge) * (Math.abs(b.x - a.x) + Math.abs(b.y - a.y))) / 2;
    if (x < Math.min(a.x, b.x) - slack || x > Math.max(a.x, b.x) + slack) continue;
    if (y < Math.min(a.y, b.y) - slack || y > Math.max(a.y, b.y) + slack) continue;
    const edge = { a: [a.x, a.y], b: [b.x, b.y], bulge: a.bulge } as const;
    if (distanceToSegment([x, y], edge) < near) return true;
  }
  return false;
};

/**
 * Shortest distance from a contour to others, mm; 0 where they meet. What lies `within` mm or more
 * apart is told as no nearer than that.
 */
export const gapsFrom = (one: Loop): ((other: Loop, within?: number) => number) => {
  let edges: ReturnType<typeof boxedSegments> | undefined;
  return (other, within = Infinity) => {
    if (one.kind === 'circle' && other.kind === 'circle') {
      const apart = distance2(one.centre, other.centre);
      const inside = Math.abs(one.radius - other.radius) - apart;
      return Math.max(0, apart - one.radius - other.radius, inside);
    }
    const others = boxedSegments(other);
    let best = within;
    for (const [s, box] of (edges ??= boxedSegments(one))) {
      for (const [t, otherBox] of others) {
        if (boxGap2(box, otherBox) > best) continue;
        if (crossings(s, t).length > 0) return 0;
        best = Math.min(best, segmentGap(s, t));
      }
    }
    return best;
  };
};

/** Shortest distance between two contours, mm; 0 where they meet. The web between two holes. */
export const loopGap = (one: Loop, other: Loop): number => gapsFrom(one)(other);

/** A point on the contour. */
export const pointOn = (loop: Loop): Vec2 =>
  loop.kind === 'circle'
    ? [loop.centre[0] + loop.radius, loop.centre[1]]
    : [loop.vertices[0]?.x ?? 0, loop.vertices[0]?.y ?? 0];

/** Contours this far apart do not touch, mm: how much farther need not be measured. */
const APART = 1e-9;

/** Whether two contours meet. */
export const touching = (one: Loop, other: Loop): boolean => gapsFrom(one)(other, APART) === 0;

/** Whether `inner` lies wholly inside `outer` without touching it; asked of many, it looks at `outer` once. */
export const insideOf = (outer: Loop): ((inner: Loop) => boolean) => {
  const gapTo = gapsFrom(outer);
  return (inner) => containsPoint(outer, pointOn(inner)) && gapTo(inner, APART) > 0;
};

/** Indices of the edges shorter than `limit` mm; 0 finds none, a tiny limit the doubled corners. */
export const shortEdges = (loop: Loop, limit: number): number[] =>
  segments(loop).flatMap((s, i) => (segmentLength(s) < limit ? [i] : []));
