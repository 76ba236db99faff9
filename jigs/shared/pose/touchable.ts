import type { Mesh } from '../../../src/family/index.ts';

/** What of a blade seat and step can touch: points (u, v, w) and the edges between them. */
export interface Touchable {
  readonly points: Float64Array;
  /** Pairs of point numbers. */
  readonly edges: Uint32Array;
}

/** How much a blade's slope moves its places along the stroke, mm. */
const SLOPE = 6;
/** Longest edge of a blade's mesh along it, with room for the slope, mm. */
export const NEAR = 12;

/** The spine line, the least v of every millimetre of u; or the edge line, the most. */
const lineOf = (vertices: Mesh['vertices'], sign: 1 | -1): ((u: number) => number) => {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < vertices.length; i += 3) {
    low = Math.min(low, vertices[i] as number);
    high = Math.max(high, vertices[i] as number);
  }
  const first = Math.round(low);
  const least = new Float64Array(vertices.length > 0 ? Math.round(high) - first + 1 : 0);
  least.fill(Infinity);
  for (let i = 0; i < vertices.length; i += 3) {
    const at = Math.round(vertices[i] as number) - first;
    least[at] = Math.min(least[at] as number, sign * (vertices[i + 1] as number));
  }
  return (u) => sign * (least[Math.round(u) - first] ?? 0);
};

/**
 * The corners of a blade's mesh within `depth` mm (v) of the spine beside them, with the mesh's
 * edges between them: small enough to be settled often. With `ends` only edges within a few
 * millimetres of these places along the blade are kept: where nose and step end.
 */
export const touchable = (
  { vertices, triangles }: Mesh,
  depth: number,
  ends?: readonly number[],
): Touchable => {
  const spine = lineOf(vertices, 1);
  const numbers = new Int32Array(vertices.length / 3).fill(-1);
  const points = new Float64Array(vertices.length);
  let count = 0;
  for (let i = 0; i < vertices.length; i += 3) {
    const [u, v] = [vertices[i] as number, vertices[i + 1] as number];
    if (v > spine(u) + depth) continue;
    numbers[i / 3] = count / 3;
    points[count++] = u;
    points[count++] = v;
    points[count++] = vertices[i + 2] as number;
  }
  const nearEnd = (u: number): boolean =>
    ends === undefined || ends.some((end) => Math.abs(u - end) <= NEAR);
  const edges = new Uint32Array(2 * triangles.length);
  let found = 0;
  for (let t = 0; t < triangles.length; t += 1) {
    const from = triangles[t] as number;
    const a = numbers[from] as number;
    const b = numbers[triangles[t % 3 === 2 ? t - 2 : t + 1] as number] as number;
    // Every edge of a closed mesh comes twice, once each way.
    if (a < 0 || b <= a || !nearEnd(vertices[3 * from] as number)) continue;
    edges[found++] = a;
    edges[found++] = b;
  }
  return { points: points.slice(0, count), edges: edges.slice(0, found) };
};

/**
 * The corners of a blade's mesh within `depth` mm (v) of the edge beside them, and those that an edge
 * of the mesh joins to them, with these edges: a face between corners far apart is kept with them.
 */
export const edgeStrip = ({ vertices, triangles }: Mesh, depth: number): Touchable => {
  const edge = lineOf(vertices, -1);
  const isLow = new Uint8Array(vertices.length / 3);
  for (let i = 0; i < isLow.length; i += 1) {
    const line = edge(vertices[3 * i] as number);
    isLow[i] = (vertices[3 * i + 1] as number) >= line - depth ? 1 : 0;
  }
  const numbers = new Int32Array(isLow.length).fill(-1);
  const points = new Float64Array(vertices.length);
  let count = 0;
  const numberOf = (vertex: number): number => {
    const known = numbers[vertex] as number;
    if (known >= 0) return known;
    for (let k = 0; k < 3; k += 1) points[3 * count + k] = vertices[3 * vertex + k] as number;
    numbers[vertex] = count;
    return count++;
  };
  const edges = new Uint32Array(triangles.length);
  let found = 0;
  for (let t = 0; t < triangles.length; t += 1) {
    const from = triangles[t] as number;
    const to = triangles[t % 3 === 2 ? t - 2 : t + 1] as number;
    // Every edge of a closed mesh comes twice, once each way.
    if (to <= from || !(isLow[from] || isLow[to])) continue;
    edges[found++] = numberOf(from);
    edges[found++] = numberOf(to);
  }
  return { points: points.slice(0, 3 * count), edges: edges.slice(0, found) };
};

/** The points that a test keeps by their number, with the edges between them. */
export const subset = ({ points, edges }: Touchable, keep: (i: number) => boolean): Touchable => {
  const numbers = new Int32Array(points.length / 3).fill(-1);
  let count = 0;
  for (let i = 0; i < numbers.length; i += 1) if (keep(i)) numbers[i] = count++;
  const kept = new Float64Array(3 * count);
  for (let i = 0; i < numbers.length; i += 1) {
    const to = 3 * (numbers[i] as number);
    for (let k = 0; to >= 0 && k < 3; k += 1) kept[to + k] = points[3 * i + k] as number;
  }
  const joined = new Uint32Array(edges.length);
  let ends = 0;
  for (let e = 0; e < edges.length; e += 2) {
    const a = numbers[edges[e] as number] as number;
    const b = numbers[edges[e + 1] as number] as number;
    if (a < 0 || b < 0) continue;
    joined[ends++] = a;
    joined[ends++] = b;
  }
  return { points: kept, edges: joined.slice(0, ends) };
};

/** The edges that can cross an end of a stretch of `halves` about the place u along a blade. */
export const across = (
  { points, edges }: Touchable,
  u: number,
  halves: readonly number[],
): Uint32Array => {
  const ends = Float64Array.from(halves.flatMap((half) => [u - half, u + half]));
  const crossing = new Uint32Array(edges.length);
  let found = 0;
  for (let e = 0; e < edges.length; e += 2) {
    const p = edges[e] as number;
    const q = edges[e + 1] as number;
    const a = points[3 * p] as number;
    const b = points[3 * q] as number;
    const low = Math.min(a, b) - SLOPE;
    const high = Math.max(a, b) + SLOPE;
    let crosses = false;
    for (let k = 0; k < ends.length; k += 1) {
      const end = ends[k] as number;
      crosses ||= low <= end && end <= high;
    }
    if (!crosses) continue;
    crossing[found++] = p;
    crossing[found++] = q;
  }
  return crossing.slice(0, found);
};

/** What of a blade is within so many mm of the place u along it. */
export const within = (whole: Touchable, u: number, most: number): Touchable =>
  subset(whole, (i) => Math.abs((whole.points[3 * i] as number) - u) <= most);

/**
 * What of a blade can be within the largest of `halves` of the place u along it, in any pose that
 * keeps it along the stroke, with the edges that can cross the end of a stretch so long.
 */
export const around = (whole: Touchable, u: number, halves: readonly number[]): Touchable => {
  const near = within(whole, u, Math.max(...halves) + NEAR);
  return { points: near.points, edges: across(near, u, halves) };
};
