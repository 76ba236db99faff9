import { polygon } from '../geometry/loop.ts';
import { containsPoint, signedArea } from '../geometry/loop-measure.ts';
import { angleOf } from '../geometry/arc.ts';
import { sub2, type Vec2 } from '../geometry/vector.ts';

type Triangle = readonly [number, number, number];

/**
 * The closed contours that would close a mesh that is open in a plane: its unmatched edges there,
 * turned round and linked. Where contours touch in a point, each keeps to its own material.
 */
export const linkLoops = (
  triangles: readonly Triangle[],
  flat: (vertex: number) => Vec2,
  isInPlane: (vertex: number) => boolean,
): number[][] => {
  const onward = openEdges(triangles, isInPlane);
  const loops: number[][] = [];
  for (const start of onward.keys()) {
    for (let next = take(onward, start); next !== undefined; next = take(onward, start)) {
      const loop = [start];
      let before = start;
      while (next !== undefined && next !== start) {
        loop.push(next);
        const here: number = next;
        next = take(onward, here, direction(flat, here, before), flat);
        before = here;
      }
      if (loop.length > 2) loops.push(loop);
    }
  }
  return loops;
};

/** One number for a directed edge; exact for meshes of up to 2^26 vertices. */
const edgeKey = (a: number, b: number): number => a * 2 ** 26 + b;

/** Every unmatched directed edge in the plane, reversed: from a vertex to those that follow it. */
const openEdges = (
  triangles: readonly Triangle[],
  isInPlane: (vertex: number) => boolean,
): Map<number, number[]> => {
  const present = new Set<number>();
  const edges: (readonly [number, number])[] = [];
  const add = (a: number, b: number): void => {
    if (!isInPlane(a) || !isInPlane(b)) return;
    edges.push([a, b]);
    present.add(edgeKey(a, b));
  };
  for (const [a, b, c] of triangles) {
    add(a, b);
    add(b, c);
    add(c, a);
  }
  const onward = new Map<number, number[]>();
  for (const [a, b] of edges)
    if (!present.has(edgeKey(b, a))) onward.set(b, [...(onward.get(b) ?? []), a]);
  return onward;
};

const direction = (flat: (vertex: number) => Vec2, from: number, to: number): number =>
  angleOf(sub2(flat(to), flat(from)));

/**
 * Takes the edge that leaves a vertex; of several, the first one clockwise from the edge one
 * came along, which keeps the material on the left.
 */
const take = (
  onward: Map<number, number[]>,
  vertex: number,
  back = 0,
  flat?: (vertex: number) => Vec2,
): number | undefined => {
  const choices = onward.get(vertex) ?? [];
  const turn = (to: number): number =>
    flat === undefined ? 0 : (((back - direction(flat, vertex, to)) % 360) + 360) % 360 || 360;
  const [chosen] = [...choices].sort((a, b) => turn(a) - turn(b));
  if (chosen !== undefined) {
    choices.splice(choices.indexOf(chosen), 1);
  }
  return chosen;
};

/** Groups contours into an outer one, anticlockwise, with the holes directly inside it. */
export const nested = (
  loops: readonly (readonly number[])[],
  flat: (vertex: number) => Vec2,
): (readonly number[])[][] => {
  const shapes = loops.map((loop) => {
    const outline = polygon(loop.map(flat));
    return { loop, outline, area: signedArea(outline), inner: innerPoint(loop.map(flat)) };
  });
  const outers = shapes.filter(({ area }) => area > 0);
  return outers.map((outer) => {
    const holes = shapes.filter(({ area, inner }) => {
      if (area >= 0) return false;
      const around = outers.filter(({ outline }) => containsPoint(outline, inner));
      const least = Math.min(...around.map((shape) => shape.area));
      return around.some((shape) => shape === outer && shape.area === least);
    });
    return [outer.loop, ...holes.map(({ loop }) => loop)];
  });
};

/** A point of a contour that lies on no other one unless they run together: an edge's middle. */
const innerPoint = (points: readonly Vec2[]): Vec2 => {
  const [a = [0, 0], b = a] = points;
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
};
