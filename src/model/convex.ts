import { cross2, dot2, sub2, type Vec2 } from '../geometry/vector.ts';
import { triangulate } from './triangulate.ts';

/**
 * The sides of polygons that lie against each other: a side runs from its corner to that of the next
 * one about its polygon, and `back` is the side that runs the other way, -1 for none.
 */
interface Sides {
  readonly corner: Int32Array;
  readonly next: Int32Array;
  readonly before: Int32Array;
  readonly back: Int32Array;
}

const at = (list: Int32Array, i: number): number => list[i] ?? 0;

const sidesOf = (
  triangles: readonly (readonly [number, number, number])[],
  points: number,
): Sides => {
  const corner = Int32Array.from(triangles.flat());
  const next = corner.map((_, i) => (i % 3 === 2 ? i - 2 : i + 1));
  const before = corner.map((_, i) => (i % 3 === 0 ? i + 2 : i - 1));
  const back = corner.map(() => -1);
  const known = new Map<number, number>();
  corner.forEach((a, i) => {
    const b = at(corner, at(next, i));
    known.set(a * points + b, i);
    const other = known.get(b * points + a);
    if (other === undefined) return;
    back[i] = other;
    back[other] = i;
  });
  return { corner, next, before, back };
};

/**
 * Convex polygons, anticlockwise, that fill a polygon with holes: its triangles, two of which become
 * one wherever both together are convex, over the longest sides first (S. Hertel, K. Mehlhorn 1983,
 * "Fast triangulation of simple polygons": at most four times as many as would do). Rings are as
 * `triangulate` takes them.
 */
export const convexParts = (rings: readonly (readonly Vec2[])[]): Vec2[][] => {
  const points = rings.flat();
  const { corner, next, before, back } = sidesOf(triangulate(rings), points.length);
  const point = (side: number): Vec2 => points[at(corner, side)] ?? [NaN, NaN];
  const lengthOf = (side: number): number =>
    Math.hypot(...sub2(point(side), point(at(next, side))));
  /** Whether a polygon that goes on from one side to another is convex there. */
  const turnsLeft = (side: number, onward: number): boolean => {
    const here = point(onward);
    const [into, out] = [sub2(here, point(side)), sub2(point(at(next, onward)), here)];
    const across = cross2(into, out);
    return across > 0 || (across === 0 && dot2(into, out) > 0);
  };
  // The triangle that stands for the polygon a triangle has become part of.
  const part = corner.slice(0, corner.length / 3).map((_, i) => i);
  const partOf = (side: number): number => {
    let one = Math.floor(side / 3);
    while (at(part, one) !== one) one = at(part, one);
    return one;
  };
  const inner = Array.from(back.keys()).filter((side) => at(back, side) > side);
  const lengths = Float64Array.from(corner, (_, side) =>
    at(back, side) > side ? lengthOf(side) : 0,
  );
  inner.sort((a, b) => (lengths[b] ?? 0) - (lengths[a] ?? 0) || a - b);
  const gone = new Uint8Array(corner.length);
  for (const side of inner) {
    const other = at(back, side);
    const [one, two] = [partOf(side), partOf(other)];
    const joints = [
      [at(before, side), at(next, other)],
      [at(before, other), at(next, side)],
    ] as const;
    if (one === two) continue;
    if (!joints.every(([from, to]) => turnsLeft(from, to))) continue;
    for (const [from, to] of joints) {
      next[from] = to;
      before[to] = from;
    }
    part[two] = one;
    gone[side] = gone[other] = 1;
  }
  return corner.reduce<Vec2[][]>((parts, _, first) => {
    const polygon: Vec2[] = [];
    for (let side = first; gone[side] === 0; side = at(next, side)) {
      gone[side] = 1;
      polygon.push(point(side));
    }
    if (polygon.length > 0) parts.push(polygon);
    return parts;
  }, []);
};
