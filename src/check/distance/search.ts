import { aim, AIM, boxGap, highStill, lowMoving, widening } from './bounds.ts';
import { int, real } from './flat.ts';
import { createGjk, distance, type Gjk } from './gjk.ts';
import { clearPlaced, createPlaced, IDENTITY_POSE, placeCopy, type Placed } from './placed.ts';
import {
  END_POSE,
  FROM,
  JOINED,
  moment,
  poseOf,
  split,
  START_POSE,
  STRAY,
  STRAY_PER,
  STRIDE,
  TO,
  type Relative,
} from './relative.ts';
import type { TreeSolid } from './solid.ts';
import { NODE } from './tree.ts';

/** Room for one search after another; holds no results between them. */
export interface Room {
  readonly gjk: Gjk;
  readonly a: Placed;
  readonly b: Placed;
  readonly pose: Float64Array;
  readonly aimed: Float64Array;
  stack: Int32Array;
  bounds: Float64Array;
  /** Pairs of pieces compared and pairs of boxes looked into so far: what a search costs. */
  compared: number;
  visited: number;
}

export const createRoom = (): Room => ({
  gjk: createGjk(),
  a: createPlaced(),
  b: createPlaced(),
  pose: new Float64Array(12),
  aimed: new Float64Array(AIM),
  stack: new Int32Array(3 * 1024),
  bounds: new Float64Array(1024),
  compared: 0,
  visited: 0,
});

/** The nearest configuration found so far and what is proved about the rest. */
export interface Nearest {
  /** Distance of the nearest points found, or the limit when none is nearer, mm. */
  best: number;
  /** Nothing set aside is nearer than this. */
  floor: number;
  found: boolean;
  sweep: number;
  t: number;
  /** Nearest points of the moving and the still body, in the still one's coordinates. */
  readonly points: Float64Array;
  /** Unit direction from the still one's nearest point to the moving one's; zero when unknown. */
  readonly normal: Float64Array;
  /** Pieces they lie on: where a search of nearly the same bodies starts. */
  pieceA: number;
  pieceB: number;
}

/** Nothing found yet; distances of `limit` mm and more do not matter. */
export const nothingNearer = (limit: number): Nearest => ({
  best: limit,
  floor: limit,
  found: false,
  sweep: 0,
  t: 0,
  points: new Float64Array(6),
  normal: new Float64Array(3),
  pieceA: -1,
  pieceB: -1,
});

/** One search: the moving body a and the still one b, the motion of a as seen from b. */
export interface Search {
  readonly room: Room;
  readonly a: TreeSolid;
  readonly b: TreeSolid;
  readonly motion: Relative;
  readonly near: Nearest;
  /** Width of the result that is good enough, mm. */
  readonly slack: number;
}

/**
 * How much sooner many sweeps are halved than boxes of the same width: of the weights 1 to 300,
 * this one visits the fewest pairs in tests/bench/clearance.ts.
 */
const GROUP_WEIGHT = 10;

/** Gives up splitting after this many pairs: what is left counts with its proved bound. */
const MOST = 4_000_000;

const place = (
  placed: Placed,
  solid: TreeSolid,
  piece: number,
  poses: Float64Array,
  at: number,
) => {
  clearPlaced(placed);
  placeCopy(placed, solid.pieces, piece, poses, at);
};

/** Keeps the pieces' nearest points when they are the nearest so far. */
const keep = (near: Nearest, gjk: Gjk, sweep: number, t: number, pa: number, pb: number): void => {
  near.best = gjk.upper;
  near.found = true;
  near.sweep = sweep;
  near.t = t;
  near.points.set(gjk.witness);
  if (gjk.upper > 0) {
    for (let k = 0; k < 3; k++) {
      near.normal[k] = (real(gjk.witness, k) - real(gjk.witness, k + 3)) / gjk.upper;
    }
  }
  near.pieceA = pa;
  near.pieceB = pb;
};

/**
 * Compares two pieces over a single motion node. Returns false when the node must be halved
 * for the wanted slack; otherwise the pair is done.
 */
const comparePieces = (
  search: Search,
  pa: number,
  pb: number,
  m: number,
  reach: number,
): boolean => {
  const { room, a: solidA, b: solidB, motion, near, slack } = search;
  const { gjk, a, b, pose } = room;
  const at = m * STRIDE;
  const stray = real(motion.data, at + STRAY) + real(motion.data, at + STRAY_PER) * reach;
  room.compared++;
  place(a, solidA, pa, motion.data, at + START_POSE);
  if (real(motion.data, at + TO) > real(motion.data, at + FROM)) {
    placeCopy(a, solidA.pieces, pa, motion.data, at + END_POSE);
  }
  place(b, solidB, pb, IDENTITY_POSE, 0);
  distance(gjk, a, b, near.best - slack + stray, near.normal);
  const lower = gjk.lower - stray;
  if (lower >= near.best - slack) {
    if (lower < near.floor) near.floor = lower;
    return true;
  }
  const { sweep, t } = moment(motion, m, gjk.share);
  const exact = stray <= 1e-9 && real(motion.data, at + JOINED) === 1;
  if (!exact) {
    // The straight way is not the true one: measure at the moment it points to.
    poseOf(motion, sweep, t, pose);
    place(a, solidA, pa, pose, 0);
    distance(gjk, a, b, Infinity, gjk.direction);
  }
  if (gjk.upper < near.best) keep(near, gjk, sweep, t, pa, pb);
  if (near.best > 0 && lower < near.best - slack && !exact) return false;
  if (lower < near.floor) near.floor = lower;
  return true;
};

const push = (room: Room, top: number, a: number, b: number, m: number, bound: number): number => {
  if (top >= room.bounds.length) {
    const stack = new Int32Array(2 * room.stack.length);
    const bounds = new Float64Array(2 * room.bounds.length);
    stack.set(room.stack);
    bounds.set(room.bounds);
    room.stack = stack;
    room.bounds = bounds;
  }
  room.stack[3 * top] = a;
  room.stack[3 * top + 1] = b;
  room.stack[3 * top + 2] = m;
  room.bounds[top] = bound;
  return top + 1;
};

/** Pushes the two halves of a pair, the nearer on top; drops what cannot matter. */
const pushTwo = (
  search: Search,
  top: number,
  a1: number,
  a2: number,
  b1: number,
  b2: number,
  m1: number,
  m2: number,
): number => {
  const { room, near, slack } = search;
  const { data } = search.motion;
  const boxesA = search.a.tree.boxes;
  const boxesB = search.b.tree.boxes;
  const { direction } = room.gjk;
  const enough = near.best - slack;
  // Where faces run side by side, the direction that separated the last pieces separates all of
  // these at once, which boxes along the axes cannot when the bodies are turned.
  aim(room.aimed, data, m1, direction);
  const low = lowMoving(search.a, a1, room.aimed, data, m1);
  const high = highStill(search.b, b1, direction);
  let first = low - high;
  if (first < enough) first = Math.max(first, boxGap(boxesA, a1, boxesB, b1, data, m1));
  if (m2 !== m1) aim(room.aimed, data, m2, direction);
  const low2 = a2 === a1 && m2 === m1 ? low : lowMoving(search.a, a2, room.aimed, data, m2);
  let second = low2 - (b2 === b1 ? high : highStill(search.b, b2, direction));
  if (second < enough) second = Math.max(second, boxGap(boxesA, a2, boxesB, b2, data, m2));
  if (first >= enough && first < near.floor) near.floor = first;
  if (second >= enough && second < near.floor) near.floor = second;
  let next = top;
  if (first <= second) {
    if (second < enough) next = push(room, next, a2, b2, m2, second);
    if (first < enough) next = push(room, next, a1, b1, m1, first);
  } else {
    if (first < enough) next = push(room, next, a1, b1, m1, first);
    if (second < enough) next = push(room, next, a2, b2, m2, second);
  }
  return next;
};

/** Whether a node of A (0), of B (1) or of the motion (2) makes the pair's bound loosest. */
const loosest = (search: Search, a: number, b: number, m: number): 0 | 1 | 2 => {
  const boxesA = search.a.tree.boxes;
  const boxesB = search.b.tree.boxes;
  const { data } = search.motion;
  const i = a * NODE;
  const j = b * NODE;
  const sizeA =
    int(search.a.tree.next, a) < 0
      ? -1
      : real(boxesA, i + 3) + real(boxesA, i + 4) + real(boxesA, i + 5);
  const sizeB =
    int(search.b.tree.next, b) < 0
      ? -1
      : real(boxesB, j + 3) + real(boxesB, j + 4) + real(boxesB, j + 5);
  const group = int(search.motion.sweep, m) < 0;
  const sizeM = (group ? GROUP_WEIGHT : 1) * widening(boxesA, a, data, m);
  if (sizeA < 0 && sizeB < 0) return 2;
  if (sizeM > sizeA && sizeM > sizeB) return 2;
  return sizeA >= sizeB ? 0 : 1;
};

/**
 * Branch and bound over both trees and the motion for the least distance below `near.best`, to
 * within `slack`. Afterwards no configuration is nearer than min(near.best, near.floor).
 */
export const searchTrees = (search: Search): void => {
  const { room, near, slack, motion } = search;
  const nextA = search.a.tree.next;
  const nextB = search.b.tree.next;
  const { root } = motion;
  let steps = 0;
  const whole = boxGap(search.a.tree.boxes, 0, search.b.tree.boxes, 0, motion.data, root);
  let top = push(room, 0, 0, 0, root, whole);
  while (top > 0) {
    top--;
    const bound = real(room.bounds, top);
    const a = int(room.stack, 3 * top);
    const b = int(room.stack, 3 * top + 1);
    const m = int(room.stack, 3 * top + 2);
    if (bound >= near.best - slack || steps++ > MOST) {
      if (bound < near.floor) near.floor = Math.max(0, bound);
      continue;
    }
    room.visited++;
    const rightA = int(nextA, a);
    const rightB = int(nextB, b);
    let halve: 0 | 1 | 2 = 2;
    if (rightA < 0 && rightB < 0) {
      const reach = real(search.a.tree.boxes, a * NODE + 6);
      if (comparePieces(search, ~rightA, ~rightB, m, reach)) {
        if (near.best <= 0) return;
        continue;
      }
    } else halve = loosest(search, a, b, m);
    if (halve === 0) top = pushTwo(search, top, a + 1, rightA, b, b, m, m);
    else if (halve === 1) top = pushTwo(search, top, a, a, b + 1, rightB, m, m);
    else if (split(motion, m)) {
      top = pushTwo(search, top, a, a, b, b, int(motion.first, m), int(motion.second, m));
    } else near.floor = Math.min(near.floor, Math.max(0, bound));
  }
};

/**
 * Compares one pair of pieces at one configuration before a search, so that the search starts
 * with a near distance: where the bodies were nearest the last time is a good guess.
 */
export const searchFrom = (
  { room, a, b, motion, near }: Search,
  hint: {
    readonly pieceA: number;
    readonly pieceB: number;
    readonly sweep: number;
    readonly t: number;
  },
): void => {
  if (hint.sweep >= Math.max(motion.a.length, 1)) return;
  poseOf(motion, hint.sweep, hint.t, room.pose);
  place(room.a, a, hint.pieceA, room.pose, 0);
  place(room.b, b, hint.pieceB, IDENTITY_POSE, 0);
  distance(room.gjk, room.a, room.b, Infinity, near.normal);
  if (room.gjk.upper < near.best) {
    keep(near, room.gjk, hint.sweep, hint.t, hint.pieceA, hint.pieceB);
  }
};
