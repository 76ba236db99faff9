import { ok, type Result } from '../../core/result.ts';
import { place, WORLD, type Frame } from '../../geometry/frame.ts';
import { dot3, length3, type Vec3 } from '../../geometry/vector.ts';
import { comparable, createWorkspace, labelOf, type Body, type Workspace } from './body.ts';
import { copy3, real } from './flat.ts';
import { insideSurface } from './inside.ts';
import { applyBack, applyPose, poseAt, stands, sweepOf, track } from './motion.ts';
import { searchPlane } from './planes.ts';
import { reachOf } from './reach.ts';
import { FROM, START_POSE, STRIDE, type Relative } from './relative.ts';
import { enoughOf, limitOf, nothingNearer, type Exactness, type Nearest } from './room.ts';
import { searchFrom, searchTrees } from './search.ts';
import type { TreeSolid } from './solid.ts';
import { nearestFirst, viewOf, type Instant, type View } from './view.ts';

/** A configuration: which sweep, where on it (0 to 1), and both bodies' poses there. */
export interface Moment {
  readonly sweep: number;
  readonly label: string;
  readonly t: number;
  readonly poseA: Frame;
  readonly poseB: Frame;
}

interface Located {
  readonly certified: true;
  /**
   * Never above the true least distance over all configurations by more than 0.001 mm, and
   * below it by `error` at most, mm. Zero or less: they touch, cross, or may within chord errors.
   */
  readonly gap: number;
  readonly error: number;
  readonly at: Moment;
  /** The nearest points there, world coordinates. */
  readonly pointA: Vec3;
  readonly pointB: Vec3;
}

/** They keep apart, this far. */
export interface Apart extends Located {
  readonly state: 'apart';
}

/** They touch or cross, or one is wholly inside the other. */
export interface Hit extends Located {
  readonly state: 'hit';
  readonly how: 'crossing' | 'inside';
}

/** Nowhere nearer than `beyond` mm. */
export interface Beyond {
  readonly state: 'beyond';
  readonly certified: true;
  readonly beyond: number;
}

export type Clearance = Apart | Hit | Beyond;

export interface ClearanceOptions {
  /** Distances of this and more need not be told, mm (default: all are told). */
  readonly within?: number;
  /** How far below the true distance the answer may stay, mm (default 0.001). */
  readonly slack?: number;
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

/** The nearest found over all pairs of solids, in world terms. */
interface Found {
  readonly at: Moment;
  readonly pointA: Vec3;
  readonly pointB: Vec3;
}

const poseOfBody = (body: Body, sweep: number, t: number): Frame => {
  const at = sweepOf(body.motion, sweep);
  return at ? poseAt(track(at), t) : WORLD;
};

const located = (
  a: Body,
  b: Body,
  sweep: number,
  t: number,
  /** Nearest points of the moving and the still body, in the coordinates of the still one. */
  points: readonly [Vec3, Vec3],
  { swapped }: View,
): Found => {
  const poseA = poseOfBody(a, sweep, t);
  const poseB = poseOfBody(b, sweep, t);
  const label = labelOf(a, b, sweep);
  const at = { sweep, label, t, poseA, poseB };
  return swapped
    ? { at, pointA: place(poseA, points[1]), pointB: place(poseA, points[0]) }
    : { at, pointA: place(poseB, points[0]), pointB: place(poseB, points[1]) };
};

const point = (flat: Float64Array, at: number): Vec3 => [
  real(flat, at),
  real(flat, at + 1),
  real(flat, at + 2),
];

/** Where one solid is inside another: a point of it, in the coordinates of the still body. */
interface Inside {
  readonly sweep: number;
  readonly t: number;
  readonly point: Vec3;
}

/**
 * A solid wholly inside the other at the start of some sweep. Called where no surfaces meet on any
 * sweep: then what is inside stays inside.
 */
const findInside = (moving: TreeSolid, still: TreeSolid, motion: Relative): Inside | undefined => {
  const { data } = motion;
  for (const node of motion.whole) {
    const pose = node * STRIDE + START_POSE;
    const told = (p: Vec3): Inside => ({
      sweep: motion.sweep[node] ?? 0,
      t: real(data, node * STRIDE + FROM),
      point: p,
    });
    for (let i = 0; still.surface && i < moving.anchors.length; i += 3) {
      const p = applyPose(data, pose, point(moving.anchors, i));
      if (insideSurface(still, p)) return told(p);
    }
    for (let i = 0; moving.surface && i < still.anchors.length; i += 3) {
      const p = point(still.anchors, i);
      if (insideSurface(moving, applyBack(data, pose, p))) return told(p);
    }
  }
  return undefined;
};

const NO_WAY: Vec3 = [0, 0, 0];
const UNSEEN = new Float64Array(3);

/**
 * A direction of the world as a body sees it where its motion starts, of unit length, for rooms are
 * measured along it; zero for none.
 */
const seenBy = (body: Body, way: Vec3, sign: 1 | -1): Float64Array => {
  if (way === NO_WAY) return UNSEEN;
  const { x, y, z } = poseOfBody(body, 0, 0);
  const scale = sign / (length3(way) || 1);
  return Float64Array.of(scale * dot3(x, way), scale * dot3(y, way), scale * dot3(z, way));
};

/** Two trees, searched below the limit. */
const searchPair = (
  work: Workspace,
  { still, swapped, motion }: View,
  first: TreeSolid,
  second: TreeSolid,
  near: Nearest,
  exactness: Exactness,
  { at, touching = 0, along = NO_WAY }: ClearanceOptions,
): void => {
  // A direction that was given is tried like that of the last pieces.
  copy3(work.room.gjk.direction, seenBy(still, along, swapped ? -1 : 1));
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
    const hints = work.hints.get(first) ?? new WeakMap();
    hints.set(second, { leafA, leafB, sweep, t });
    work.hints.set(first, hints);
  }
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
  const exactness = {
    slack: options.slack ?? SLACK,
    required: (options.required ?? Infinity) + chords,
  };
  let limit = limitOf(within + chords, exactness);
  let proud = 0;
  let found: Found | undefined;
  const hit = (how: Hit['how'], { at: moment, pointA, pointB }: Found): Result<Clearance> =>
    ok({
      state: 'hit',
      how,
      certified: true,
      gap: -chords,
      error: 0,
      at: moment,
      pointA,
      pointB,
    });
  // What the search before this one was aimed along would change the way, and so the last digits.
  copy3(room.gjk.direction, UNSEEN);
  // A still body on the moving side would see the other one's straight ways as curves.
  const rests = !a.motion || (stands(a.motion) && !stands(b.motion));
  const view = viewOf(work, a, b, rests, at);
  const { pairs, rest } = nearestFirst(a, b, view, enoughOf(limit, exactness), room.bound);
  let floor = Math.min(limit, rest);
  for (const { one, other, room: boxed } of pairs) {
    if (boxed >= enoughOf(limit, exactness)) {
      // So are all that follow.
      floor = Math.min(floor, boxed);
      break;
    }
    const near = nothingNearer(room.near, limit, exactness);
    let seen = view;
    if (one.kind === 'tree' && other.kind === 'tree') {
      const [first, second] = view.swapped ? [other, one] : [one, other];
      searchPair(work, view, first, second, near, exactness, options);
      proud = Math.max(proud, one.proud, other.proud);
    } else {
      const [tree, plane] = one.kind === 'tree' ? [one, other] : [other, one];
      if (tree.kind !== 'tree' || plane.kind !== 'plane') continue;
      const swapped = tree === other;
      if (swapped !== view.swapped) seen = viewOf(work, a, b, swapped, at);
      searchPlane(room, tree, plane, seen.motion, near, exactness.slack);
      proud = Math.max(proud, tree.proud);
    }
    floor = Math.min(floor, near.floor);
    if (near.found) {
      const points = [point(near.points, 0), point(near.points, 3)] as const;
      found = located(a, b, near.sweep, near.t, points, seen);
      limit = near.best;
    }
    if (found && limit > 0 && limit <= touching) {
      floor = 0;
      break;
    }
    if (limit > 0 && boxed <= 0 && one.kind === 'tree' && other.kind === 'tree') {
      const [first, second] = view.swapped ? [other, one] : [one, other];
      const inside = findInside(first, second, view.motion);
      if (inside) {
        const { sweep, t, point: p } = inside;
        return hit('inside', located(a, b, sweep, t, [p, p], view));
      }
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
    at: found.at,
    pointA: found.pointA,
    pointB: found.pointB,
  });
};
