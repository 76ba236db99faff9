import { ok, type Result } from '../../core/result.ts';
import { problem, type Issue } from '../../core/issue.ts';
import { isSameFrame, localise, shift, type Frame } from '../../geometry/frame.ts';
import { length3, scale3, type Vec3 } from '../../geometry/vector.ts';
import { text } from '../../text/index.ts';
import { labelOf, sweepsOf, type Body, type Workspace } from './body.ts';
import { clearance } from './clearance.ts';
import type { Clearance } from './told.ts';
import { AT_REST, poseAt, stands, sweepOf, track, type Sweep } from './motion.ts';
import { distinctSweeps } from './ways.ts';

const words = text.check.distance;

/** Where a contact has to lie: a block in the coordinates that body `b`'s motion carries. */
export interface Region {
  readonly frame: Frame;
  readonly size: Vec3;
}

/** An intended contact and what proves it. */
export interface TouchRule {
  readonly kind: 'touch';
  readonly a: string;
  readonly b: string;
  /** Largest gap and largest overlap, mm. */
  readonly tolerance: number;
  /** The nearest points must lie in it: make it as large as the faces that meet. */
  readonly region?: Region;
  /**
   * World direction in which `a` comes off `b`: moved by the tolerance that way, a must no
   * longer meet b, anywhere in the motion. It bounds the depth of the overlap.
   */
  readonly apart?: Vec3;
  /** Instead of a direction: the volume (mm^3) they may share, measured by `overlapVolume`. */
  readonly volume?: number;
}

/** Shared volume (mm^3) of two bodies at one configuration; undefined when not computable. */
export type OverlapVolume = (
  a: Body,
  b: Body,
  poses: { readonly a: Frame; readonly b: Frame },
) => number | undefined;

const standing = (body: Body, sweep: number, t: number): Body => {
  const at = sweepOf(body.motion, sweep);
  if (!at) return body;
  return {
    ...body,
    motion: [{ kind: 'still', label: at.label, pose: poseAt(track(at), t) }],
  };
};

const shiftSweep = (sweep: Sweep, by: Vec3): Sweep => {
  if (sweep.kind === 'still') return { ...sweep, pose: shift(sweep.pose, by) };
  if (sweep.kind === 'glide') {
    return { ...sweep, from: shift(sweep.from, by), to: shift(sweep.to, by) };
  }
  return { ...sweep, pose: (t) => shift(sweep.pose(t), by) };
};

/** The body moved off by a constant way, in world coordinates. */
export const shiftBody = (body: Body, by: Vec3): Body => {
  const { motion = AT_REST } = body;
  return { ...body, motion: motion.map((sweep) => shiftSweep(sweep, by)) };
};

const inRegion = ({ frame, size }: Region, p: Vec3, tolerance: number): boolean => {
  const local = localise(frame, p);
  return local.every((x, k) => Math.abs(x) <= (size[k as 0 | 1 | 2] as number) / 2 + tolerance);
};

/** The pose in which a sweep starts or ends; a course's is not told without running it. */
const endOf = (sweep: Sweep | undefined, t: 0 | 1): Frame | undefined => {
  if (sweep?.kind === 'glide') return t === 0 ? sweep.from : sweep.to;
  return sweep?.kind === 'still' ? sweep.pose : undefined;
};

const samePose = (a: Frame | undefined, b: Frame | undefined): boolean =>
  a !== undefined && b !== undefined && isSameFrame(a, b);

/** The share of its tolerance within which it does not matter how near a contact is. */
const CLOSE = 1 / 4;

/**
 * Every place at which the contact is looked at: both ends of every sweep, but for a
 * start where the sweep before has just ended.
 */
const places = (a: Body, b: Body, sweeps: readonly number[]): { sweep: number; t: number }[] => {
  if (a.motion === b.motion) return [{ sweep: 0, t: 0 }];
  const joined = (sweep: number): boolean =>
    sweep > 0 &&
    [a, b].every(
      ({ motion }) =>
        stands(motion) ||
        samePose(endOf(sweepOf(motion, sweep - 1), 1), endOf(sweepOf(motion, sweep), 0)),
    );
  return sweeps.flatMap((sweep) => {
    const moves = [a, b].some((body) => (sweepOf(body.motion, sweep)?.kind ?? 'still') !== 'still');
    if (!moves) return [{ sweep, t: 0 }];
    return (joined(sweep) ? [1] : [0, 1]).map((t) => ({ sweep, t }));
  });
};

/**
 * Proves an intended contact: closed within the tolerance at both ends of every sweep, there in
 * the declared region, and never deeper than the tolerance on the whole way between. What was
 * not shown comes back as issues; the clearance is that of the worst place.
 */
export const touch = (
  work: Workspace,
  a: Body,
  b: Body,
  rule: TouchRule,
  overlapVolume?: OverlapVolume,
): Result<{ clearance: Clearance; issues: readonly Issue[] }> => {
  const path = `${a.name}/${b.name}`;
  const issues: Issue[] = [];
  const within = rule.tolerance * 10 + 1;
  let worst: Clearance | undefined;
  let shared = 0;
  // In a mirror the region might be another one.
  const sweeps = rule.region ? distinctSweeps(a.motion, b.motion) : sweepsOf(work, a, b);
  for (const { sweep, t } of places(a, b, sweeps)) {
    const along = rule.apart ?? [0, 0, 0];
    const result = clearance(a, b, {
      at: { sweep, t },
      within,
      work,
      along,
      touching: rule.tolerance * CLOSE,
    });
    if (!result.ok) return result;
    const found = result.value;
    const label = labelOf(a, b, sweep);
    const at = words.where(label);
    const open = found.state === 'beyond' ? Infinity : found.gap + found.error;
    const before = !worst ? -1 : worst.state === 'beyond' ? Infinity : worst.gap + worst.error;
    if (!worst || open > before) worst = found;
    if (found.state === 'beyond' || open > rule.tolerance) {
      const amount =
        found.state === 'beyond' ? words.openBeyond(found.beyond) : words.openAmount(open);
      issues.push(
        problem(
          'contact-open',
          path,
          words.notTouching(a.name, b.name, amount, rule.tolerance, at),
        ),
      );
      continue;
    }
    if (rule.region) {
      const local = localise(found.at.poseB, found.pointB);
      if (!inRegion(rule.region, local, rule.tolerance)) {
        issues.push(problem('contact-elsewhere', path, words.touchesElsewhere(a.name, b.name, at)));
      }
    }
    if (rule.volume !== undefined) {
      const volume = overlapVolume?.(a, b, { a: found.at.poseA, b: found.at.poseB });
      shared = Math.max(shared, volume ?? Infinity);
    }
  }
  const shallow =
    rule.apart !== undefined
      ? comesApart(work, a, b, rule.apart, rule.tolerance)
      : ok(rule.volume !== undefined && shared <= rule.volume);
  if (!shallow.ok) return shallow;
  if (!shallow.value) {
    issues.push(
      problem('contact-too-deep', path, words.touchTooDeep(a.name, b.name, rule.tolerance, '')),
    );
  }
  return ok({ clearance: worst ?? { state: 'beyond', certified: true, beyond: 0 }, issues });
};

/** Surfaces nearer than this meet, mm: nothing farther apart is looked at for it. */
const MEETING = 1e-6;

/**
 * Whether two bodies meet anywhere in their motion. A search that may stop at its usual slack of a
 * micron can end with two points that near on surfaces that cross, and then calls them apart with
 * no gap: asked more finely, and without what the chords take off, it cannot.
 */
export const meets = (
  work: Workspace,
  a: Body,
  b: Body,
  along: Vec3 = [0, 0, 0],
): Result<boolean> => {
  const chords = a.chordError + b.chordError;
  const result = clearance(a, b, { within: MEETING - chords, slack: MEETING, work, along });
  if (!result.ok) return result;
  const { value } = result;
  if (value.state !== 'apart') return ok(value.state === 'hit');
  return ok(value.gap + chords <= MEETING);
};

/** Whether a moved off b by the tolerance keeps clear of it over the whole motion. */
export const comesApart = (
  work: Workspace,
  a: Body,
  b: Body,
  apart: Vec3,
  tolerance: number,
): Result<boolean> => {
  const length = length3(apart);
  if (!(length > 0)) return ok(false);
  const by = scale3(apart, tolerance / length);
  // Bodies carried as one need a place of their own, or the shift would carry both.
  const [x, y] = a.motion === b.motion ? [standing(a, 0, 0), standing(b, 0, 0)] : [a, b];
  const met = meets(work, shiftBody(x, by), y, apart);
  return met.ok ? ok(!met.value) : met;
};
