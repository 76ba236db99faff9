import { describe, expect, it } from 'vitest';
import type { CheckResult } from '../../../src/check/result.ts';

/** A change to what one check looks at. */
export interface Sabotage<Q> {
  /** The check that must notice. */
  readonly id: string;
  /** Changes what the check measures so that it finds `by` more, or less where that is negative. */
  readonly change: (q: Q, by: number, found: number) => Q;
  /** Why what is found jumps as soon as anything is changed: then nothing is borne. */
  readonly jumps?: string;
  /** Which others must notice it too, and why. */
  readonly also?: { readonly ids: readonly string[]; readonly why: string };
}

/** Share of its margin that a check has to bear, and what beyond it must be noticed. */
const BORNE = 0.9;
const BEYOND = 0.01;

const failing = (results: readonly CheckResult[]): string[] =>
  results.filter(({ passed }) => !passed).map(({ id }) => id);

/** How far a check is from its limits, and which way is beyond them. */
const waysOf = (
  check: CheckResult | undefined,
): { readonly to: number; readonly out: number }[] => {
  const { found = null, atLeast, atMost } = check ?? {};
  if (found === null) return [];
  return [
    ...(atLeast === undefined ? [] : [{ to: Math.min(0, atLeast - found), out: -1 }]),
    ...(atMost === undefined ? [] : [{ to: Math.max(0, atMost - found), out: 1 }]),
  ];
};

/** A question of a family, turned by one number until a check finds what it is to find. */
export const turnedUntil = <Q>(
  checks: (q: Q) => readonly CheckResult[],
  { id, found }: { readonly id: string; readonly found: number },
  turned: (by: number) => Q,
  [low, high]: readonly [number, number],
): Q => {
  const excess = (by: number): number =>
    (checks(turned(by)).find((one) => one.id === id)?.found ?? NaN) - found;
  let [a, b] = [low, high];
  const rises = excess(b) > excess(a);
  for (let i = 0; i < 44; i += 1) {
    const middle = (a + b) / 2;
    if (excess(middle) > 0 === rises) b = middle;
    else a = middle;
  }
  return turned((a + b) / 2);
};

/**
 * Every check of a sound question is used up to nine tenths of its margin, where it must pass, and
 * a hundredth beyond it, where it must fail, and none other but those named with a reason. The cases
 * have to hold every check there is.
 */
export const describeSabotage = <Q>(
  name: string,
  sound: Q,
  checks: (q: Q) => readonly CheckResult[],
  cases: readonly Sabotage<Q>[],
): void => {
  describe(`numbers of ${name} at their limits`, () => {
    const before = checks(sound);

    it('are all tried, and sound before', () => {
      expect(failing(before)).toEqual([]);
      expect(cases.map(({ id }) => id).sort()).toEqual(before.map(({ id }) => id).sort());
    });

    it.each(cases)('$id', ({ id, change, jumps, also }) => {
      const check = before.find((one) => one.id === id);
      const found = check?.found ?? NaN;
      const ways = waysOf(check);
      expect(ways.length).toBeGreaterThan(0);
      for (const { to, out } of ways) {
        if (jumps === undefined) {
          const borne = checks(change(sound, BORNE * to, found));
          expect(borne.find((one) => one.id === id)?.found).toBeCloseTo(found + BORNE * to, 6);
          expect(failing(borne)).not.toContain(id);
        }
        const noticed = failing(checks(change(sound, to + BEYOND * out, found)));
        expect(noticed).toContain(id);
        expect(noticed.filter((one) => one !== id && !also?.ids.includes(one))).toEqual([]);
      }
    });
  });
};
