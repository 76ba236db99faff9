import { real } from './flat.ts';
import type { Axis } from './likeness.ts';
import { poseAt, relativePose, sweepOf, track, type Motion, type Sweep } from './motion.ts';
import { POSE } from './placed.ts';
import { distinctSweeps, SAME, STILL } from './relative.ts';

/**
 * Sweeps of two bodies that are left when those are dropped in which both do, as seen in a mirror,
 * what they did in an earlier one: for bodies that are their own mirror images in the planes at right
 * angles to these axes of theirs, the rest says all.
 */
export interface Fold {
  readonly one: Axis;
  readonly other: Axis;
  readonly sweeps: readonly number[];
}

/** What two motions have to say. */
export interface Ways {
  /** The sweeps in which not both bodies do what they did before. */
  readonly distinct: readonly number[];
  /** The mirrors that leave fewest of them, if any does. */
  readonly fold?: Fold;
}

const AXES = [0, 1, 2] as const;
const ENDS = 2 * POSE;

/** Whether the ends of a sweep tell all of it: one body at least stands, and the other glides. */
const isPlain = (a: Sweep | undefined, b: Sweep | undefined): boolean => {
  const [one, other] = [a?.kind ?? 'still', b?.kind ?? 'still'];
  return one !== 'course' && other !== 'course' && (one === 'still' || other === 'still');
};

/** The poses of a as seen from b at both ends of some sweeps. */
const endsOf = (a: Motion | undefined, b: Motion | undefined, sweeps: readonly number[]) => {
  const ends = new Float64Array(sweeps.length * ENDS);
  sweeps.forEach((sweep, i) => {
    const [one, other] = [sweepOf(a, sweep), sweepOf(b, sweep)];
    const [first, second] = [one ? track(one) : STILL, other ? track(other) : STILL];
    relativePose(poseAt(first, 0), poseAt(second, 0), ends, i * ENDS);
    relativePose(poseAt(first, 1), poseAt(second, 1), ends, i * ENDS + POSE);
  });
  return ends;
};

/**
 * The signs that the mirrors of both bodies give the numbers of a pose: M goes to S M T and the
 * origin to S o, with T the mirror of the moving body and S that of the one it is seen from.
 */
const signsOf = (one: Axis, other: Axis): Float64Array =>
  Float64Array.from({ length: POSE }, (_, k) => {
    const [row, column] = k < 9 ? [Math.floor(k / 3), k % 3] : [k - 9, -1];
    return (row === other ? -1 : 1) * (column === one ? -1 : 1);
  });

const areMirrored = (ends: Float64Array, i: number, j: number, signs: Float64Array): boolean => {
  // Origins first: they differ most.
  for (let k = ENDS - 1; k >= 0; k--) {
    const sign = real(signs, k % POSE);
    if (Math.abs(real(ends, i * ENDS + k) - sign * real(ends, j * ENDS + k)) > SAME) return false;
  }
  return true;
};

const foldAt = (
  ends: Float64Array,
  sweeps: readonly number[],
  plain: readonly boolean[],
  one: Axis,
  other: Axis,
): Fold => {
  const signs = signsOf(one, other);
  const kept: number[] = [];
  for (let i = 0; i < sweeps.length; i++) {
    if (!plain[i] || !kept.some((j) => plain[j] && areMirrored(ends, i, j, signs))) kept.push(i);
  }
  return { one, other, sweeps: kept.map((i) => sweeps[i] ?? 0) };
};

/** What two motions have to say, `a` as seen from `b`. */
export const waysOf = (a: Motion | undefined, b: Motion | undefined): Ways => {
  const distinct = distinctSweeps(a, b);
  if (distinct.length < 2) return { distinct };
  const ends = endsOf(a, b, distinct);
  const plain = distinct.map((sweep) => isPlain(sweepOf(a, sweep), sweepOf(b, sweep)));
  let fold: Fold | undefined;
  for (const one of AXES) {
    for (const other of AXES) {
      const found = foldAt(ends, distinct, plain, one, other);
      if (found.sweeps.length < (fold?.sweeps.length ?? distinct.length)) fold = found;
    }
  }
  return fold ? { distinct, fold } : { distinct };
};
