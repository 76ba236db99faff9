import { real } from './flat.ts';

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

/**
 * Builds the tree over piece boxes (lower x y z, upper x y z for each piece). Nodes are halved
 * at the middle of their centres along the longest axis, by count where that separates nothing.
 */
export const buildTree = (bounds: Float64Array): Tree => {
  const count = bounds.length / 6;
  const boxes = new Float64Array((2 * count - 1) * NODE);
  const next = new Int32Array(2 * count - 1);
  const order = Int32Array.from({ length: count }, (_, i) => i);
  const centre = (piece: number, axis: number): number =>
    real(bounds, piece * 6 + axis) + real(bounds, piece * 6 + axis + 3);
  const lower = [0, 0, 0];
  const upper = [0, 0, 0];
  let used = 0;

  const partition = (from: number, to: number): number => {
    let axis = 0;
    let widest = -1;
    let middle = 0;
    for (let k = 0; k < 3; k++) {
      let low = Infinity;
      let high = -Infinity;
      for (let i = from; i < to; i++) {
        const c = centre(order[i] as number, k);
        if (c < low) low = c;
        if (c > high) high = c;
      }
      if (high - low > widest) {
        widest = high - low;
        axis = k;
        middle = (low + high) / 2;
      }
    }
    let split = from;
    for (let i = from; i < to; i++) {
      const piece = order[i] as number;
      if (centre(piece, axis) >= middle) continue;
      order[i] = order[split] as number;
      order[split++] = piece;
    }
    return split === from || split === to ? (from + to) >> 1 : split;
  };

  const build = (from: number, to: number): void => {
    const node = used++;
    for (let k = 0; k < 3; k++) {
      let low = Infinity;
      let high = -Infinity;
      for (let i = from; i < to; i++) {
        const at = (order[i] as number) * 6 + k;
        low = Math.min(low, real(bounds, at));
        high = Math.max(high, real(bounds, at + 3));
      }
      lower[k] = low;
      upper[k] = high;
    }
    const base = node * NODE;
    let reach = 0;
    for (let k = 0; k < 3; k++) {
      const low = lower[k] as number;
      const high = upper[k] as number;
      boxes[base + k] = (low + high) / 2;
      boxes[base + 3 + k] = (high - low) / 2;
      reach += Math.max(low * low, high * high);
    }
    boxes[base + 6] = Math.sqrt(reach);
    if (to - from === 1) {
      next[node] = ~(order[from] as number);
      return;
    }
    const split = partition(from, to);
    build(from, split);
    next[node] = used;
    build(split, to);
  };

  build(0, count);
  return { boxes, next };
};
