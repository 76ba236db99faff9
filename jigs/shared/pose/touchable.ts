import type { Mesh } from '../../../src/family/index.ts';

/** What of a blade seat and step can touch: points (u, v, w) and the edges between them. */
export interface Touchable {
  readonly points: Float64Array;
  /** Pairs of point numbers. */
  readonly edges: Uint32Array;
}

/** Longest edge of a blade's mesh along it, with room for the blade's slope, mm. */
const NEAR = 12;

const read = (a: ArrayLike<number>, i: number): number => a[i] ?? 0;

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
  // Spine line: the least v of every millimetre of u.
  const least = new Map<number, number>();
  const bin = (i: number): number => Math.round(read(vertices, 3 * i));
  const count = vertices.length / 3;
  for (let i = 0; i < count; i += 1) {
    least.set(bin(i), Math.min(least.get(bin(i)) ?? Infinity, read(vertices, 3 * i + 1)));
  }
  const numbers = new Int32Array(count).fill(-1);
  const points: number[] = [];
  for (let i = 0; i < count; i += 1) {
    const [u, v] = [read(vertices, 3 * i), read(vertices, 3 * i + 1)];
    if (v > (least.get(bin(i)) ?? 0) + depth) continue;
    numbers[i] = points.length / 3;
    points.push(u, v, read(vertices, 3 * i + 2));
  }
  const nearEnd = (u: number): boolean =>
    ends === undefined || ends.some((end) => Math.abs(u - end) <= NEAR);
  const edges: number[] = [];
  for (let t = 0; t < triangles.length; t += 1) {
    const next = t % 3 === 2 ? t - 2 : t + 1;
    const [a, b] = [read(numbers, read(triangles, t)), read(numbers, read(triangles, next))];
    // Every edge of a closed mesh comes twice, once each way.
    if (a >= 0 && b > a && nearEnd(read(vertices, 3 * read(triangles, t)))) edges.push(a, b);
  }
  return { points: Float64Array.from(points), edges: Uint32Array.from(edges) };
};

/** The points that a test keeps, by number and coordinates, with the edges between them. */
export const subset = (
  { points, edges }: Touchable,
  keep: (u: number, v: number, w: number, i: number) => boolean,
): Touchable => {
  const numbers = new Int32Array(points.length / 3).fill(-1);
  const kept: number[] = [];
  for (let i = 0; i < numbers.length; i += 1) {
    const [u, v, w] = [read(points, 3 * i), read(points, 3 * i + 1), read(points, 3 * i + 2)];
    if (!keep(u, v, w, i)) continue;
    numbers[i] = kept.length / 3;
    kept.push(u, v, w);
  }
  const joined: number[] = [];
  for (let e = 0; e < edges.length; e += 2) {
    const [a, b] = [read(numbers, read(edges, e)), read(numbers, read(edges, e + 1))];
    if (a >= 0 && b >= 0) joined.push(a, b);
  }
  return { points: Float64Array.from(kept), edges: Uint32Array.from(joined) };
};

/**
 * What of a blade can be within `half` of the place u along it, in any pose that keeps it along the
 * stroke, with the edges that leave that stretch.
 */
export const around = (whole: Touchable, u: number, half: number): Touchable =>
  subset(whole, (at) => Math.abs(at - u) <= half + NEAR);
