import { int, real } from './flat.ts';
import type { Pieces } from './pieces.ts';
import type { TreeSolid } from './solid.ts';
import { NODE } from './tree.ts';

/**
 * Ways to the faces, edges and corners of a cube, along which every node's reach is kept, and
 * numbers a node. The number of a way is that of the middle, which is spare, and its steps along
 * x, y and z.
 */
export const WAYS = 27;
const MIDDLE = 13;
const X = 9;
const Y = 3;
const Z = 1;

/** Raises the reaches from `to` on to the places of a point along all ways. */
const raise = (reach: Float64Array, to: number, x: number, y: number, z: number): void => {
  let at = to;
  for (let i = -1; i <= 1; i++) {
    for (let j = -1; j <= 1; j++) {
      const sum = i * x + j * y;
      if (sum - z > real(reach, at)) reach[at] = sum - z;
      if (sum > real(reach, at + 1)) reach[at + 1] = sum;
      if (sum + z > real(reach, at + 2)) reach[at + 2] = sum + z;
      at += 3;
    }
  }
};

/** Raises the reaches from `to` on to those of a leaf's piece; a round one is taken for its box. */
const raiseTo = (
  reach: Float64Array,
  to: number,
  { start, count, points }: Pieces,
  piece: number,
  boxes: Float64Array,
  node: number,
): void => {
  const first = int(start, piece);
  if (first >= 0) {
    const end = 3 * (first + int(count, piece));
    for (let i = 3 * first; i < end; i += 3) {
      raise(reach, to, real(points, i), real(points, i + 1), real(points, i + 2));
    }
    return;
  }
  const i = node * NODE;
  for (let corner = 0; corner < 8; corner++) {
    const x = real(boxes, i) + (corner & 1 ? 1 : -1) * real(boxes, i + 3);
    const y = real(boxes, i + 1) + (corner & 2 ? 1 : -1) * real(boxes, i + 4);
    const z = real(boxes, i + 2) + (corner & 4 ? 1 : -1) * real(boxes, i + 5);
    raise(reach, to, x, y, z);
  }
};

const known = new WeakMap<TreeSolid, Float64Array>();

/** How far all below each node reaches along each way: made when a solid is first searched. */
export const reachOf = (solid: TreeSolid): Float64Array => {
  const found = known.get(solid);
  if (found) return found;
  const { boxes, next } = solid.tree;
  const reach = new Float64Array(WAYS * next.length).fill(-Infinity);
  for (let node = next.length - 1; node >= 0; node--) {
    const to = WAYS * node;
    const right = int(next, node);
    if (right < 0) {
      raiseTo(reach, to, solid.pieces, ~right, boxes, node);
      continue;
    }
    for (let k = 0; k < WAYS; k++) {
      const one = real(reach, to + WAYS + k);
      const other = real(reach, WAYS * right + k);
      reach[to + k] = one > other ? one : other;
    }
  }
  known.set(solid, reach);
  return reach;
};

/**
 * Splits a direction into the three ways it lies between: d = u e1 + v (e1 + e2) + w (e1 + e2 + e3),
 * the axes e by falling share of d. What reaches so far along those reaches no farther than the
 * weighted sum along d. Writes u, v and w from `weights[at]` on, the ways' numbers from `ways[to]`.
 */
export const between = (
  weights: Float64Array,
  at: number,
  ways: Int32Array,
  to: number,
  dx: number,
  dy: number,
  dz: number,
): void => {
  const ax = Math.abs(dx);
  const ay = Math.abs(dy);
  const az = Math.abs(dz);
  const sx = dx < 0 ? -X : X;
  const sy = dy < 0 ? -Y : Y;
  const sz = dz < 0 ? -Z : Z;
  const most = ax >= ay && ax >= az ? sx : ay >= az ? sy : sz;
  const least = ax < ay && ax < az ? sx : ay < az ? sy : sz;
  const high = Math.max(ax, ay, az);
  const low = Math.min(ax, ay, az);
  const middle = ax + ay + az - high - low;
  weights[at] = high - middle;
  weights[at + 1] = middle - low;
  weights[at + 2] = low;
  const all = MIDDLE + sx + sy + sz;
  ways[to] = MIDDLE + most;
  ways[to + 1] = all - least;
  ways[to + 2] = all;
};
