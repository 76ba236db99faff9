import { ok, type Result } from '../../core/result.ts';
import { dot3, length3, type Vec3 } from '../../geometry/vector.ts';
import { roomAround } from './around.ts';
import { comparable, createWorkspace, type Body, type Hint, type Workspace } from './body.ts';
import { findInside } from './enclosed.ts';
import { pointAt } from './flat.ts';
import { stands } from './motion.ts';
import { searchPlane } from './planes.ts';
import { reachOf } from './reach.ts';
import { enoughOf, limitOf, nothingNearer, type Exactness, type Nearest } from './room.ts';
import { searchFrom, searchTrees } from './search.ts';
import type { Solid, TreeSolid } from './solid.ts';
import { located, poseOfBody, type Clearance, type Found, type Hit } from './told.ts';
import { nearestFirst, viewOf, type Instant, type SolidPair, type View } from './view.ts';

export interface ClearanceOptions {
  /** Distances of this and more need not be told, mm (default: all are told). */
  readonly within?: number;
  /** How far below the true distance the answer may stay, mm (default 0.001). */
  readonly slack?: number | undefined;
  /**
   * What they must keep apart, mm (default: nothing is known). Of what is more than 2 mm beyond it
   * a twentieth is left untold.
   */
  readonly required?: number;
  /** They are to touch: nearer than this (mm) it does not matter how near, or whether they cross. */
  readonly touching?: number;
  /** A world direction in which a may well keep off b: it changes no result, a good one is quick. */
  readonly along?: Vec3;
  /** At this moment alone. */
  readonly at?: Instant;
  /** Kept between calls, it saves building relative motions again. */
  readonly work?: Workspace;
}

export const SLACK = 0.001;

/**
 * Points a search along a direction of the world as a body sees it where its motion starts, of unit
 * length, for rooms are measured along it; along none where none is given.
 */
const point = (search: Float64Array, body: Body, way: Vec3 | undefined, sign: 1 | -1): void => {
  if (!way) {
    search.fill(0);
    return;
  }
  const { x, y, z } = poseOfBody(body, 0, 0);
  const scale = sign / (length3(way) || 1);
  search[0] = scale * dot3(x, way);
  search[1] = scale * dot3(y, way);
  search[2] = scale * dot3(z, way);
};

/** A question as its pairs of solids are searched, below the limit that `near` holds. */
interface Asked {
  readonly work: Workspace;
  readonly view: View;
  readonly near: Nearest;
  readonly exactness: Exactness;
  readonly options: ClearanceOptions;
}

/** Two trees. */
const searchPair = (asked: Asked, first: TreeSolid, second: TreeSolid): void => {
  const { work, near, exactness, options } = asked;
  const { still, swapped, motion } = asked.view;
  const { at, touching = 0, along } = options;
  // A direction that was given is tried like that of the last pieces.
  point(work.room.gjk.direction, still, along, swapped ? -1 : 1);
  const search = {
    slack: exactness.slack,
    required: exactness.required,
    room: work.room,
    a: first,
    b: second,
    moving: { solid: first, reach: reachOf(first) },
    still: { solid: second, reach: reachOf(second) },
    motion,
    near,
    touching,
  };
  const hint = work.hints.get(first)?.get(second);
  // Where they were nearest is a guess about the pieces, at whatever moment.
  if (hint) searchFrom(search, at ? { ...hint, sweep: at.sweep, t: at.t } : hint);
  searchTrees(search, hint?.leafB);
  if (near.found) {
    const { leafA, leafB, sweep, t } = near;
    const hints = work.hints.get(first) ?? new Map<Solid, Hint>();
    hints.set(second, { leafA, leafB, sweep, t });
    work.hints.set(first, hints);
  }
};

/** Both trees of a pair, the moving one first; none where one is a half space. */
const treesOf = (
  { one, other }: SolidPair,
  { swapped }: View,
): [TreeSolid, TreeSolid] | undefined => {
  if (one.kind !== 'tree' || other.kind !== 'tree') return undefined;
  return swapped ? [other, one] : [one, other];
};

const proudOf = (solid: Solid): number => (solid.kind === 'tree' ? solid.proud : 0);

/**
 * A tree and a half space; the view in which the nearest points are told, for the tree is the moving
 * one. None for two half spaces.
 */
const searchHalfSpace = (asked: Asked, a: Body, b: Body, pair: SolidPair): View | undefined => {
  const { work, view, near, exactness, options } = asked;
  const { one, other } = pair;
  const [tree, plane] = one.kind === 'tree' ? [one, other] : [other, one];
  if (tree.kind !== 'tree' || plane.kind !== 'plane') return undefined;
  const swapped = tree === other;
  const seen = swapped === view.swapped ? view : viewOf(work, a, b, swapped, options.at);
  searchPlane(work.room, tree, plane, seen.motion, near, exactness.slack);
  return seen;
};

/**
 * Least distance between two bodies over every configuration of their motions, as a certified
 * lower bound; chord errors of both are subtracted. Bodies that cross, and bodies of which one
 * lies wholly inside the other, are a hit.
 *
 * Fails where a body is empty, a motion is not rigid, or two motions do not belong together.
 */
export const clearance = (a: Body, b: Body, options: ClearanceOptions = {}): Result<Clearance> => {
  const work = options.work ?? createWorkspace();
  const sound = comparable(work, a, b);
  if (!sound.ok) return sound;
  const { within = Infinity, touching = 0, at } = options;
  const { room } = work;
  const chords = a.chordError + b.chordError;
  if (within < Infinity && !at && roomAround(a, b) >= within + chords)
    return ok({ state: 'beyond', certified: true, beyond: within });
  const exactness = {
    slack: options.slack ?? SLACK,
    required: (options.required ?? Infinity) + chords,
  };
  let limit = limitOf(within + chords, exactness);
  let proud = 0;
  let found: Found | undefined;
  const hit = (how: Hit['how'], where: Found): Result<Clearance> =>
    ok({ state: 'hit', how, certified: true, gap: -chords, error: 0, ...where });
  // What the search before this one was aimed along would change the way, and so the last digits.
  room.gjk.direction.fill(0);
  // A still body on the moving side would see the other one's straight ways as curves.
  const rests = !a.motion || (stands(a.motion) && !stands(b.motion));
  const view = viewOf(work, a, b, rests, at);
  const { pairs, rest } = nearestFirst(a, b, view, enoughOf(limit, exactness), room.bound);
  let floor = Math.min(limit, rest);
  const asked = { work, view, near: room.near, exactness, options };
  for (const pair of pairs) {
    if (pair.room >= enoughOf(limit, exactness)) {
      // So are all that follow.
      floor = Math.min(floor, pair.room);
      break;
    }
    const near = nothingNearer(room.near, limit, exactness);
    const trees = treesOf(pair, view);
    if (trees) searchPair(asked, ...trees);
    const seen = trees ? view : searchHalfSpace(asked, a, b, pair);
    if (seen === undefined) continue;
    proud = Math.max(proud, proudOf(pair.one), proudOf(pair.other));
    floor = Math.min(floor, near.floor);
    if (near.found) {
      const points = [pointAt(near.points, 0), pointAt(near.points, 3)] as const;
      found = located(a, b, near.sweep, near.t, points, seen);
      limit = near.best;
    }
    if (found && limit > 0 && limit <= touching) {
      floor = 0;
      break;
    }
    const inside =
      trees && limit > 0 && pair.room <= 0 ? findInside(...trees, view.motion) : undefined;
    if (inside) {
      const { sweep, t, point } = inside;
      return hit('inside', located(a, b, sweep, t, [point, point], view));
    }
    if (found && limit <= 0) return hit('crossing', found);
  }
  // All that was left aside is told alike, so that the number does not depend on how it was sought.
  const told = enoughOf(limit, exactness);
  const least = Math.min(floor, told < limit - exactness.slack ? told : limit);
  if (!found)
    return ok({ state: 'beyond', certified: true, beyond: Math.min(within, least - chords) });
  return ok({
    state: 'apart',
    certified: true,
    gap: least - chords,
    error: limit - least + chords + 2 * proud,
    ...found,
  });
};
