import earcut, { refine } from 'earcut';
import { cross2, sub2, type Vec2 } from '../geometry/vector.ts';

type Triangle = readonly [number, number, number];

/**
 * Triangles (anticlockwise, as indices into the rings' points laid end to end) of a polygon with
 * holes: the first ring is the outer one, anticlockwise, the others clockwise. Every ring edge
 * is an edge of exactly one triangle. The ear cutter drops points on a straight line; they are
 * put back by splitting the triangle whose edge passes through them, so that no wall built on
 * the ring is left with an open edge.
 */
export const triangulate = (rings: readonly (readonly Vec2[])[]): Triangle[] => {
  const points = rings.flat();
  const starts: number[] = [];
  let at = 0;
  for (const ring of rings) {
    if (at > 0) starts.push(at);
    at += ring.length;
  }
  const coordinates = points.flat();
  const corners = earcut(coordinates, starts);
  refine(corners, coordinates);
  const triangles: Triangle[] = [];
  for (let i = 0; i + 2 < corners.length; i += 3) {
    const t = anticlockwise(points, [corners[i] ?? 0, corners[i + 1] ?? 0, corners[i + 2] ?? 0]);
    if (t !== undefined) triangles.push(t);
  }
  // So many triangles have every point for a corner: none was dropped.
  if (triangles.length === points.length + 2 * (rings.length - 1) - 2) return triangles;
  return mended(triangles, points, ringEdges(rings, points.length));
};

const at = (points: readonly Vec2[], i: number): Vec2 => points[i] ?? [0, 0];

const anticlockwise = (points: readonly Vec2[], [a, b, c]: Triangle): Triangle | undefined => {
  const area = cross2(sub2(at(points, b), at(points, a)), sub2(at(points, c), at(points, a)));
  return area === 0 ? undefined : area > 0 ? [a, b, c] : [a, c, b];
};

/** Edges between so many points as numbers. */
const edgeNumber =
  (count: number) =>
  (a: number, b: number): number =>
    a * count + b;

const ringEdges = (rings: readonly (readonly Vec2[])[], count: number): Set<number> => {
  const number = edgeNumber(count);
  const edges = new Set<number>();
  let first = 0;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 1)
      edges.add(number(first + i, first + ((i + 1) % ring.length)));
    first += ring.length;
  }
  return edges;
};

const edgesOf = ([a, b, c]: Triangle): Triangle[] => [
  [a, b, c],
  [b, c, a],
  [c, a, b],
];

/** Splits triangles along unmatched edges at the points lying on them, until none is left. */
const mended = (
  triangles: readonly Triangle[],
  points: readonly Vec2[],
  border: ReadonlySet<number>,
): Triangle[] => {
  const number = edgeNumber(points.length);
  let current = [...triangles];
  // Every pass puts back at least one point, so there are no more passes than points.
  for (let pass = 0; pass < points.length; pass += 1) {
    const present = new Set<number>();
    for (const [a, b, c] of current) present.add(number(a, b)).add(number(b, c)).add(number(c, a));
    const matched = (a: number, b: number): boolean =>
      present.has(number(b, a)) || border.has(number(a, b));
    let split = false;
    current = current.flatMap((t): Triangle[] => {
      const [p, q, r] = t;
      if (matched(p, q) && matched(q, r) && matched(r, p)) return [t];
      for (const [a, b, c] of edgesOf(t)) {
        if (matched(a, b)) continue;
        const between = nearestOn(points, a, b, c);
        if (between === undefined) continue;
        split = true;
        return [
          [a, between, c],
          [between, b, c],
        ];
      }
      return [t];
    });
    if (!split) break;
  }
  return current;
};

/** The point on the inside of edge a-b nearest to a, if any; c is the triangle's third corner. */
const nearestOn = (
  points: readonly Vec2[],
  a: number,
  b: number,
  c: number,
): number | undefined => {
  const from = at(points, a);
  const along = sub2(at(points, b), from);
  const square = along[0] ** 2 + along[1] ** 2;
  let best: number | undefined;
  let least = 1;
  points.forEach((p, i) => {
    if (i === a || i === b || i === c) return;
    const d = sub2(p, from);
    const t = (d[0] * along[0] + d[1] * along[1]) / square;
    if (t <= 0 || t >= least || Math.abs(cross2(along, d)) > 1e-9 * square) return;
    best = i;
    least = t;
  });
  return best;
};
