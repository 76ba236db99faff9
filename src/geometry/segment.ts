import { atan2, sin } from '../core/trigonometry.ts';
import { degrees, radians } from '../core/units.ts';
import { angleOf, arcOf, circleOf, onCircle, spans, sweepOf, type Arc } from './arc.ts';
import type { Loop } from './loop.ts';
import { add2, cross2, distance2, dot2, scale2, sub2, type Vec2 } from './vector.ts';

export interface Box2 {
  readonly min: Vec2;
  readonly max: Vec2;
}

/** One edge of a contour: straight for bulge 0, else an arc. */
export interface Segment {
  readonly a: Vec2;
  readonly b: Vec2;
  readonly bulge: number;
}

/** The edges of a contour in its order; a circle is two half circles, anticlockwise from +x. */
export const segments = (loop: Loop): Segment[] => {
  if (loop.kind === 'circle') {
    const { centre, radius } = loop;
    const right: Vec2 = [centre[0] + radius, centre[1]];
    const left: Vec2 = [centre[0] - radius, centre[1]];
    return [
      { a: right, b: left, bulge: 1 },
      { a: left, b: right, bulge: 1 },
    ];
  }
  const points = loop.vertices.map(({ x, y }): Vec2 => [x, y]);
  return loop.vertices.map(({ bulge }, i): Segment => {
    const a = points[i] ?? [0, 0];
    return { a, b: points[i + 1] ?? points[0] ?? a, bulge };
  });
};

export const isStraight = (segment: Segment): boolean => Math.abs(segment.bulge) < 1e-12;

export const arcOfSegment = ({ a, b, bulge }: Segment): Arc => arcOf(a, b, bulge);

/** Length along the edge, mm. */
export const segmentLength = (segment: Segment): number => {
  const chord = distance2(segment.a, segment.b);
  if (isStraight(segment) || chord === 0) return chord;
  const arc = arcOfSegment(segment);
  return arc.radius * Math.abs(radians(arc.sweep));
};

/** Unit direction of travel at the start (a) or end (b) of an edge. */
export const tangent = (s: Segment, end: 'a' | 'b'): Vec2 => {
  if (isStraight(s)) return scale2(sub2(s.b, s.a), 1 / distance2(s.a, s.b));
  const { centre, radius } = circleOf(s.a, s.b, s.bulge);
  const from = scale2(sub2(s[end], centre), Math.sign(s.bulge) / radius);
  return [-from[1], from[0]];
};

/** Turn of direction at the start of each edge, degrees, positive to the left. */
export const cornerTurns = (loop: Loop): number[] => {
  const edges = segments(loop);
  return edges.map((edge, i) => {
    const before = edges[(i + edges.length - 1) % edges.length] ?? edge;
    const [u, v] = [tangent(before, 'b'), tangent(edge, 'a')];
    return degrees(atan2(cross2(u, v), dot2(u, v)));
  });
};

/** Shortest distance from a point to the edge, mm. */
export const distanceToSegment = (p: Vec2, segment: Segment): number => {
  const { a, b } = segment;
  const ends = (): number => Math.min(distance2(p, a), distance2(p, b));
  const along = sub2(b, a);
  const square = dot2(along, along);
  if (square === 0) return ends();
  if (isStraight(segment)) {
    const t = dot2(sub2(p, a), along) / square;
    return t <= 0 || t >= 1 ? ends() : Math.abs(cross2(along, sub2(p, a))) / Math.sqrt(square);
  }
  const arc = arcOfSegment(segment);
  const from = sub2(p, arc.centre);
  return spans(arc, angleOf(from)) ? Math.abs(Math.hypot(...from) - arc.radius) : ends();
};

/** Points of `s` that can be nearest to the inside of `t` without being an end of `s`. */
const feet = (s: Segment, t: Segment): Vec2[] => {
  if (isStraight(t)) {
    if (isStraight(s)) return [];
    const arc = arcOfSegment(s);
    const normal = angleOf([-(t.b[1] - t.a[1]), t.b[0] - t.a[0]]);
    return [normal, normal + 180]
      .filter((angle) => spans(arc, angle))
      .map((angle) => onCircle(arc.centre, arc.radius, angle));
  }
  const { centre } = arcOfSegment(t);
  if (isStraight(s)) {
    const along = sub2(s.b, s.a);
    const at = dot2(sub2(centre, s.a), along) / dot2(along, along);
    return at > 0 && at < 1 ? [add2(s.a, scale2(along, at))] : [];
  }
  const arc = arcOfSegment(s);
  const towards = angleOf(sub2(centre, arc.centre));
  return [towards, towards + 180]
    .filter((angle) => spans(arc, angle))
    .map((angle) => onCircle(arc.centre, arc.radius, angle));
};

/**
 * Shortest distance between two edges that do not cross, mm: over the ends of each and the
 * points where the common normal can stand.
 */
export const segmentGap = (s: Segment, t: Segment): number =>
  Math.min(
    ...[s.a, s.b, ...feet(s, t)].map((p) => distanceToSegment(p, t)),
    ...[t.a, t.b, ...feet(t, s)].map((p) => distanceToSegment(p, s)),
  );

/** Corners of the smallest axis-parallel box around the edge. */
export const segmentBox = (segment: Segment): Box2 => {
  if (isStraight(segment)) {
    const { a, b } = segment;
    return {
      min: [Math.min(a[0], b[0]), Math.min(a[1], b[1])],
      max: [Math.max(a[0], b[0]), Math.max(a[1], b[1])],
    };
  }
  const points: Vec2[] = [segment.a, segment.b];
  const arc = arcOfSegment(segment);
  for (const angle of [0, 90, 180, 270])
    if (spans(arc, angle)) points.push(onCircle(arc.centre, arc.radius, angle));
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] };
};

/** The edges of a contour with their boxes. */
export const boxedSegments = (loop: Loop): [Segment, Box2][] =>
  segments(loop).map((s) => [s, segmentBox(s)]);

/** Distance of two boxes, mm: never more than that of what they hold; 0 where they meet. */
export const boxGap2 = (p: Box2, q: Box2): number =>
  Math.hypot(
    Math.max(0, p.min[0] - q.max[0], q.min[0] - p.max[0]),
    Math.max(0, p.min[1] - q.max[1], q.min[1] - p.max[1]),
  );

/** Area between chord and arc, positive for an anticlockwise bulge: r^2 (theta - sin theta) / 2. */
export const segmentArea = (segment: Segment): number => {
  if (isStraight(segment)) return 0;
  const theta = radians(sweepOf(segment.bulge));
  const { radius } = circleOf(segment.a, segment.b, segment.bulge);
  return (radius * radius * (theta - sin(theta))) / 2;
};
