import { acos } from '../core/trigonometry.ts';
import { degrees } from '../core/units.ts';
import { angleOf, onCircle, spans, type Arc } from './arc.ts';
import type { Loop } from './loop.ts';
import { arcOfSegment, isStraight, segmentBox, segments, type Segment } from './segment.ts';
import { add2, cross2, distance2, dot2, scale2, sub2, type Vec2 } from './vector.ts';

/** Points closer than this count as one, mm. */
const SAME = 1e-7;

const onLine = (p: Vec2, { a, b }: Segment): boolean => {
  const along = sub2(b, a);
  const length = Math.hypot(...along);
  const t = dot2(sub2(p, a), along) / length;
  return t > -SAME && t < length + SAME;
};

const onArc = (p: Vec2, arc: Arc, segment: Segment): boolean =>
  spans(arc, angleOf(sub2(p, arc.centre))) ||
  distance2(p, segment.a) < SAME ||
  distance2(p, segment.b) < SAME;

/** The ends of either edge that lie on the other: the limits of an overlap. */
const shared = (s: Segment, t: Segment, on: (p: Vec2, segment: Segment) => boolean): Vec2[] => [
  ...[s.a, s.b].filter((p) => on(p, t)),
  ...[t.a, t.b].filter((p) => on(p, s)),
];

const lineLine = (s: Segment, t: Segment): Vec2[] => {
  const u = sub2(s.b, s.a);
  const v = sub2(t.b, t.a);
  const across = cross2(u, v);
  const from = sub2(t.a, s.a);
  if (Math.abs(across) < 1e-12 * Math.hypot(...u) * Math.hypot(...v)) {
    const apart = Math.abs(cross2(u, from)) / Math.hypot(...u);
    return apart > SAME ? [] : shared(s, t, onLine);
  }
  const p = add2(s.a, scale2(u, cross2(from, v) / across));
  return onLine(p, s) && onLine(p, t) ? [p] : [];
};

const lineArc = (line: Segment, other: Segment): Vec2[] => {
  const arc = arcOfSegment(other);
  const along = sub2(line.b, line.a);
  const unit = scale2(along, 1 / Math.hypot(...along));
  const middle = dot2(sub2(arc.centre, line.a), unit);
  const foot = add2(line.a, scale2(unit, middle));
  const apart = distance2(foot, arc.centre);
  if (apart > arc.radius + SAME) return [];
  const half = Math.sqrt(Math.max(0, arc.radius ** 2 - apart ** 2));
  return [half, -half]
    .map((t) => add2(foot, scale2(unit, t)))
    .filter((p) => onLine(p, line) && onArc(p, arc, other));
};

const arcArc = (s: Segment, t: Segment): Vec2[] => {
  const a = arcOfSegment(s);
  const b = arcOfSegment(t);
  const apart = distance2(a.centre, b.centre);
  const on = (p: Vec2, segment: Segment): boolean => onArc(p, segment === s ? a : b, segment);
  if (apart < SAME) return Math.abs(a.radius - b.radius) > SAME ? [] : shared(s, t, on);
  if (apart > a.radius + b.radius + SAME) return [];
  if (apart < Math.abs(a.radius - b.radius) - SAME) return [];
  const cosine = (a.radius ** 2 + apart ** 2 - b.radius ** 2) / (2 * a.radius * apart);
  const half = degrees(acos(Math.min(1, Math.max(-1, cosine))));
  const towards = angleOf(sub2(b.centre, a.centre));
  return [towards + half, towards - half]
    .map((angle) => onCircle(a.centre, a.radius, angle))
    .filter((p) => on(p, s) && on(p, t));
};

const boxesMeet = (s: Segment, t: Segment): boolean => {
  const p = segmentBox(s);
  const q = segmentBox(t);
  return (
    p.min[0] <= q.max[0] + SAME &&
    q.min[0] <= p.max[0] + SAME &&
    p.min[1] <= q.max[1] + SAME &&
    q.min[1] <= p.max[1] + SAME
  );
};

/** Where two edges meet or cross, touching included; for an overlap, its end points. */
export const crossings = (s: Segment, t: Segment): Vec2[] => {
  if (distance2(s.a, s.b) === 0 || distance2(t.a, t.b) === 0 || !boxesMeet(s, t)) return [];
  if (isStraight(s)) return isStraight(t) ? lineLine(s, t) : lineArc(s, t);
  return isStraight(t) ? lineArc(t, s) : arcArc(s, t);
};

/** Points where a contour meets itself other than at its own corners; empty for a simple one. */
export const selfCrossings = (loop: Loop): Vec2[] => {
  if (loop.kind === 'circle') return [];
  const edges = segments(loop);
  return edges.flatMap((s, i) =>
    edges.slice(i + 1).flatMap((t, k) => {
      const corners: Vec2[] = [];
      if (k === 0) corners.push(s.b);
      if (i === 0 && k === edges.length - 2) corners.push(s.a);
      return crossings(s, t).filter((p) => corners.every((c) => distance2(c, p) > 1e-6));
    }),
  );
};
