import { arcOf, angleOf, bulgeOf, onCircle, sagittaOf } from '../../geometry/arc.ts';
import { path, type PathLoop, type Vertex } from '../../geometry/loop.ts';
import { isStraight, segments, type Segment } from '../../geometry/segment.ts';
import { degrees } from '../../core/units.ts';
import { add2, distance2, dot2, scale2, sub2, type Vec2 } from '../../geometry/vector.ts';

/** The points p with p . normal <= offset; the normal is a unit vector. */
export interface HalfPlane {
  readonly normal: Vec2;
  readonly offset: number;
}

/** Points closer than this are one corner, mm. */
const SAME = 1e-12;

/** The pieces of a contour's edge that lie in the half-plane, in order. */
const inside = (segment: Segment, { normal, offset }: HalfPlane): Segment[] => {
  const { a, b, bulge } = segment;
  if (isStraight(segment)) {
    const [da, db] = [dot2(a, normal) - offset, dot2(b, normal) - offset];
    if (da <= 0 && db <= 0) return [segment];
    if (da > 0 && db > 0) return [];
    const at = add2(a, scale2(sub2(b, a), da / (da - db)));
    return da <= 0 ? [{ a, b: at, bulge: 0 }] : [{ a: at, b, bulge: 0 }];
  }
  // An arc rises over its chord by no more than its height.
  const ends = Math.max(dot2(a, normal), dot2(b, normal)) - offset;
  if (ends + Math.abs(sagittaOf(distance2(a, b), bulge)) <= 0) return [segment];
  const arc = arcOf(a, b, bulge);
  const cosine = (offset - dot2(arc.centre, normal)) / arc.radius;
  const half = degrees(Math.acos(Math.min(1, Math.max(-1, cosine))));
  // Turns from the arc's start, in its own direction, at which it crosses the line.
  const towards = (angleOf(normal) - arc.start) * Math.sign(arc.sweep);
  const turns = [towards - half, towards + half]
    .map((turn) => ((turn % 360) + 360) % 360)
    .filter((turn) => turn > 0 && turn < Math.abs(arc.sweep))
    .sort((p, q) => p - q);
  const cuts = [0, ...turns, Math.abs(arc.sweep)];
  const at = (turn: number): Vec2 =>
    turn === 0
      ? a
      : turn === Math.abs(arc.sweep)
        ? b
        : onCircle(arc.centre, arc.radius, arc.start + turn * Math.sign(arc.sweep));
  return cuts.slice(1).flatMap((to, i) => {
    const from = cuts[i] ?? 0;
    const middle = at((from + to) / 2);
    if (dot2(middle, normal) > offset) return [];
    const sweep = (to - from) * Math.sign(arc.sweep);
    return [{ a: at(from), b: at(to), bulge: bulgeOf(sweep) }];
  });
};

/**
 * The part of a convex contour (straight edges and arcs) in a half-plane, exactly: every kept
 * piece of edge, closed by the straight cut. A contour wholly outside gives no corners.
 */
export const clip = (outline: PathLoop, plane: HalfPlane): PathLoop => {
  const pieces = segments(outline).flatMap((segment) => inside(segment, plane));
  const kept = pieces.filter((piece) => distance2(piece.a, piece.b) > SAME);
  return path(
    kept.flatMap((piece, i): Vertex[] => {
      const next = kept[(i + 1) % kept.length];
      const start = { x: piece.a[0], y: piece.a[1], bulge: piece.bulge };
      const joined = next === undefined || distance2(piece.b, next.a) <= SAME;
      return joined ? [start] : [start, { x: piece.b[0], y: piece.b[1], bulge: 0 }];
    }),
  );
};
