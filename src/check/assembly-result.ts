import type { Issue } from '../core/issue.ts';
import { QUANTUM } from '../core/units.ts';
import { text } from '../text/index.ts';
import { NEAR, type PairCheck } from './distance/index.ts';
import type { CheckResult } from './result.ts';

const words = text.check.assembly;

/** What a pair check needs to be told to a person. */
export interface PairTerms {
  readonly id: string;
  readonly label: string;
  readonly basis: string;
  readonly fix: string;
  readonly parameter?: string;
  /** Setting, blade and place of a sweep, by its label. */
  readonly pose?: (label: string) => CheckResult['pose'];
}

const limitOf = ({ rule }: PairCheck): Pick<CheckResult, 'atLeast' | 'atMost'> => {
  if (rule.kind === 'clear') return { atLeast: rule.gap };
  return rule.kind === 'touch' ? { atMost: rule.tolerance } : {};
};

const reasons = (issues: readonly Issue[]): string => issues.map((i) => i.message).join(' ');

/** A pair check as a result with numbers, worst pose and nearest points. */
export const pairResult = (pair: PairCheck, terms: PairTerms): CheckResult => {
  const { clearance } = pair;
  const located = clearance && clearance.state !== 'beyond' ? clearance : undefined;
  const gap = !clearance ? null : clearance.state === 'beyond' ? clearance.beyond : clearance.gap;
  // Two that should touch but overlap too far: by how far is not known, and no gap tells it.
  const deep =
    pair.rule.kind === 'touch' && !pair.pass && gap !== null && gap <= pair.rule.tolerance;
  const found = deep ? null : gap;
  const far = pair.rule.kind === 'clear' && (found ?? 0) > pair.rule.gap + NEAR;
  const told = located === undefined ? 'beyond' : far ? 'least' : 'exact';
  const pose = located ? terms.pose?.(located.at.label) : undefined;
  const { id, label, basis, fix, parameter } = terms;
  return {
    id,
    label,
    kind: pair.rule.kind === 'clear' ? 'clearance' : 'contact',
    passed: pair.pass,
    unit: 'mm',
    found,
    ...limitOf(pair),
    basis,
    ...(pose ? { pose } : {}),
    ...(located ? { points: [located.pointA, located.pointB] as const } : {}),
    message: pair.pass
      ? words.pairPassed(label, found, told, pair.rule.kind)
      : reasons(pair.issues),
    fix: pair.pass ? '' : fix,
    ...(parameter === undefined ? {} : { parameter }),
  };
};

/** Less than this is touching within what rounding and chords leave, mm3. */
const NOTHING = 1e-6;

/** A failed result with the volume that the bodies share, where they run into each other. */
export const withShared = (result: CheckResult, shared: PairCheck['shared']): CheckResult => {
  const volume = result.passed ? undefined : shared?.();
  if (volume === undefined || volume < NOTHING) return result;
  return { ...result, shared: volume, message: `${result.message} ${words.shared(volume)}` };
};

/** A check of something that is not there could not be computed: it counts as failed. */
export const notThere = (
  terms: PairTerms,
  kind: CheckResult['kind'],
  missing: readonly string[],
): CheckResult => ({
  id: terms.id,
  label: terms.label,
  kind,
  passed: false,
  unit: 'mm',
  found: null,
  basis: terms.basis,
  message: words.notThere(terms.label, missing),
  fix: terms.fix,
  ...(terms.parameter === undefined ? {} : { parameter: terms.parameter }),
});

/**
 * The worst of several results of one kind: failed before passed, then the least margin. Of equal
 * margins the first counts, equal to within the output grid, so that engines whose last bits
 * differ name the same pose.
 */
export const worstOf = (results: readonly CheckResult[]): CheckResult | undefined => {
  const margin = ({ passed, found, atLeast, atMost }: CheckResult): number => {
    if (found === null) return -Infinity;
    const room = Math.min(
      atLeast === undefined ? Infinity : found - atLeast,
      atMost === undefined ? Infinity : atMost - found,
    );
    return passed ? Math.max(room, 0) : Math.min(room, 0) - 1e6;
  };
  return results.reduce<CheckResult | undefined>(
    (worst, result) => (worst && margin(worst) <= margin(result) + QUANTUM ? worst : result),
    undefined,
  );
};
