import type { CheckResult } from '../../check/result.ts';
import type { Fixture } from '../../family/index.ts';

/**
 * How far what a reading moves may be shifted, in any direction, before a clearance to what it
 * does not move can fail. Certified: a gap of d mm beyond what is asked allows a rigid shift of d.
 */
export interface DialRange {
  readonly reading: string;
  readonly label: string;
  /** Names of the bodies that move together, as the checks name them. */
  readonly bodies: readonly string[];
  /** mm, to either side; null where a clearance was not computed or fails already. */
  readonly free: number | null;
  /** The check that would fail first. */
  readonly check: string;
}

/** By how much a reported gap may exceed the true one, mm: the clearance kernel's own bound. */
const OVER = 0.001;

/** The two bodies of a clearance, from its key "clearance/nose/belt". */
const pairOf = ({ id }: CheckResult): readonly [string, string] | undefined => {
  const [kind, a, b, ...rest] = id.split('/');
  return kind === 'clearance' && a !== undefined && b !== undefined && rest.length === 0
    ? [a, b]
    : undefined;
};

const spare = ({ passed, found, atLeast }: CheckResult): number =>
  passed && found !== null && atLeast !== undefined ? Math.max(0, found - atLeast - OVER) : -1;

/**
 * The certified range of every reading that moves parts as one. The blade is not among them
 * unless it is clamped to them: where it settles anew, its own change is in the facts.
 */
export const dialRanges = (fixture: Fixture, checks: readonly CheckResult[]): DialRange[] =>
  Object.entries(fixture.moves ?? {}).flatMap(([reading, bodies]): DialRange[] => {
    const label = fixture.settings
      .flatMap(({ readings }) => readings)
      .find(({ key }) => key === reading)?.label;
    const across = checks.filter((check) => {
      const pair = pairOf(check);
      return pair && bodies.includes(pair[0]) !== bodies.includes(pair[1]);
    });
    const [first] = [...across].sort((a, b) => spare(a) - spare(b));
    if (label === undefined || !first) return [];
    const free = spare(first);
    return [{ reading, label, bodies, free: free < 0 ? null : free, check: first.id }];
  });
