import type { Issue } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { atan2 } from '../core/trigonometry.ts';
import { degrees } from '../core/units.ts';
import { text } from '../text/index.ts';
import { angleOf, bulgeOf } from './arc.ts';
import { selfCrossings } from './intersect.ts';
import { circle, path, type Loop, type Vertex } from './loop.ts';
import { loopGap } from './loop-measure.ts';
import { oriented, reversed } from './loop-transform.ts';
import { arcOfSegment, isStraight, segments, tangent, type Segment } from './segment.ts';
import { add2, cross2, distance2, dot2, scale2, sub2, type Vec2 } from './vector.ts';

/** Neighbouring edges that turn by less than this (radians) run on without a corner. */
const SMOOTH = 1e-4;

/** A sharp corner reaches at most so many times the offset; beyond that it is rounded. */
const MITRE = 4;

/** An edge moved sideways: the line or circle that carries it. */
type Carrier =
  | { readonly kind: 'line'; readonly at: Vec2; readonly along: Vec2 }
  | {
      readonly kind: 'circle';
      readonly centre: Vec2;
      readonly radius: number;
      readonly turn: 1 | -1;
    };

/** The right-hand normal: outward for an anticlockwise contour. */
const outward = ([x, y]: Vec2): Vec2 => [y, -x];

const carrierOf = (s: Segment, by: number): Carrier => {
  const along = tangent(s, 'a');
  if (isStraight(s)) return { kind: 'line', at: add2(s.a, scale2(outward(along), by)), along };
  const { centre, radius } = arcOfSegment(s);
  const turn = s.bulge > 0 ? 1 : -1;
  return { kind: 'circle', centre, radius: radius + turn * by, turn };
};

const meetings = (p: Carrier, q: Carrier): Vec2[] => {
  if (p.kind === 'line' && q.kind === 'line') {
    const t = cross2(sub2(q.at, p.at), q.along) / cross2(p.along, q.along);
    return Number.isFinite(t) ? [add2(p.at, scale2(p.along, t))] : [];
  }
  if (p.kind === 'circle' && q.kind === 'line') return meetings(q, p);
  if (p.kind === 'line' && q.kind === 'circle') {
    const middle = dot2(sub2(q.centre, p.at), p.along);
    const foot = add2(p.at, scale2(p.along, middle));
    const half = Math.sqrt(q.radius ** 2 - distance2(foot, q.centre) ** 2);
    return Number.isNaN(half)
      ? []
      : [add2(foot, scale2(p.along, half)), add2(foot, scale2(p.along, -half))];
  }
  if (p.kind !== 'circle' || q.kind !== 'circle') return [];
  const apart = sub2(q.centre, p.centre);
  const square = dot2(apart, apart);
  const share = (p.radius ** 2 - q.radius ** 2 + square) / (2 * square);
  const half = Math.sqrt(p.radius ** 2 / square - share ** 2);
  if (!Number.isFinite(half)) return [];
  const foot = add2(p.centre, scale2(apart, share));
  const side: Vec2 = [-apart[1] * half, apart[0] * half];
  return [add2(foot, side), sub2(foot, side)];
};

/** Where the moved edges before and after a corner join: one point, or two with an arc between. */
interface Joint {
  readonly end: Vec2;
  readonly start: Vec2;
  readonly bulge: number;
}

const jointAt = (before: Segment, after: Segment, by: number): Joint | undefined => {
  const corner = after.a;
  const [u, v] = [tangent(before, 'b'), tangent(after, 'a')];
  const turn = atan2(cross2(u, v), dot2(u, v));
  const [end, start] = [u, v].map((d) => add2(corner, scale2(outward(d), by)));
  if (end === undefined || start === undefined) return undefined;
  if (Math.abs(turn) < SMOOTH) {
    const middle = scale2(add2(end, start), 0.5);
    return { end: middle, start: middle, bulge: 0 };
  }
  const [nearest] = meetings(carrierOf(before, by), carrierOf(after, by)).sort(
    (p, q) => distance2(p, corner) - distance2(q, corner),
  );
  // The outside of a corner can be rounded, the inside has to meet.
  const isOutside = turn * by > 0;
  if (nearest !== undefined && (!isOutside || distance2(nearest, corner) <= MITRE * Math.abs(by)))
    return { end: nearest, start: nearest, bulge: 0 };
  return isOutside ? { end, start, bulge: bulgeOf(degrees(turn)) } : undefined;
};

/** Bulge of the moved edge between its new ends; undefined when it has turned over. */
const movedBulge = (s: Segment, by: number, a: Vec2, b: Vec2): number | undefined => {
  if (isStraight(s)) return dot2(sub2(b, a), sub2(s.b, s.a)) > 0 ? 0 : undefined;
  const carrier = carrierOf(s, by);
  if (carrier.kind !== 'circle' || !(carrier.radius > 1e-9)) return undefined;
  const swept =
    carrier.turn * (angleOf(sub2(b, carrier.centre)) - angleOf(sub2(a, carrier.centre)));
  const positive = ((swept % 360) + 360) % 360;
  const was = Math.abs(arcOfSegment(s).sweep);
  return Math.abs(positive - was) < 180 ? carrier.turn * bulgeOf(positive) : undefined;
};

/**
 * The contour moved outward (positive) or inward by `by` mm along its whole length. Arcs stay
 * arcs with their centres; corners stay sharp up to four times the offset and are rounded beyond.
 * Edge by edge: each is moved square to itself and cut where its moved neighbours meet it. The
 * result is refused with an Issue when an edge vanishes, the contour crosses itself, or its
 * distance to the old one is not the offset: then a feature is too small for it.
 */
export const offset = (loop: Loop, by: number): Result<Loop> => {
  const issue: Issue = {
    code: 'offset-vanishes',
    severity: 'error',
    path: '',
    ...text.model.offsetVanishes(by),
  };
  if (by === 0) return ok(loop);
  if (loop.kind === 'circle')
    return loop.radius + by > 0 ? ok(circle(loop.centre, loop.radius + by)) : fail(issue);
  const forward = oriented(loop, true);
  const edges = segments(forward);
  const joints = edges.map((edge, i) => {
    const before = edges[(i + edges.length - 1) % edges.length];
    return before === undefined ? undefined : jointAt(before, edge, by);
  });
  const vertices = edges.map((edge, i): Vertex[] | undefined => {
    const [from, to] = [joints[i], joints[(i + 1) % edges.length]];
    if (from === undefined || to === undefined) return undefined;
    const bulge = movedBulge(edge, by, from.start, to.end);
    if (bulge === undefined) return undefined;
    const [x, y] = from.start;
    const rounding = { x: from.end[0], y: from.end[1], bulge: from.bulge };
    return from.bulge === 0 ? [{ x, y, bulge }] : [rounding, { x, y, bulge }];
  });
  if (vertices.some((v) => v === undefined)) return fail(issue);
  const moved = path(vertices.flatMap((v) => v ?? []));
  if (selfCrossings(moved).length > 0 || Math.abs(loopGap(moved, loop) - Math.abs(by)) > 1e-6)
    return fail(issue);
  return ok(forward === loop ? moved : reversed(moved));
};
