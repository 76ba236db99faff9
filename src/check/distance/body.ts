import { fail, ok, type Result } from '../../core/result.ts';
import { problem, type Issue } from '../../core/issue.ts';
import { text } from '../../text/index.ts';
import {
  isRigid,
  poseAt,
  stands,
  sweepOf,
  track,
  turnOf,
  WIDEST_TURN,
  type Motion,
  type Sweep,
} from './motion.ts';
import { isMirrorImage } from './likeness.ts';
import { relativeMotion, type Relative } from './relative.ts';
import { createRoom, type Room } from './room.ts';
import type { Solid } from './solid.ts';
import { waysOf, type Ways } from './ways.ts';

const words = text.check.distance;

/** A thing that takes up room: its solids stand in one frame, which its motion carries. */
export interface Body {
  readonly name: string;
  readonly solids: readonly Solid[];
  /** How far the true surface may stand outside the solids, mm (chords of faceted rounds). */
  readonly chordError: number;
  /** Absent: stands still in world coordinates. Bodies that move as one share the same array. */
  readonly motion?: Motion;
}

/**
 * What may be kept from one check to the next: room to work in and the relative motions
 * already built. Its owner throws it away when it likes; nothing in it changes a result.
 */
export interface Workspace {
  readonly room: Room;
  readonly motions: Map<object, Map<object, Known>>;
  readonly sound: Map<Motion, readonly Issue[]>;
  /** Where two solids were nearest the last time they were compared. */
  readonly hints: Map<Solid, Map<Solid, Hint>>;
}

/** What is known of two motions: built when first asked for, of all sweeps and of those that a fold leaves. */
interface Known {
  readonly ways: Ways;
  whole?: Relative;
  folded?: Relative;
}

/** Tree nodes of the nearest pieces, and the moment. */
export interface Hint {
  readonly leafA: number;
  readonly leafB: number;
  readonly sweep: number;
  readonly t: number;
}

/** A workspace of its own, or one that works in the room of others, of which each waits for the other. */
export const createWorkspace = (room: Room = createRoom()): Workspace => ({
  room,
  motions: new Map(),
  sound: new Map(),
  hints: new Map(),
});

/** What a sweep of two bodies is called: by the first one, unless that one stands. */
export const labelOf = (a: Body, b: Body, sweep: number): string => {
  const [first, second] = stands(a.motion) ? [b, a] : [a, b];
  return (sweepOf(first.motion, sweep) ?? sweepOf(second.motion, sweep))?.label ?? '';
};

/** Stands for "does not move" as a key. */
const NOWHERE: Motion = [];

const knownOf = ({ motions }: Workspace, { motion: a }: Body, { motion: b }: Body): Known => {
  const [keyA, keyB] = [a ?? NOWHERE, b ?? NOWHERE];
  const from = motions.get(keyA) ?? new Map<object, Known>();
  const last = from.get(keyB);
  if (last) return last;
  const found = { ways: waysOf(a, b) };
  motions.set(keyA, from.set(keyB, found));
  return found;
};

/** The fold of two motions, where both bodies are the mirror images that it needs. */
const foldOf = ({ fold }: Ways, a: Body, b: Body): Ways['fold'] =>
  fold && isMirrorImage(a.solids, fold.one) && isMirrorImage(b.solids, fold.other)
    ? fold
    : undefined;

/** The sweeps that say all of two bodies: of equal and of mirrored ones the first. */
export const sweepsOf = (work: Workspace, a: Body, b: Body): readonly number[] => {
  const { ways } = knownOf(work, a, b);
  const fold = foldOf(ways, a, b);
  return fold ? fold.kept.map((place) => ways.distinct[place] ?? 0) : ways.distinct;
};

/** The motion of a as seen from b over the sweeps that say all of it, built once a workspace. */
export const relativeOf = (work: Workspace, a: Body, b: Body): Relative => {
  const known = knownOf(work, a, b);
  const fold = foldOf(known.ways, a, b);
  if (fold) return (known.folded ??= relativeMotion(known.ways, fold.kept));
  return (known.whole ??= relativeMotion(known.ways));
};

const NONE: readonly Issue[] = [];

const sweepIssues = (name: string, sweep: Sweep): readonly Issue[] => {
  const ends = track(sweep);
  const at = (): string => `${name} ${sweep.label}`.trim();
  if (!isRigid(poseAt(ends, 0)) || !isRigid(poseAt(ends, 1))) {
    return [problem('pose-not-rigid', name, words.notRigid(at()))];
  }
  if (sweep.kind === 'still') return NONE;
  if (sweep.kind === 'glide') {
    const turned = turnOf(ends);
    return turned <= WIDEST_TURN
      ? NONE
      : [problem('turn-too-wide', name, words.turnTooWide(at(), turned, WIDEST_TURN))];
  }
  const rates = [sweep.travel, sweep.turn, sweep.bend ?? 0, sweep.twist ?? 0];
  return rates.every((rate) => rate >= 0 && rate < Infinity)
    ? NONE
    : [problem('rate-not-bounded', name, words.notBounded(at()))];
};

const motionIssues = (work: Workspace, { name, motion }: Body): readonly Issue[] => {
  if (!motion) return NONE;
  const known = work.sound.get(motion);
  if (known) return known;
  const found =
    motion.length === 0
      ? [problem('motion-empty', name, words.motionEmpty(name))]
      : motion.flatMap((sweep) => sweepIssues(name, sweep));
  work.sound.set(motion, found);
  return found;
};

/** What is wrong with a body by itself. */
const bodyIssues = (work: Workspace, body: Body): readonly Issue[] => {
  const { name, solids, chordError } = body;
  const moved = motionIssues(work, body);
  if (solids.length > 0 && chordError >= 0 && chordError < Infinity) return moved;
  return [
    ...(solids.length > 0 ? [] : [problem('body-empty', name, words.bodyEmpty(name))]),
    ...(chordError >= 0 && chordError < Infinity
      ? []
      : [problem('chord-error', name, words.chordError(name, chordError))]),
    ...moved,
  ];
};

const COMPARABLE = ok(null);

/** Whether two bodies can be compared at all; says what is missing where not. */
export const comparable = (work: Workspace, a: Body, b: Body): Result<null> => {
  const issues = [...bodyIssues(work, a), ...bodyIssues(work, b)];
  const counts = [a.motion?.length ?? 1, b.motion?.length ?? 1] as const;
  if (!stands(a.motion) && !stands(b.motion) && counts[0] !== counts[1]) {
    issues.push(problem('motions-differ', a.name, words.motionsDiffer(a.name, b.name, ...counts)));
  }
  if (a.solids.some(isPlane) && b.solids.some(isPlane)) {
    issues.push(problem('both-unbounded', a.name, words.bothUnbounded(a.name, b.name)));
  }
  return issues.length > 0 ? fail(...issues) : COMPARABLE;
};

const isPlane = (solid: Solid): boolean => solid.kind === 'plane';
