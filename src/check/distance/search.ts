import { aim, highStillTo, lowMovingTo, turnRound, type Probed } from './aim.ts';
import { barGapTo, boxGapTo, turnedGapTo, widening } from './bounds.ts';
import type { Hint } from './body.ts';
import { int, real } from './flat.ts';
import { distance } from './gjk.ts';
import { lookAnew, roomAlong } from './look.ts';
import { ROUND } from './pieces.ts';
import { clearPlaced, IDENTITY_POSE, placeCopy, type Placed } from './placed.ts';
import {
  END_POSE,
  firstOf,
  FROM,
  JOINED,
  moment,
  poseOf,
  secondOf,
  split,
  START_POSE,
  STRAY,
  STRAY_PER,
  STRIDE,
  sweepAt,
  TO,
  type Relative,
} from './relative.ts';
import { enoughOf, push, type Exactness, type Nearest, type Room } from './room.ts';
import type { TreeSolid } from './solid.ts';
import { NODE } from './tree.ts';

/** One search: the moving body a and the still one b, the motion of a as seen from b. */
export interface Search extends Exactness {
  readonly room: Room;
  readonly a: TreeSolid;
  readonly b: TreeSolid;
  /** Both solids again, with how far their nodes reach. */
  readonly moving: Probed;
  readonly still: Probed;
  readonly motion: Relative;
  readonly near: Nearest;
  /** Bodies nearer than this are not looked at further, mm. */
  readonly touching: number;
}

/**
 * How much sooner many sweeps are halved than boxes of the same width: of 4, 10 and 25 this one
 * visits the fewest pairs in the checks of the shipped designs.
 */
const GROUP_WEIGHT = 25;

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
const keep = (search: Search, sweep: number, t: number, a: number, b: number): void => {
  const { near } = search;
  const { gjk } = search.room;
  near.best = gjk.upper;
  near.enough = enoughOf(near.best, search);
  near.found = true;
  near.sweep = sweep;
  near.t = t;
  near.points.set(gjk.witness);
  if (gjk.upper > 0) {
    for (let k = 0; k < 3; k++) {
      near.normal[k] = (real(gjk.witness, k) - real(gjk.witness, k + 3)) / gjk.upper;
    }
  }
  near.leafA = a;
  near.leafB = b;
};

/** How far the points of node a may stray from straight ways in motion node m. */
const strayOf = (search: Search, a: number, m: number): number => {
  const { data } = search.motion;
  const at = m * STRIDE;
  const far = real(search.a.tree.boxes, a * NODE + 6);
  return real(data, at + STRAY) + real(data, at + STRAY_PER) * far;
};

/**
 * Compares two pieces over a single motion node. Returns false when the node must be halved
 * for the wanted slack; otherwise the pair is done.
 */
const compareLeaves = (search: Search, leafA: number, leafB: number, m: number): boolean => {
  const { room, a: solidA, b: solidB, motion, near } = search;
  const { gjk, a, b, pose } = room;
  const [pa, pb] = [~int(solidA.tree.next, leafA), ~int(solidB.tree.next, leafB)];
  const at = m * STRIDE;
  const stray = strayOf(search, leafA, m);
  room.compared++;
  place(a, solidA, pa, motion.data, at + START_POSE);
  if (real(motion.data, at + TO) > real(motion.data, at + FROM)) {
    placeCopy(a, solidA.pieces, pa, motion.data, at + END_POSE);
  }
  place(b, solidB, pb, IDENTITY_POSE, 0);
  distance(gjk, a, b, near.enough + stray, near.normal);
  const lower = gjk.lower - stray;
  if (lower >= near.enough) {
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
  if (gjk.upper < near.best) keep(search, sweep, t, leafA, leafB);
  if (near.best > 0 && lower < near.enough && !exact) return false;
  if (lower < near.floor) near.floor = lower;
  return true;
};

/**
 * Of two halves the one with the less room and the nearer middle is looked into first: boxes that
 * slide past each other leave the same room all along, and what is found early bounds the rest.
 */
const NEARER = 1 / 2;

/** Places in `room.bound`: the rooms of two halves, what they are put in order by, two to work in. */
const ORDER = 2;
const BOXES = 4;

/** Raises the room of a half to that of its boxes, where that is asked for; sets what it is ordered by. */
const byBoxes = (search: Search, half: 0 | 1, a: number, b: number, m: number): void => {
  const { near, motion } = search;
  const { bound } = search.room;
  let off = real(bound, half);
  if (off < near.enough) {
    const { boxes: boxesA } = search.a.tree;
    const { boxes: boxesB } = search.b.tree;
    boxGapTo(bound, BOXES, boxesA, a, boxesB, b, motion.data, m);
    if (real(bound, BOXES) > off) off = real(bound, BOXES);
    if (off < near.enough) {
      turnedGapTo(bound, BOXES, boxesA, a, boxesB, b, motion.data, m);
      if (real(bound, BOXES) > off) off = real(bound, BOXES);
    }
    const leaf = int(search.b.tree.next, b);
    const round = leaf < 0 ? int(search.b.pieces.start, ~leaf) : 0;
    if (round < 0 && off < near.enough) {
      barGapTo(bound, BOXES, boxesA, a, search.b.pieces.rounds, ~round * ROUND, motion.data, m);
      if (real(bound, BOXES) > off) off = real(bound, BOXES);
    }
    bound[half] = off;
    bound[ORDER + half] = off + NEARER * real(bound, BOXES + 1);
  }
  if (off >= near.enough && off < near.floor) near.floor = off;
};

/** Whether a direction is not known. */
const none = (direction: Float64Array): boolean =>
  direction[0] === 0 && direction[1] === 0 && direction[2] === 0;

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
  const { room, near, moving, still, motion } = search;
  const { aimed, bound, back } = room;
  const { data } = motion;
  const { direction } = room.gjk;
  if (none(direction)) {
    // Along no way at all everything lies in one place, and only straying takes it off.
    bound[0] = -strayOf(search, a1, m1);
    bound[1] = -strayOf(search, a2, m2);
  } else {
    // Where faces run side by side, the direction that separated the last pieces separates all of
    // these at once, which boxes along the axes cannot when the bodies are turned.
    aim(aimed, data, m1, direction);
    turnRound(back, direction);
    lowMovingTo(bound, 0, moving, a1, aimed, data, m1);
    highStillTo(bound, 2, still, b1, back);
    if (m2 !== m1) aim(aimed, data, m2, direction);
    if (a2 === a1 && m2 === m1) bound[1] = real(bound, 0);
    else lowMovingTo(bound, 1, moving, a2, aimed, data, m2);
    if (b2 === b1) bound[3] = real(bound, 2);
    else highStillTo(bound, 3, still, b2, back);
    bound[0] = real(bound, 0) - real(bound, 2);
    bound[1] = real(bound, 1) - real(bound, 3);
  }
  const nearer = real(bound, 0) <= real(bound, 1);
  byBoxes(search, 0, a1, b1, m1);
  byBoxes(search, 1, a2, b2, m2);
  const one = real(bound, 0) < near.enough;
  const two = real(bound, 1) < near.enough;
  let next = top;
  if (search.touching > 0 ? nearer : real(bound, ORDER) <= real(bound, ORDER + 1)) {
    if (two) next = push(room, next, a2, b2, m2, 1);
    if (one) next = push(room, next, a1, b1, m1, 0);
  } else {
    if (one) next = push(room, next, a1, b1, m1, 0);
    if (two) next = push(room, next, a2, b2, m2, 1);
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
  const group = sweepAt(search.motion, m) < 0;
  const sizeM = (group ? GROUP_WEIGHT : 1) * widening(boxesA, a, data, m);
  if (sizeA < 0 && sizeB < 0) return 2;
  if (sizeM > sizeA && sizeM > sizeB) return 2;
  return sizeA >= sizeB ? 0 : 1;
};

/**
 * Whether one direction separates all below two nodes by more than what is still looked for: that
 * of the nearest points so far, or else that of the last pieces. Bodies that slide along each
 * other's faces are done with at once, where boxes and single pieces would be looked into one by
 * one. It may on a shorter way, where straying from a straight one alone is against it.
 */
const keepsOff = (
  search: Search,
  a: number,
  b: number,
  m: number,
): 'yes' | 'on half the way' | 'no' => {
  const { room, near, slack, motion } = search;
  const direction = near.found ? near.normal : room.gjk.direction;
  if (none(direction)) return 'no';
  const stray = strayOf(search, a, m);
  const straight = roomAlong(
    room,
    search.moving,
    a,
    search.still,
    b,
    direction,
    motion.data,
    m,
    slack / 4,
    near.enough,
    stray,
  );
  const { enough } = near;
  const off = straight - stray;
  if (off < enough) return straight < enough ? 'no' : 'on half the way';
  if (off < near.floor) near.floor = off;
  return 'yes';
};

/**
 * Branch and bound over both trees and the motion for the least distance below `near.best`, to
 * within `slack`. Afterwards no configuration is nearer than min(near.best, near.floor). Bodies that
 * are to touch are held against one piece of the still one first, that of a leaf where they may well
 * do: a face is often touched all along.
 */
export const searchTrees = (search: Search, leaf = 0): void => {
  const { room, near, motion, touching } = search;
  const nextA = search.a.tree.next;
  const nextB = search.b.tree.next;
  const { root } = motion;
  let steps = 0;
  if (near.found && near.best <= touching) {
    near.floor = Math.min(near.floor, 0);
    return;
  }
  boxGapTo(room.bound, 0, search.a.tree.boxes, 0, search.b.tree.boxes, 0, motion.data, root);
  lookAnew(room.look);
  let top = push(room, 0, 0, 0, root, 0);
  if (touching > 0 && leaf > 0) {
    boxGapTo(room.bound, 0, search.a.tree.boxes, 0, search.b.tree.boxes, leaf, motion.data, root);
    top = push(room, top, 0, leaf, root, 0);
  }
  while (top > 0) {
    top--;
    const bound = real(room.bounds, top);
    const a = int(room.stack, 3 * top);
    const b = int(room.stack, 3 * top + 1);
    const m = int(room.stack, 3 * top + 2);
    if (bound >= near.enough || steps++ > MOST) {
      if (bound < near.floor) near.floor = Math.max(0, bound);
      continue;
    }
    room.visited++;
    const rightA = int(nextA, a);
    const rightB = int(nextB, b);
    let halve: 0 | 1 | 2 = 2;
    if (rightA < 0 && rightB < 0) {
      if (compareLeaves(search, a, b, m)) {
        if (near.best <= touching) {
          near.floor = Math.min(near.floor, 0);
          return;
        }
        continue;
      }
    } else {
      // What is to touch will be found near: nothing keeps it off until it has been.
      const off = touching > 0 && !near.found ? 'no' : keepsOff(search, a, b, m);
      if (off === 'yes') continue;
      if (off === 'no') halve = loosest(search, a, b, m);
    }
    if (halve === 0) top = pushTwo(search, top, a + 1, rightA, b, b, m, m);
    else if (halve === 1) top = pushTwo(search, top, a, a, b + 1, rightB, m, m);
    else if (split(motion, m)) {
      top = pushTwo(search, top, a, a, b, b, firstOf(motion, m), secondOf(motion, m));
    } else near.floor = Math.min(near.floor, Math.max(0, bound));
  }
};

/**
 * Compares one pair of pieces at one configuration before a search, so that the search starts
 * with a near distance: where the bodies were nearest the last time is a good guess.
 */
export const searchFrom = (search: Search, hint: Hint): void => {
  const { room, a, b, motion, near } = search;
  if (hint.sweep >= Math.max(motion.a.length, 1)) return;
  poseOf(motion, hint.sweep, hint.t, room.pose);
  place(room.a, a, ~int(a.tree.next, hint.leafA), room.pose, 0);
  place(room.b, b, ~int(b.tree.next, hint.leafB), IDENTITY_POSE, 0);
  distance(room.gjk, room.a, room.b, Infinity, near.normal);
  if (room.gjk.upper < near.best) {
    keep(search, hint.sweep, hint.t, hint.leafA, hint.leafB);
  }
};
