import type { Issue } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { atan2, tan } from '../core/trigonometry.ts';
import { text } from '../text/index.ts';
import { path, type PathLoop, type Vertex } from './loop.ts';
import { add2, cross2, distance2, dot2, scale2, sub2, type Vec2 } from './vector.ts';

/**
 * A polygon with its corners rounded: one radius for all, or one a corner in order (0 keeps it
 * sharp), mm. The tangent length is r tan(turn / 2), the bulge tan(turn / 4). Fails when two
 * fillets need more than the edge between them, or an edge has no length.
 */
export const rounded = (
  corners: readonly Vec2[],
  radius: number | readonly number[],
): Result<PathLoop> => {
  const n = corners.length;
  const radiusAt = (i: number): number => (typeof radius === 'number' ? radius : (radius[i] ?? 0));
  const at = (i: number): Vec2 => corners[(i + n) % n] ?? [0, 0];
  const turns = corners.map((corner, i) => {
    const before = sub2(corner, at(i - 1));
    const after = sub2(at(i + 1), corner);
    return atan2(cross2(before, after), dot2(before, after));
  });
  const tangents = turns.map((turn, i) => radiusAt(i) * Math.abs(tan(turn / 2)));
  const issues = corners.flatMap((corner, i): Issue[] => {
    const edge = distance2(corner, at(i + 1));
    const needed = (tangents[i] ?? 0) + (tangents[(i + 1) % n] ?? 0);
    if (edge > 0 && needed <= edge + 1e-9) return [];
    const reason = text.model.filletTooLarge(i, radiusAt(i), needed, edge);
    return [{ code: 'fillet-too-large', severity: 'error', path: '', ...reason }];
  });
  if (issues.length > 0) return fail(...issues);
  const vertices = corners.flatMap((corner, i): Vertex[] => {
    const t = tangents[i] ?? 0;
    if (t < 1e-9) return [{ x: corner[0], y: corner[1], bulge: 0 }];
    const [x0, y0] = towards(corner, at(i - 1), t);
    const [x1, y1] = towards(corner, at(i + 1), t);
    return [
      { x: x0, y: y0, bulge: tan((turns[i] ?? 0) / 4) },
      { x: x1, y: y1, bulge: 0 },
    ];
  });
  return ok(withoutDoubles(path(vertices)));
};

const towards = (from: Vec2, to: Vec2, by: number): Vec2 =>
  add2(from, scale2(sub2(to, from), by / distance2(from, to)));

/** Drops edges of no length (below 1e-9 mm): where two fillets meet exactly. */
const withoutDoubles = (loop: PathLoop): PathLoop =>
  path(
    loop.vertices.filter((v, i) => {
      const next = loop.vertices[(i + 1) % loop.vertices.length];
      return next === undefined || Math.hypot(next.x - v.x, next.y - v.y) > 1e-9;
    }),
  );
