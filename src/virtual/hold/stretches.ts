import { acrossAt, depthAt, riseAt, type Cutter } from '../surface.ts';
import type { Field } from '../field.ts';

/** Nodes of a stretch: few enough that a belt's curve hardly bends along it. */
const NODES = 8;

/** Far above what rounding does to a depth, mm. */
const ROUNDING = 1e-9;

/**
 * A face by stretches of each column, for looking where a belt comes nearest to a depth below it.
 * A plane or a round belt is convex, so it lies over its tangent: one node tells of most stretches
 * that none of theirs can be the least, and a grind asks of millions.
 */
export interface Stretches {
  readonly field: Field;
  readonly flat: Float64Array;
  readonly square: Float64Array;
  readonly depth: number;
  /** Half the belt's width. */
  readonly half: number;
  /** Stretches of a column. */
  readonly each: number;
  /** How far the face bulges over the chord of each stretch, and the least cosine of its slope. */
  readonly bulge: Float64Array;
  readonly least: Float64Array;
  /** The node that `leastIn` found last. */
  found: number;
}

/** First and last node of a stretch. */
const startOf = (rows: number, i: number, n: number): number => i * rows + n * NODES;
const endOf = (rows: number, i: number, n: number): number =>
  i * rows + Math.min(rows, (n + 1) * NODES) - 1;

export const stretchesOf = (
  field: Field,
  flat: Float64Array,
  square: Float64Array,
  depth: number,
  half: number,
): Stretches => {
  const { us, rows, v } = field;
  const each = Math.ceil(rows / NODES);
  const bulge = new Float64Array(us.length * each);
  const least = new Float64Array(us.length * each).fill(1);
  for (let i = 0; i < us.length; i += 1)
    for (let n = 0; n < each; n += 1) {
      const [a, b, at] = [startOf(rows, i, n), endOf(rows, i, n), i * each + n];
      const [va, fa] = [v[a] as number, flat[a] as number];
      const length = (v[b] as number) - va;
      const slope = length > 0 ? ((flat[b] as number) - fa) / length : 0;
      for (let k = a; k <= b; k += 1) {
        const over = (flat[k] as number) - fa - slope * ((v[k] as number) - va);
        bulge[at] = Math.max(bulge[at] as number, over);
        least[at] = Math.min(least[at] as number, square[k] as number);
      }
    }
  return { field, flat, square, depth, half, each, bulge, least, found: 0 };
};

/** The metal that a belt at `n` over a node leaves. */
const left = ({ flat, square, depth }: Stretches, k: number, n: number): number =>
  (n - (flat[k] as number)) * (square[k] as number) + depth;

/** The metal at a node; Infinity beside the belt. */
export const metalAt = (on: Stretches, cutter: Cutter, i: number, k: number): number => {
  const [u, here] = [on.field.us[i] as number, on.field.v[k] as number];
  const n = depthAt(cutter, u, here);
  return Math.abs(acrossAt(cutter, u, here, n)) > on.half ? Infinity : left(on, k, n);
};

/**
 * The least metal over a depth at the nodes of column i under a belt of half a width, as far as it
 * is less than `above`, which it is otherwise; `limit` is known not to be less than the least of all.
 */
export const leastIn = (
  on: Stretches,
  cutter: Cutter,
  i: number,
  above: number,
  limit: number,
): number => {
  const { flat, depth, half, each, bulge, least } = on;
  const { us, rows, v } = on.field;
  const u = us[i] as number;
  let metal = above;
  for (let n = 0; n < each; n += 1) {
    const a = startOf(rows, i, n);
    const b = endOf(rows, i, n);
    const at = i * each + n;
    const va = v[a] as number;
    const vb = v[b] as number;
    const middle = (va + vb) / 2;
    const touch = depthAt(cutter, u, middle);
    const rise = riseAt(cutter, u, middle, touch);
    const bound =
      Math.min(
        touch + rise * (va - middle) - (flat[a] as number),
        touch + rise * (vb - middle) - (flat[b] as number),
      ) - (bulge[at] as number);
    if (Math.min(bound, bound * (least[at] as number)) + depth > Math.min(metal, limit) + ROUNDING)
      continue;
    for (let k = a; k <= b; k += 1) {
      const here = v[k] as number;
      const face = depthAt(cutter, u, here);
      const now = left(on, k, face);
      if (now >= metal || Math.abs(acrossAt(cutter, u, here, face)) > half) continue;
      metal = now;
      on.found = k;
    }
  }
  return metal;
};
