import { WORLD } from '../../geometry/frame.ts';
import { real } from './flat.ts';
import type { Axis } from './likeness.ts';
import {
  poseAt,
  relativePose,
  sweepOf,
  track,
  tracksOf,
  type Motion,
  type Sweep,
  type Track,
} from './motion.ts';
import { POSE } from './placed.ts';

/**
 * Sweeps of two bodies that are left when those are dropped in which both do, as seen in a mirror,
 * what they did in an earlier one: for bodies that are their own mirror images in the planes at right
 * angles to these axes of theirs, the rest says all.
 */
export interface Fold {
  readonly one: Axis;
  readonly other: Axis;
  /** Places in the list of distinct sweeps. */
  readonly kept: readonly number[];
}

/** What two motions have to say, the first one as seen from the second. */
export interface Ways {
  readonly a: readonly Track[];
  readonly b: readonly Track[];
  /** The sweeps in which not both bodies do what they did before. */
  readonly distinct: readonly number[];
  /** The poses of the first body as seen from the second at both ends of those, 12 numbers each. */
  readonly ends: Float64Array;
  /** The mirrors that leave fewest of them, if any does. */
  readonly fold?: Fold;
}

/** Numbers a sweep in `ends`. */
export const ENDS = 2 * POSE;
/** Origins and axes nearer than this are one and the same pose, mm. */
export const SAME = 1e-10;

export const STILL: Track = track({ kind: 'still', label: '', pose: WORLD });

/** What two sweeps that carry a body alike have in common. */
const memberOf = (sweep: Sweep | undefined): unknown =>
  sweep?.kind === 'still' ? sweep.pose : sweep;

/** The sweeps of two motions in which not both bodies do what they did before. */
export const distinctSweeps = (a: Motion | undefined, b: Motion | undefined): number[] => {
  if (a !== undefined && a === b) return [0];
  const count = Math.max(a?.length ?? 1, b?.length ?? 1);
  const seen = new Map<unknown, Set<unknown>>();
  const distinct: number[] = [];
  for (let i = 0; i < count; i++) {
    const [one, other] = [memberOf(sweepOf(a, i)), memberOf(sweepOf(b, i))];
    const partners = seen.get(one) ?? new Set<unknown>();
    seen.set(one, partners);
    if (partners.has(other)) continue;
    partners.add(other);
    distinct.push(i);
  }
  return distinct;
};

const AXES = [0, 1, 2] as const;

/**
 * The signs that the mirrors of both bodies give the numbers of a pose: M goes to S M T and the
 * origin to S o, with T the mirror of the moving body and S that of the one it is seen from.
 */
const MIRRORS = AXES.flatMap((one) =>
  AXES.map((other) => ({
    one,
    other,
    signs: Float64Array.from({ length: POSE }, (_, k) => {
      const [row, column] = k < 9 ? [Math.floor(k / 3), k % 3] : [k - 9, -1];
      return (row === other ? -1 : 1) * (column === one ? -1 : 1);
    }),
  })),
);

/** Whether the ends of a sweep tell all of it: one body at least stands, and the other glides. */
const isPlain = ({ sweep: a }: Track, { sweep: b }: Track): boolean =>
  a.kind !== 'course' && b.kind !== 'course' && (a.kind === 'still' || b.kind === 'still');

const areMirrored = (ends: Float64Array, i: number, j: number, signs: Float64Array): boolean => {
  for (let k = 0; k < ENDS; k++) {
    const sign = real(signs, k % POSE);
    if (Math.abs(real(ends, i * ENDS + k) - sign * real(ends, j * ENDS + k)) > SAME) return false;
  }
  return true;
};

/** How far the origin is away at the start of a sweep: the same for one seen in a mirror. */
const awayOf = (ends: Float64Array, i: number): number => {
  const at = i * ENDS + 9;
  return Math.hypot(real(ends, at), real(ends, at + 1), real(ends, at + 2));
};

/** The fold that leaves fewest sweeps. */
const foldOf = ({ a, b, distinct, ends }: Ways): Fold | undefined => {
  const plain = distinct.map((sweep) => isPlain(a[sweep] ?? STILL, b[sweep] ?? STILL));
  const away = new Float64Array(distinct.length);
  for (let i = 0; i < away.length; i++) away[i] = awayOf(ends, i);
  /** Earlier sweeps that may be the mirror image of one. */
  const images: number[][] = [];
  for (let i = 0; i < away.length; i++) {
    const found: number[] = [];
    for (let j = 0; plain[i] && j < i; j++) {
      if (plain[j] && Math.abs(real(away, i) - real(away, j)) <= 2 * SAME) found.push(j);
    }
    images.push(found);
  }
  let fold: Fold | undefined;
  if (images.every((found) => found.length === 0)) return fold;
  for (const { one, other, signs } of MIRRORS) {
    const kept: number[] = [];
    images.forEach((found, i) => {
      if (!found.some((j) => areMirrored(ends, i, j, signs) && kept.includes(j))) kept.push(i);
    });
    if (kept.length < (fold?.kept.length ?? distinct.length)) fold = { one, other, kept };
  }
  return fold;
};

/** What two motions have to say, `a` as seen from `b`; of bodies that move as one, nothing. */
export const waysOf = (a: Motion | undefined, b: Motion | undefined): Ways => {
  const together = a !== undefined && a === b;
  const distinct = distinctSweeps(a, b);
  const count = together ? 1 : Math.max(a?.length ?? 1, b?.length ?? 1);
  const through = (motion: Motion | undefined): readonly Track[] => {
    const own = together || !motion ? [STILL] : tracksOf(motion);
    return own.length === count ? own : Array.from({ length: count }, () => own[0] ?? STILL);
  };
  const [one, other] = [through(a), through(b)];
  const ends = new Float64Array(distinct.length * ENDS);
  distinct.forEach((sweep, i) => {
    const [first, second] = [one[sweep] ?? STILL, other[sweep] ?? STILL];
    relativePose(poseAt(first, 0), poseAt(second, 0), ends, i * ENDS);
    if (first.sweep.kind !== 'still' || second.sweep.kind !== 'still')
      relativePose(poseAt(first, 1), poseAt(second, 1), ends, i * ENDS + POSE);
    else ends.copyWithin(i * ENDS + POSE, i * ENDS, i * ENDS + POSE);
  });
  const ways = { a: one, b: other, distinct, ends };
  const fold = foldOf(ways);
  return fold ? { ...ways, fold } : ways;
};
