import { describe, expect, it } from 'vitest';
import type { CheckResult } from '../../src/check/result.ts';
import type { Fixture } from '../../src/family/index.ts';
import { dialRanges } from '../../src/make/free-range/dials.ts';

// Gaps of an invented fixture: what may move is the gap less what is asked less a micron, by hand.
const gap = (id: string, found: number | null, atLeast: number, passed = true): CheckResult => ({
  id,
  label: id,
  kind: 'clearance',
  passed,
  unit: 'mm',
  found,
  atLeast,
  basis: '',
  message: '',
  fix: '',
});

const reading = { key: 'setoff', label: 'Step to belt' };
const fixture = {
  moves: { setoff: ['step', 'stops'] },
  settings: [{ readings: [reading] }],
} as unknown as Fixture;

const freeOf = (checks: readonly CheckResult[]) =>
  dialRanges(fixture, checks).map(({ label, free, check }) => ({ label, free, check }));

describe('how far a reading may be off', () => {
  it('is the least room of what it moves to what it does not, less the bound of the gaps', () => {
    const checks = [
      gap('clearance/step/belt', 3.2, 3),
      gap('clearance/rest/stops', 1.15, 1),
      gap('clearance/nose/belt', 0.01, 0),
    ];
    const [only] = freeOf(checks);
    expect(only).toMatchObject({ label: 'Step to belt', check: 'clearance/rest/stops' });
    expect(only?.free).toBeCloseTo(0.149, 12);
  });

  it('does not ask what moves together, what is to touch, and ranges', () => {
    const checks = [
      gap('clearance/step/belt', 5, 3),
      gap('clearance/step/stops', 0.02, 0),
      gap('contact/step/nose', 0, 0),
      gap('clearance/step/belt/left', 0.5, 0.4),
    ];
    expect(freeOf(checks)[0]?.free).toBeCloseTo(1.999, 12);
    expect(freeOf(checks.slice(1))).toEqual([]);
  });

  it('is nothing within the bound, and not known where a gap fails or was not computed', () => {
    expect(freeOf([gap('clearance/step/belt', 3.0005, 3)])[0]?.free).toBe(0);
    for (const bad of [
      gap('clearance/step/rest', 0.5, 1, false),
      gap('clearance/step/rest', null, 1),
    ])
      expect(freeOf([gap('clearance/step/belt', 9, 3), bad])[0]).toMatchObject({
        free: null,
        check: 'clearance/step/rest',
      });
  });
});
