import { ok, type Result } from '../../core/result.ts';
import { place, WORLD, type Frame } from '../../geometry/frame.ts';
import { dot3, length3, type Vec3 } from '../../geometry/vector.ts';
import { comparable, createWorkspace, relativeOf, type Body, type Workspace } from './body.ts';
import { boxGap } from './bounds.ts';
import { real } from './flat.ts';
import { insideSurface } from './inside.ts';
import { applyPose, poseAt, track } from './motion.ts';
import { searchPlane } from './planes.ts';
import { reachOf } from './reach.ts';
import { FROM, heldAt, START_POSE, STRIDE, type Relative } from './relative.ts';
import { enoughOf, limitOf, nothingNearer, type Exactness, type Nearest } from './room.ts';
import { searchFrom, searchTrees } from './search.ts';
import type { Solid, TreeSolid } from './solid.ts';

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
  /** At this moment alone: the sweep by its number, and where on it, 0 to 1. */
  readonly at?: { readonly sweep: number; readonly t: number };
  /** Kept between calls, it saves building relative motions again. */
  readonly work?: Workspace;
}

/** The motion of one body as seen from another, as far as it is asked about. */
type Seen = (moving: Body, still: Body) => Relative;

const seenIn = (work: Workspace, { at }: ClearanceOptions): Seen => {
  if (!at) return (moving, still) => relativeOf(work, moving, still);
  const held = new Map<Body, Relative>();
  return (moving, still) => {
    // Of two bodies each is the moving one in one motion only.
    const known = held.get(moving) ?? heldAt(relativeOf(work, moving, still), at.sweep, at.t);
    held.set(moving, known);
    return known;
  };
};

export const SLACK = 0.001;

/** The nearest found over all pairs of solids, in world terms. */
interface Found {
  readonly at: Moment;
  readonly pointA: Vec3;
  readonly pointB: Vec3;
}

const poseOfBody = (body: Body, sweep: number, t: number): Frame => {
  const at = body.motion?.[sweep];
  return at ? poseAt(track(at), t) : WORLD;
};

const located = (
  a: Body,
  b: Body,
  sweep: number,
  t: number,
  /** Nearest points in the coordinates of `seenFrom`. */
  points: readonly [Vec3, Vec3],
  seenFrom: Body,
): Found => {
  const poseA = poseOfBody(a, sweep, t);
  const poseB = poseOfBody(b, sweep, t);
  const view = seenFrom === a ? poseA : poseB;
  const label = a.motion?.[sweep]?.label ?? b.motion?.[sweep]?.label ?? '';
  return {
    at: { sweep, label, t, poseA, poseB },
    pointA: place(view, points[0]),
    pointB: place(view, points[1]),
  };
};

const point = (flat: Float64Array, at: number): Vec3 => [
  real(flat, at),
  real(flat, at + 1),
  real(flat, at + 2),
];

/**
 * A point of `inner` inside the surface of `outer` at the start of some sweep, as seen from
 * outer. Called where no surfaces meet on any sweep: then what is inside stays inside.
 */
const findInside = (
  inner: TreeSolid,
  outer: TreeSolid,
  motion: Relative,
): { sweep: number; t: number; point: Vec3 } | undefined => {
  if (!outer.surface) return undefined;
  if (boxGap(inner.tree.boxes, 0, outer.tree.boxes, 0, motion.data, motion.root) > 0) {
    return undefined;
  }
  for (const node of motion.whole) {
    for (let i = 0; i < inner.anchors.length; i += 3) {
      const p = applyPose(motion.data, node * STRIDE + START_POSE, point(inner.anchors, i));
      if (insideSurface(outer, p))
        return {
          sweep: motion.sweep[node] ?? 0,
          t: real(motion.data, node * STRIDE + FROM),
          point: p,
        };
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

/** One pair of solids, searched below the limit; the moving side and view are chosen here. */
const searchPair = (
  work: Workspace,
  seen: Seen,
  a: Body,
  b: Body,
  solidA: Solid,
  solidB: Solid,
  limit: number,
  exactness: Exactness,
  { at, touching = 0, along = NO_WAY }: ClearanceOptions,
): { near: Nearest; found?: Found } => {
  const near = nothingNearer(limit, exactness);
  // A still body on the moving side would see the other one's straight ways as curves.
  const swap = solidA.kind === 'plane' || (!a.motion && solidB.kind === 'tree');
  const [moving, still] = swap ? [b, a] : [a, b];
  const [first, second] = swap ? [solidB, solidA] : [solidA, solidB];
  const motion = seen(moving, still);
  if (first.kind === 'tree' && second.kind === 'tree') {
    const way = seenBy(still, along, swap ? -1 : 1);
    work.room.gjk.direction.set(way);
    const search = {
      ...exactness,
      room: work.room,
      a: first,
      b: second,
      moving: { solid: first, reach: reachOf(first) },
      still: { solid: second, reach: reachOf(second) },
      motion,
      near,
      touching,
      along: way,
    };
    const hint = work.hints.get(first)?.get(second);
    // Where they were nearest is a guess about the pieces, at whatever moment.
    if (hint) searchFrom(search, { ...hint, ...at });
    searchTrees(search, hint?.leafB);
    if (near.found) {
      const { leafA, leafB, sweep, t } = near;
      const hints = work.hints.get(first) ?? new WeakMap();
      hints.set(second, { leafA, leafB, sweep, t });
      work.hints.set(first, hints);
    }
  } else if (first.kind === 'tree' && second.kind === 'plane') {
    searchPlane(work.room, first, second, motion, near, exactness.slack);
  }
  if (!near.found) return { near };
  const points = [point(near.points, 0), point(near.points, 3)] as const;
  const pair = swap ? ([points[1], points[0]] as const) : points;
  return { near, found: located(a, b, near.sweep, near.t, pair, still) };
};

/** A configuration in which one solid is wholly inside another. */
const searchInside = (
  seen: Seen,
  a: Body,
  b: Body,
  solidA: Solid,
  solidB: Solid,
): Found | undefined => {
  if (solidA.kind !== 'tree' || solidB.kind !== 'tree') return undefined;
  const aInB = findInside(solidA, solidB, seen(a, b));
  if (aInB) return located(a, b, aInB.sweep, aInB.t, [aInB.point, aInB.point], b);
  const bInA = findInside(solidB, solidA, seen(b, a));
  if (bInA) return located(a, b, bInA.sweep, bInA.t, [bInA.point, bInA.point], a);
  return undefined;
};

/** A pair of solids and the room between their boxes; a plane is searched at little cost. */
interface Boxed {
  readonly pair: readonly [Solid, Solid];
  readonly room: number;
}

/** All pairs of solids, those whose boxes come nearest first: what they find bounds the rest. */
const nearestFirst = (seen: Seen, a: Body, b: Body): readonly Boxed[] => {
  const { data, root } = seen(a, b);
  const roomOf = (one: Solid, other: Solid): number =>
    one.kind === 'tree' && other.kind === 'tree'
      ? boxGap(one.tree.boxes, 0, other.tree.boxes, 0, data, root)
      : -Infinity;
  const boxed = a.solids.flatMap((one) =>
    b.solids.map((other): Boxed => ({ pair: [one, other], room: roomOf(one, other) })),
  );
  return boxed.sort((p, q) => (p.room === q.room ? 0 : p.room - q.room));
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
  const seen = seenIn(work, options);
  const within = options.within ?? Infinity;
  const chords = a.chordError + b.chordError;
  const exactness = {
    slack: options.slack ?? SLACK,
    required: (options.required ?? Infinity) + chords,
  };
  let limit = limitOf(within + chords, exactness);
  let floor = limit;
  let proud = 0;
  let found: Found | undefined;
  // What the search before this one was aimed along would change the way, and so the last digits.
  work.room.gjk.direction.fill(0);
  for (const { pair, room } of nearestFirst(seen, a, b)) {
    if (room >= enoughOf(limit, exactness)) {
      // So are all that follow.
      floor = Math.min(floor, room);
      break;
    }
    const [solidA, solidB] = pair;
    const result = searchPair(work, seen, a, b, solidA, solidB, limit, exactness, options);
    floor = Math.min(floor, result.near.floor);
    for (const solid of [solidA, solidB]) {
      if (solid.kind === 'tree') proud = Math.max(proud, solid.proud);
    }
    if (result.found) {
      found = result.found;
      limit = result.near.best;
    }
    if (found && limit > 0 && limit <= (options.touching ?? 0)) {
      floor = 0;
      break;
    }
    if (limit > 0) {
      const inside = searchInside(seen, a, b, solidA, solidB);
      if (inside) {
        const gap = -chords;
        return ok({ state: 'hit', how: 'inside', certified: true, gap, error: 0, ...inside });
      }
    }
    if (found && limit <= 0) {
      const gap = -chords;
      return ok({ state: 'hit', how: 'crossing', certified: true, gap, error: 0, ...found });
    }
  }
  // All that was left aside is told alike, so that the number does not depend on how it was sought.
  const told = enoughOf(limit, exactness);
  const least = Math.min(floor, told < limit - exactness.slack ? told : limit);
  if (!found)
    return ok({ state: 'beyond', certified: true, beyond: Math.min(within, least - chords) });
  const error = limit - least + chords + 2 * proud;
  return ok({ state: 'apart', certified: true, gap: least - chords, error, ...found });
};
