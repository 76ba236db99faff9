import { int, real } from './flat.ts';

/** Numbers a node: centre (3), half extents (3), greatest distance of the box from the origin. */
export const NODE = 7;

/**
 * A binary tree of boxes in flat arrays, depth first: the left child follows its parent, `next`
 * names the right child, or a leaf's piece as its complement (`~piece`).
 */
export interface Tree {
  readonly boxes: Float64Array;
  readonly next: Int32Array;
}

/** Twice the centres of boxes, three numbers each. */
const centresOf = (bounds: Float64Array): Float64Array => {
  const centres = new Float64Array(bounds.length / 2);
  for (let i = 0, to = 0; i < bounds.length; i += 6) {
    for (let k = i; k < i + 3; k++) centres[to++] = real(bounds, k) + real(bounds, k + 3);
  }
  return centres;
};

/** Puts the pieces of a run in order, those of its first half first; where the second one starts. */
const partition = (order: Int32Array, centres: Float64Array, from: number, to: number): number => {
  let [lowX, lowY, lowZ] = [Infinity, Infinity, Infinity];
  let [highX, highY, highZ] = [-Infinity, -Infinity, -Infinity];
  for (let i = from; i < to; i++) {
    const at = 3 * int(order, i);
    const [x, y, z] = [real(centres, at), real(centres, at + 1), real(centres, at + 2)];
    if (x < lowX) lowX = x;
    if (x > highX) highX = x;
    if (y < lowY) lowY = y;
    if (y > highY) highY = y;
    if (z < lowZ) lowZ = z;
    if (z > highZ) highZ = z;
  }
  const [x, y, z] = [highX - lowX, highY - lowY, highZ - lowZ];
  const axis = x >= y && x >= z ? 0 : y >= z ? 1 : 2;
  const middle = (axis === 0 ? lowX + highX : axis === 1 ? lowY + highY : lowZ + highZ) / 2;
  let split = from;
  for (let i = from; i < to; i++) {
    const piece = int(order, i);
    if (real(centres, 3 * piece + axis) >= middle) continue;
    order[i] = int(order, split);
    order[split++] = piece;
  }
  return split === from || split === to ? (from + to) >> 1 : split;
};

/**
 * The nodes of a tree over piece boxes (lower x y z, upper x y z for each piece), as `next`. Nodes
 * are halved at the middle of their centres along the longest axis, by count where that separates
 * nothing.
 */
export const treeNodes = (bounds: Float64Array): Int32Array => {
  const count = bounds.length / 6;
  const next = new Int32Array(2 * count - 1);
  const order = Int32Array.from({ length: count }, (_, i) => i);
  const centres = centresOf(bounds);
  let used = 0;
  const build = (from: number, to: number): void => {
    const node = used++;
    if (to - from === 1) {
      next[node] = ~int(order, from);
      return;
    }
    const split = partition(order, centres, from, to);
    build(from, split);
    next[node] = used;
    build(split, to);
  };
  build(0, count);
  return next;
};

/** The boxes of a tree whose nodes are known, over the boxes of its pieces where they are now. */
export const fitTree = (next: Int32Array, bounds: Float64Array): Tree => {
  const boxes = new Float64Array(next.length * NODE);
  // Lower and upper corners, children before their parents.
  const corners = new Float64Array(next.length * 6);
  for (let node = next.length - 1; node >= 0; node--) {
    const right = int(next, node);
    const to = node * 6;
    const base = node * NODE;
    let reach = 0;
    for (let k = 0; k < 3; k++) {
      let low: number;
      let high: number;
      if (right < 0) {
        low = real(bounds, ~right * 6 + k);
        high = real(bounds, ~right * 6 + k + 3);
      } else {
        low = Math.min(real(corners, to + 6 + k), real(corners, right * 6 + k));
        high = Math.max(real(corners, to + 9 + k), real(corners, right * 6 + k + 3));
      }
      corners[to + k] = low;
      corners[to + k + 3] = high;
      boxes[base + k] = (low + high) / 2;
      boxes[base + 3 + k] = (high - low) / 2;
      reach += Math.max(low * low, high * high);
    }
    boxes[base + 6] = Math.sqrt(reach);
  }
  return { boxes, next };
};

/** Builds the tree over piece boxes. */
export const buildTree = (bounds: Float64Array): Tree => fitTree(treeNodes(bounds), bounds);
