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
  readonly clearance?: Clearance;
  /** Shared volume of a hit, mm^3, where it can be computed: only for what has failed, on demand. */
  readonly shared?: () => number | undefined;
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

const checkClear = (a: Body, b: Body, rule: ClearRule, options: Asked): PairCheck => {
  const pair = { a: a.name, b: b.name, rule };
  const { slack, work } = options;
  const result = clearance(a, b, {
    within: Math.max(options.within, rule.gap),
    required: rule.gap,
    work,
    ...(slack === undefined ? {} : { slack }),
  });
  if (!result.ok) return { ...pair, pass: false, issues: result.issues };
  const found = result.value;
  const issues = clearIssues(a, b, found, rule.gap);
  return {
    ...pair,
    pass: issues.length === 0,
    clearance: found,
    ...sharedIn(a, b, found, options.overlapVolume),
    issues,
  };
};

const sharedIn = (
  a: Body,
  b: Body,
  found: Clearance,
  measure: OverlapVolume = overlapVolume,
): Pick<PairCheck, 'shared'> =>
  found.state === 'hit'
    ? { shared: () => measure(a, b, { a: found.at.poseA, b: found.at.poseB }) }
    : {};

const checkSeat = (a: Body, b: Body, rule: SeatRule, { within, work }: Asked): PairCheck => {
  const pair = { a: a.name, b: b.name, rule };
  const result = clearance(a, b, { within, work });
  if (!result.ok) return { ...pair, pass: false, issues: result.issues };
  const free = comesApart(work, a, b, rule.apart, rule.tolerance);
  if (!free.ok) return { ...pair, pass: false, issues: free.issues };
  const path = `${a.name}/${b.name}`;
  const deep = words.tooDeep(a.name, b.name, rule.tolerance);
  const issues = free.value ? [] : [problem('overlap-too-deep', path, deep)];
  const shared = free.value ? {} : sharedIn(a, b, result.value);
  return { ...pair, pass: free.value, clearance: result.value, ...shared, issues };
};

const checkTouch = (a: Body, b: Body, rule: TouchRule, options: Asked): PairCheck => {
  const pair = { a: a.name, b: b.name, rule };
  const measure = options.overlapVolume ?? overlapVolume;
  const result = touch(options.work, a, b, rule, measure);
  if (!result.ok) return { ...pair, pass: false, issues: result.issues };
  const { clearance: found, issues } = result.value;
  const shared = issues.length === 0 ? {} : sharedIn(a, b, found, measure);
  return { ...pair, pass: issues.length === 0, clearance: found, ...shared, issues };
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
