import { problem, type Issue } from '../../core/issue.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import { text } from '../../text/index.ts';
import { createWorkspace, type Body, type Workspace } from './body.ts';
import { clearance } from './clearance.ts';
import type { Clearance } from './told.ts';
import { overlapVolume } from './overlap-volume.ts';
import { comesApart, touch, type OverlapVolume, type TouchRule } from './touch.ts';

const words = text.check.distance;

/** A pair that must keep clear by `gap` mm over all configurations. */
export interface ClearRule {
  readonly kind: 'clear';
  readonly a: string;
  readonly b: string;
  readonly gap: number;
}

/** A pair that may touch or keep apart, but overlap nowhere deeper than a tolerance. */
export interface SeatRule {
  readonly kind: 'seat';
  readonly a: string;
  readonly b: string;
  /** Deepest overlap, mm, along `apart`: the world direction in which `a` comes off `b`. */
  readonly tolerance: number;
  readonly apart: Vec3;
}

export type PairRule = ClearRule | TouchRule | SeatRule;

export interface CheckOptions {
  /** Gaps up to this are told; larger ones are proved larger, mm. */
  readonly within: number;
  /** See ClearanceOptions. */
  readonly slack?: number;
  readonly work?: Workspace;
  /** Instead of the kernel's own. */
  readonly overlapVolume?: OverlapVolume;
}

interface Asked extends CheckOptions {
  readonly work: Workspace;
}

/** What was found for one pair. A pair that could not be computed has issues and no clearance. */
export interface PairCheck {
  readonly a: string;
  readonly b: string;
  readonly rule: PairRule;
  readonly pass: boolean;
  readonly clearance?: Clearance | undefined;
  /** Shared volume of a hit, mm^3, where it can be computed: only for what has failed, on demand. */
  readonly shared?: (() => number | undefined) | undefined;
  readonly issues: readonly Issue[];
}

/** What is wrong with a clearance that has to be `required` mm at least. */
const clearIssues = (a: Body, b: Body, found: Clearance, required: number): Issue[] => {
  const path = `${a.name}/${b.name}`;
  if (found.state === 'beyond') {
    if (found.beyond >= required) return [];
    const near = words.tooNear(a.name, b.name, found.beyond, required, '');
    return [problem('clearance-not-proved', path, near)];
  }
  const where = words.where(found.at.label);
  if (found.state === 'hit') {
    return found.how === 'inside'
      ? [problem('body-inside', path, words.inside(a.name, b.name, where))]
      : [problem('bodies-cross', path, words.hits(a.name, b.name, required, where))];
  }
  if (found.gap >= required) return [];
  const near = words.tooNear(a.name, b.name, found.gap, required, where);
  return [problem('clearance-too-small', path, near)];
};

type Pair = Pick<PairCheck, 'a' | 'b' | 'rule'>;

const notComputed = ({ a, b, rule }: Pair, issues: readonly Issue[]): PairCheck => ({
  a,
  b,
  rule,
  pass: false,
  issues,
});

/** What was found, with the volume that two bodies share where they run into each other. */
const found = (
  { a, b, rule }: Pair,
  [one, other]: readonly [Body, Body],
  clearance: Clearance,
  issues: readonly Issue[],
  measure: OverlapVolume = overlapVolume,
): PairCheck => ({
  a,
  b,
  rule,
  pass: issues.length === 0,
  clearance,
  shared:
    issues.length > 0 && clearance.state === 'hit'
      ? () => measure(one, other, { a: clearance.at.poseA, b: clearance.at.poseB })
      : undefined,
  issues,
});

const checkClear = (a: Body, b: Body, rule: ClearRule, options: Asked): PairCheck => {
  const pair = { a: a.name, b: b.name, rule };
  const { slack, work } = options;
  const within = Math.max(options.within, rule.gap);
  const result = clearance(a, b, { within, required: rule.gap, work, slack });
  if (!result.ok) return notComputed(pair, result.issues);
  const issues = clearIssues(a, b, result.value, rule.gap);
  return found(pair, [a, b], result.value, issues, options.overlapVolume);
};

const checkSeat = (a: Body, b: Body, rule: SeatRule, options: Asked): PairCheck => {
  const pair = { a: a.name, b: b.name, rule };
  const { within, work } = options;
  const result = clearance(a, b, { within, work });
  if (!result.ok) return notComputed(pair, result.issues);
  const free = comesApart(work, a, b, rule.apart, rule.tolerance);
  if (!free.ok) return notComputed(pair, free.issues);
  const deep = words.tooDeep(a.name, b.name, rule.tolerance);
  const issues = free.value ? [] : [problem('overlap-too-deep', `${a.name}/${b.name}`, deep)];
  return found(pair, [a, b], result.value, issues, options.overlapVolume);
};

const checkTouch = (a: Body, b: Body, rule: TouchRule, options: Asked): PairCheck => {
  const pair = { a: a.name, b: b.name, rule };
  const measure = options.overlapVolume ?? overlapVolume;
  const result = touch(options.work, a, b, rule, measure);
  if (!result.ok) return notComputed(pair, result.issues);
  const { clearance, issues } = result.value;
  return found(pair, [a, b], clearance, issues, measure);
};

/**
 * Checks two bodies, in the order in which their rule speaks of them, against it. What could not be
 * computed has not passed.
 */
export const checkPair = (a: Body, b: Body, rule: PairRule, options: CheckOptions): PairCheck => {
  const asked = { ...options, work: options.work ?? createWorkspace() };
  if (rule.kind === 'clear') return checkClear(a, b, rule, asked);
  return rule.kind === 'seat' ? checkSeat(a, b, rule, asked) : checkTouch(a, b, rule, asked);
};
