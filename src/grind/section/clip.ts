import { acos } from '../../core/trigonometry.ts';
import { arcOf, angleOf, bulgeOf, onCircle, sagittaOf } from '../../geometry/arc.ts';
import { path, type PathLoop, type Vertex } from '../../geometry/loop.ts';
import type { Segment } from '../../geometry/segment.ts';
import { degrees } from '../../core/units.ts';
import { distance2, dot2, type Vec2 } from '../../geometry/vector.ts';

/** The points p with p . normal <= offset; the normal is a unit vector. */
export interface HalfPlane {
  readonly normal: Vec2;
  readonly offset: number;
}

/** Points closer than this are one corner, mm. */
const SAME = 1e-12;

/** How far a point lies outside, mm. */
const out = (x: number, y: number, { normal, offset }: HalfPlane): number =>
  x * normal[0] + y * normal[1] - offset;

/** The pieces of an arc that lie in the half-plane, in order. */
const arcInside = (a: Vertex, b: Vertex, plane: HalfPlane): Segment[] => {
  const { normal, offset } = plane;
  const [from, to]: [Vec2, Vec2] = [
    [a.x, a.y],
    [b.x, b.y],
  ];
  // An arc rises over its chord by no more than its height.
  const most = Math.max(out(a.x, a.y, plane), out(b.x, b.y, plane));
  if (most + Math.abs(sagittaOf(distance2(from, to), a.bulge)) <= 0)
    return [{ a: from, b: to, bulge: a.bulge }];
  const arc = arcOf(from, to, a.bulge);
  const cosine = (offset - dot2(arc.centre, normal)) / arc.radius;
  const half = degrees(acos(Math.min(1, Math.max(-1, cosine))));
  // Turns from the arc's start, in its own direction, at which it crosses the line.
  const towards = (angleOf(normal) - arc.start) * Math.sign(arc.sweep);
  const whole = Math.abs(arc.sweep);
  const turns = [towards - half, towards + half]
    .map((turn) => ((turn % 360) + 360) % 360)
    .filter((turn) => turn > 0 && turn < whole)
    .sort((p, q) => p - q);
  const at = (turn: number): Vec2 => {
    if (turn === 0) return from;
    if (turn === whole) return to;
    return onCircle(arc.centre, arc.radius, arc.start + turn * Math.sign(arc.sweep));
  };
  return [...turns, whole].flatMap((end, i) => {
    const start = turns[i - 1] ?? 0;
    if (dot2(at((start + end) / 2), normal) > offset) return [];
    return [{ a: at(start), b: at(end), bulge: bulgeOf((end - start) * Math.sign(arc.sweep)) }];
  });
};

/** How near to the border of a half-plane a corner lies on it, mm. */
const ON = 1e-9;

/** Where a contour in a half-plane touches its border, or is cut by it. */
export const onBorder = ({ vertices }: PathLoop, plane: HalfPlane): Vec2[] => {
  const points: Vec2[] = [];
  for (let i = 0; i < vertices.length; i += 1) {
    const a = vertices[i];
    const b = vertices[i + 1] ?? vertices[0];
    if (a === undefined || b === undefined) continue;
    const da = out(a.x, a.y, plane);
    if (Math.abs(da) < ON) points.push([a.x, a.y]);
    if (a.bulge !== 0) {
      const ends = arcInside(a, b, plane).flatMap((piece) => [piece.a, piece.b]);
      points.push(...ends.filter(([x, y]) => Math.abs(out(x, y, plane)) < ON));
      continue;
    }
    const db = out(b.x, b.y, plane);
    if (Math.min(da, db) >= -ON || Math.max(da, db) <= ON) continue;
    const t = da / (da - db);
    points.push([a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)]);
  }
  return points;
};

/**
 * The part of a convex contour (straight edges and arcs) in a half-plane, exactly: every kept
 * piece of edge, closed by the straight cut. A contour wholly outside gives no corners.
 */
export const clip = ({ vertices }: PathLoop, plane: HalfPlane): PathLoop => {
  const kept: Vertex[] = [];
  let end: Vec2 | undefined;
  const keep = (a: Vec2, b: Vec2, bulge: number): void => {
    if (distance2(a, b) <= SAME) return;
    if (end !== undefined && distance2(end, a) > SAME)
      kept.push({ x: end[0], y: end[1], bulge: 0 });
    kept.push({ x: a[0], y: a[1], bulge });
    end = b;
  };
  for (let i = 0; i < vertices.length; i += 1) {
    const [a, b] = [vertices[i], vertices[i + 1] ?? vertices[0]];
    if (a === undefined || b === undefined) continue;
    if (a.bulge !== 0) {
      for (const piece of arcInside(a, b, plane)) keep(piece.a, piece.b, piece.bulge);
      continue;
    }
    const [da, db] = [out(a.x, a.y, plane), out(b.x, b.y, plane)];
    if (da > 0 && db > 0) continue;
    const t = da / (da - db);
    const cut: Vec2 = [a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)];
    keep(da > 0 ? cut : [a.x, a.y], db > 0 ? cut : [b.x, b.y], 0);
  }
  const first = kept[0];
  if (first !== undefined && end !== undefined && distance2(end, [first.x, first.y]) > SAME)
    kept.push({ x: end[0], y: end[1], bulge: 0 });
  return path(kept);
};
