import { acos } from '../../core/trigonometry.ts';
import { arcOf, angleOf, bulgeOf, onCircle, sagittaOf } from '../../geometry/arc.ts';
import { path, type PathLoop, type Vertex } from '../../geometry/loop.ts';
import type { Segment } from '../../geometry/segment.ts';
import { degrees } from '../../core/units.ts';
import { apart2, dot2, type Vec2 } from '../../geometry/vector.ts';

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

/** The most by which an arc rises over its chord: its height, for no chord is longer than |x| + |y|. */
const rise = (a: Vertex, b: Vertex): number =>
  Math.abs(sagittaOf(Math.abs(b.x - a.x) + Math.abs(b.y - a.y), a.bulge));

/** The pieces of an arc that lie in the half-plane, in order. */
const arcInside = (a: Vertex, b: Vertex, plane: HalfPlane): Segment[] => {
  const { normal, offset } = plane;
  const [from, to]: [Vec2, Vec2] = [
    [a.x, a.y],
    [b.x, b.y],
  ];
  const [da, db, high] = [out(a.x, a.y, plane), out(b.x, b.y, plane), rise(a, b)];
  if (Math.max(da, db) + high <= 0) return [{ a: from, b: to, bulge: a.bulge }];
  if (Math.min(da, db) - high > 0) return [];
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

/** Whether two points are one corner. */
const same = (a: Vertex, b: Vertex): boolean =>
  Math.abs(a.x - b.x) <= SAME && Math.abs(a.y - b.y) <= SAME && apart2(a.x, a.y, b.x, b.y) <= SAME;

const corner = ([x, y]: Vec2, bulge: number): Vertex => ({ x, y, bulge });

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
    const db = out(b.x, b.y, plane);
    if (a.bulge !== 0) {
      const high = rise(a, b);
      if (Math.max(da, db) + high <= -ON || Math.min(da, db) - high >= ON) continue;
      const ends = arcInside(a, b, plane).flatMap((piece) => [piece.a, piece.b]);
      points.push(...ends.filter(([x, y]) => Math.abs(out(x, y, plane)) < ON));
      continue;
    }
    if (Math.min(da, db) >= -ON || Math.max(da, db) <= ON) continue;
    const t = da / (da - db);
    points.push([a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)]);
  }
  return points;
};

/**
 * Where a convex contour in a half-plane reaches farthest in a direction in which its farthest point
 * lies outside: at an end of the cut. Undefined for a contour wholly outside.
 */
export const reachOfCut = (
  { vertices }: PathLoop,
  plane: HalfPlane,
  [dx, dy]: Vec2,
): Vec2 | undefined => {
  let best: Vec2 | undefined;
  const offer = (p: Vec2): void => {
    if (best === undefined || p[0] * dx + p[1] * dy > best[0] * dx + best[1] * dy) best = p;
  };
  for (let i = 0; i < vertices.length; i += 1) {
    const a = vertices[i];
    const b = vertices[i + 1] ?? vertices[0];
    if (a === undefined || b === undefined) continue;
    if (a.bulge !== 0) {
      for (const piece of arcInside(a, b, plane)) [piece.a, piece.b].forEach(offer);
      continue;
    }
    const da = out(a.x, a.y, plane);
    const db = out(b.x, b.y, plane);
    if (da > 0 === db > 0) continue;
    const t = da / (da - db);
    offer([a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)]);
  }
  return best;
};

/**
 * The part of a convex contour (straight edges and arcs) in a half-plane, exactly: every kept
 * piece of edge, closed by the straight cut. A contour wholly outside gives no corners. Corners
 * that stay are those of the contour: a blade's sections are carried on from belt to belt.
 */
export const clip = ({ vertices }: PathLoop, plane: HalfPlane): PathLoop => {
  const kept: Vertex[] = [];
  let end: Vertex | undefined;
  const keep = (a: Vertex, b: Vertex): void => {
    if (same(a, b)) return;
    if (end !== undefined && !same(end, a)) kept.push({ x: end.x, y: end.y, bulge: 0 });
    kept.push(a);
    end = b;
  };
  for (let i = 0; i < vertices.length; i += 1) {
    const a = vertices[i];
    const b = vertices[i + 1] ?? vertices[0];
    if (a === undefined || b === undefined) continue;
    const da = out(a.x, a.y, plane);
    const db = out(b.x, b.y, plane);
    if (Math.max(da, db) + rise(a, b) <= 0) keep(a, b);
    else if (a.bulge !== 0)
      for (const piece of arcInside(a, b, plane))
        keep(corner(piece.a, piece.bulge), corner(piece.b, 0));
    else if (da <= 0 || db <= 0) {
      const t = da / (da - db);
      const cut = { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y), bulge: 0 };
      keep(da > 0 ? cut : a, db > 0 ? cut : b);
    }
  }
  const [first] = kept;
  if (first !== undefined && end !== undefined && !same(end, first))
    kept.push({ x: end.x, y: end.y, bulge: 0 });
  return path(kept);
};
