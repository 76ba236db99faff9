import { createAim, type Aim } from './aim.ts';
import { grown, real } from './flat.ts';
import { NEAR } from './near.ts';
import { createGjk, type Gjk } from './gjk.ts';
import { createLook, type Look } from './look.ts';
import { createPlaced, type Placed } from './placed.ts';

/** Room for one search after another; holds no results between them. */
export interface Room {
  readonly gjk: Gjk;
  readonly a: Placed;
  readonly b: Placed;
  readonly pose: Float64Array;
  readonly aimed: Aim;
  readonly back: Aim;
  readonly bound: Float64Array;
  readonly look: Look;
  readonly near: Nearest;
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
  aimed: createAim(2),
  back: createAim(1),
  bound: new Float64Array(6),
  look: createLook(),
  near: createNearest(),
  stack: new Int32Array(3 * 1024),
  bounds: new Float64Array(1024),
  compared: 0,
  visited: 0,
});

/** The nearest configuration found so far and what is proved about the rest. */
export interface Nearest {
  /** Distance of the nearest points found, or the limit when none is nearer, mm. */
  best: number;
  /** What is proved to be so far apart need not be looked into, mm: `best` less what may be left. */
  enough: number;
  /** Nothing set aside is nearer than this. */
  floor: number;
  found: boolean;
  sweep: number;
  t: number;
  /** Nearest points of the moving and the still body, in the still one's coordinates. */
  readonly points: Float64Array;
  /** Unit direction from the still one's nearest point to the moving one's; zero when unknown. */
  readonly normal: Float64Array;
  /** Tree nodes of the pieces they lie on: where a search of nearly the same bodies starts. */
  leafA: number;
  leafB: number;
}

/** How exactly a distance is asked for. */
export interface Exactness {
  /** Width of the result that is good enough, mm. */
  readonly slack: number;
  /** Distance that is asked of the pair, mm: beyond it a share may be left. Infinity for none. */
  readonly required: number;
}

/**
 * Share of what is more than NEAR beyond what is asked that need not be told. Sliding bodies that
 * keep far apart are nearly as near in many places, and telling which is nearest to the micron took
 * half of all searches; nobody needs it.
 */
const SHARE = 1 / 20;

/** What has to be proved of all else when something is found `best` mm apart. */
export const enoughOf = (best: number, { slack, required }: Exactness): number => {
  const far = best - required - NEAR;
  return SHARE * far > slack ? required + NEAR + (1 - SHARE) * far : best - slack;
};

/** Where a search has to begin so that it proves `within` mm when it finds nothing. */
export const limitOf = (within: number, { slack, required }: Exactness): number => {
  const far = (within - required - NEAR) / (1 - SHARE);
  return SHARE * far > slack ? required + NEAR + far : within + slack;
};

const createNearest = (): Nearest => ({
  best: Infinity,
  enough: Infinity,
  floor: Infinity,
  found: false,
  sweep: 0,
  t: 0,
  points: new Float64Array(6),
  normal: new Float64Array(3),
  leafA: 0,
  leafB: 0,
});

/** Nothing found yet; distances of `limit` mm and more do not matter. */
export const nothingNearer = (near: Nearest, limit: number, exactness: Exactness): Nearest => {
  near.best = limit;
  near.enough = enoughOf(limit, exactness);
  near.floor = limit;
  near.found = false;
  near.normal.fill(0);
  return near;
};

/** Puts a pair with the bound in `room.bound[of]` on the stack. */
export const push = (
  room: Room,
  top: number,
  a: number,
  b: number,
  m: number,
  of: number,
): number => {
  if (top >= room.bounds.length) {
    room.stack = grown(room.stack, new Int32Array(2 * room.stack.length));
    room.bounds = grown(room.bounds, new Float64Array(2 * room.bounds.length));
  }
  room.stack[3 * top] = a;
  room.stack[3 * top + 1] = b;
  room.stack[3 * top + 2] = m;
  room.bounds[top] = real(room.bound, of);
  return top + 1;
};
