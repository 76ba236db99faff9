import { aim, lowestTo, turnRound, WAY, type Aim, type Probed } from './aim.ts';
import { grown, int, real } from './flat.ts';

/** Room for one look through a tree after another. */
export interface Look {
  /** Nodes still to be looked into, and the least place of each. */
  nodes: Int32Array;
  bounds: Float64Array;
  /** Room for two places, what was found, and between what it matters how low that is. */
  readonly out: Float64Array;
  /** Found before: for a node and a direction (3) of a search the least place. */
  readonly known: Float64Array;
  /** The number of this search. */
  search: number;
}

/** Places in `out`: what was found, below what no lower one is sought, and from what on all is well. */
const FOUND = 2;
const TOO_LOW = 3;
const WELL = 4;

/** Numbers of a known place, and the most of them: movements that follow each other share poses. */
const KNOWN = 6;
const MOST = 256;

export const createLook = (): Look => ({
  nodes: new Int32Array(256),
  bounds: new Float64Array(256),
  out: new Float64Array(5),
  known: new Float64Array(KNOWN * MOST),
  search: 0,
});

/** Forgets what was found about other bodies. */
export const lookAnew = (look: Look): void => {
  look.search++;
};

/** Makes room for two more nodes. */
const widen = (look: Look, top: number): void => {
  if (top + 2 <= look.nodes.length) return;
  look.nodes = grown(look.nodes, new Int32Array(2 * look.nodes.length));
  look.bounds = grown(look.bounds, new Float64Array(2 * look.bounds.length));
};

/**
 * Least d.p over all corners below a tree node to within `slack`, and never above it: what no box
 * can tell of a body that lies along a face without being along the axes. Written to `out[FOUND]`. How
 * low it is matters between two places only: the first corner below `out[TOO_LOW]` will do instead,
 * and a bound that is not below `out[WELL]`. Along a face thousands of boxes reach a little below
 * their least corner, and need not be looked into for that.
 */
const lowestBelow = (
  look: Look,
  probed: Probed,
  node: number,
  aimed: Aim,
  of: number,
  slack: number,
): void => {
  const { out } = look;
  const { next } = probed.solid.tree;
  let best = Infinity;
  let floor = Infinity;
  const tooLow = real(out, TOO_LOW);
  let enough = real(out, WELL);
  let top = 1;
  lowestTo(out, 0, probed, node, aimed, of);
  look.nodes[0] = node;
  look.bounds[0] = real(out, 0);
  while (top > 0) {
    top--;
    const bound = real(look.bounds, top);
    if (bound >= enough) {
      if (bound < floor) floor = bound;
      continue;
    }
    const at = int(look.nodes, top);
    const right = int(next, at);
    if (right < 0) {
      best = bound;
      if (best < tooLow) break;
      enough = Math.max(tooLow, best - slack);
      continue;
    }
    widen(look, top);
    lowestTo(out, 0, probed, at + 1, aimed, of);
    lowestTo(out, 1, probed, right, aimed, of);
    // The lower one is looked into first.
    const left = real(out, 0) <= real(out, 1);
    look.nodes[top] = left ? right : at + 1;
    look.bounds[top++] = real(out, left ? 1 : 0);
    look.nodes[top] = left ? at + 1 : right;
    look.bounds[top++] = real(out, left ? 0 : 1);
  }
  out[FOUND] = best < floor ? best : floor;
};

/** Where a least place is kept: nodes and directions that come one after another lie apart. */
const slotOf = (key: number, x: number, y: number, z: number): number =>
  KNOWN * ((7 * key + Math.trunc(3000 * x + 7000 * y + 11000 * z)) & (MOST - 1));

/**
 * The same, looked up where it was found before and tells enough; `sign` is 1 for the moving body, -1
 * for the still.
 */
const lowestOf = (
  look: Look,
  probed: Probed,
  node: number,
  sign: 1 | -1,
  aimed: Aim,
  of: number,
  slack: number,
): void => {
  const { known, out, search } = look;
  const from = WAY * of;
  const x = real(aimed.way, from);
  const y = real(aimed.way, from + 1);
  const z = real(aimed.way, from + 2);
  const key = sign * (node + 1);
  const at = slotOf(key, x, y, z);
  if (
    real(known, at) === key &&
    real(known, at + 1) === x &&
    real(known, at + 2) === y &&
    real(known, at + 3) === z &&
    real(known, at + 4) === search &&
    (sign === -1 || real(known, at + 5) >= real(out, WELL))
  ) {
    out[FOUND] = real(known, at + 5);
    return;
  }
  lowestBelow(look, probed, node, aimed, of, slack);
  if (real(out, FOUND) < real(out, TOO_LOW)) return;
  known[at] = key;
  known[at + 1] = x;
  known[at + 2] = y;
  known[at + 3] = z;
  known[at + 4] = search;
  known[at + 5] = real(out, FOUND);
};

/** Least place of node a along an aimed direction, as far as it matters from `wanted` to `stray` beyond. */
const lowestFrom = (
  look: Look,
  moving: Probed,
  a: number,
  aimed: Aim,
  of: 0 | 1,
  wanted: number,
  stray: number,
): number => {
  const { out } = look;
  out[TOO_LOW] = wanted;
  out[WELL] = wanted + stray;
  lowestOf(look, moving, a, 1, aimed, of, Infinity);
  return real(out, FOUND);
};

/**
 * The room between node a of the moving body, anywhere on the straight way of motion node m, and node b
 * along a direction of the still body's: as of `lowMovingTo` and `highStillTo` without any straying, but
 * from what the bodies really reach, the still one to within `slack`. Of a room that is `enough` and
 * `stray` it is told that it is, and of one that is less than `enough`: not how much.
 */
export const roomAlong = (
  { look, aimed, back }: { readonly look: Look; readonly aimed: Aim; readonly back: Aim },
  moving: Probed,
  a: number,
  still: Probed,
  b: number,
  normal: Float64Array,
  data: Float64Array,
  m: number,
  slack: number,
  enough: number,
  stray: number,
): number => {
  const { out } = look;
  aim(aimed, data, m, normal);
  turnRound(back, normal);
  out[TOO_LOW] = -Infinity;
  out[WELL] = Infinity;
  lowestOf(look, still, b, -1, back, 0, slack);
  const high = -real(out, FOUND);
  const wanted = enough + high;
  // What turns as it goes has two places to look at, what only moves the same one from two origins.
  const start = real(aimed.way, 3);
  const end = real(aimed.way, WAY + 3);
  const first = aimed.steady && end < start ? end : start;
  const low = lowestFrom(look, moving, a, aimed, 0, wanted - first, stray) + first - high;
  if (aimed.steady || low < enough) return low;
  const last = lowestFrom(look, moving, a, aimed, 1, wanted - end, stray) + end - high;
  return last < low ? last : low;
};
