import { arcOf, bulgeOf, sweepOf } from '../geometry/arc.ts';
import { path, type PathLoop, type Vertex } from '../geometry/loop.ts';
import { cross2, distance2, dot2, sub2, type Vec2 } from '../geometry/vector.ts';

/** Edges that differ by less than this, mm, run on. */
const SAME = 1e-6;

const point = (v: Vertex): Vec2 => [v.x, v.y];

/** The one edge that two edges in a row make, as its bulge; undefined where there is a corner. */
const joined = (a: Vertex, b: Vertex, c: Vertex): number | undefined => {
  const [p, q, r] = [point(a), point(b), point(c)];
  if (a.bulge === 0 && b.bulge === 0) {
    const along = sub2(r, p);
    const apart = Math.abs(cross2(along, sub2(q, p))) / Math.hypot(...along);
    const onward = dot2(sub2(q, p), sub2(r, q)) > 0;
    return onward && apart < SAME ? 0 : undefined;
  }
  if (a.bulge * b.bulge <= 0) return undefined;
  const [one, two] = [arcOf(p, q, a.bulge), arcOf(q, r, b.bulge)];
  const sweep = sweepOf(a.bulge) + sweepOf(b.bulge);
  const same = distance2(one.centre, two.centre) < SAME && Math.abs(one.radius - two.radius) < SAME;
  return same && Math.abs(sweep) < 300 ? bulgeOf(sweep) : undefined;
};

/** The contour with straight edges in one line, and arcs on one circle, joined to single edges. */
export const merged = (loop: PathLoop): PathLoop => {
  const kept: Vertex[] = [...loop.vertices];
  let i = 0;
  while (kept.length > 2 && i < kept.length) {
    const n = kept.length;
    const before = kept[(i + n - 1) % n];
    const corner = kept[i];
    const after = kept[(i + 1) % n];
    const bulge = before && corner && after && n > 2 ? joined(before, corner, after) : undefined;
    if (before === undefined || bulge === undefined) {
      i += 1;
      continue;
    }
    kept[(i + n - 1) % n] = { ...before, bulge };
    kept.splice(i, 1);
    i = Math.max(0, i - 1);
  }
  return path(kept);
};
