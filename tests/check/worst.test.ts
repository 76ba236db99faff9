import { describe, expect, it } from 'vitest';
import { answerAll, clear } from '../../src/check/answers.ts';
import { rangeCheck } from '../../src/check/assembly-range.ts';
import { worstOf } from '../../src/check/assembly-result.ts';
import type { CheckResult } from '../../src/check/result.ts';
import type { SetUp } from '../../src/check/set-up.ts';
import { blockMesh, body } from './shapes.ts';

const terms = { id: 'x', label: 'X', basis: '', fix: 'Mend it.' };

describe('a number held to limits', () => {
  it.each([null, NaN, Infinity, -Infinity])(
    'has failed where it is %s, whatever is asked',
    (found) => {
      for (const limits of [{ atLeast: 1 }, { atMost: 1 }, { atLeast: 0, atMost: 2 }, {}])
        expect(rangeCheck({ ...terms, ...limits, found })).toMatchObject({
          passed: false,
          found: null,
          fix: 'Mend it.',
        });
    },
  );

  it('holds at its limits and fails a hair beyond them', () => {
    const passed = (found: number): boolean =>
      rangeCheck({ ...terms, atLeast: 1, atMost: 2, found }).passed;
    for (const found of [1, 1.5, 2]) expect(passed(found)).toBe(true);
    for (const found of [1 - 1e-6, 2 + 1e-6]) expect(passed(found)).toBe(false);
  });
});

const result = (over: Partial<CheckResult>): CheckResult => ({
  ...terms,
  kind: 'clearance',
  passed: true,
  unit: 'mm',
  found: 5,
  atLeast: 1,
  message: '',
  ...over,
});

/** Every order of some results. */
const orders = <T>(list: readonly T[]): T[][] =>
  list.length < 2
    ? [[...list]]
    : list.flatMap((one, i) =>
        orders(list.filter((_, k) => k !== i)).map((rest) => [one, ...rest]),
      );

describe('the worst of several results', () => {
  it.each<[string, CheckResult, CheckResult[]]>([
    ['the least margin', result({ found: 2 }), [result({}), result({ found: 9 })]],
    ['the one that failed', result({ found: 0.5, passed: false }), [result({ found: 1 })]],
    [
      'the one that failed by most',
      result({ found: 0.2, passed: false }),
      [result({ found: 0.5, passed: false }), result({})],
    ],
    [
      'the one that could not be computed',
      result({ found: null, passed: false }),
      [result({ found: -3, passed: false }), result({})],
    ],
    // Not proved, though what was found would do: it counts before all that has passed.
    ['the one that was not proved', result({ found: 4, passed: false }), [result({ found: 1 })]],
    ['the nearest to an upper limit', result({ atMost: 5.5 }), [result({ atMost: 9 }), result({})]],
  ])('is %s, whichever comes first', (_, worst, others) => {
    for (const order of orders([worst, ...others])) expect(worstOf(order)).toBe(worst);
  });
});

describe('a question asked of several set-ups', () => {
  const wall = body('wall', [{ kind: 'mesh', mesh: blockMesh([0, 0, 0], [10, 10, 10]) }]);
  const at = (x: number) =>
    body('block', [{ kind: 'mesh', mesh: blockMesh([x, 0, 0], [x + 10, 10, 10]) }]);
  const setUp = (x: number): SetUp => ({
    asked: [clear('block', 'wall', 1, 'Move it.')],
    bodies: new Map([
      ['wall', wall],
      ['block', at(x)],
    ]),
    told: { names: {}, pose: () => ({ setting: String(x) }) },
  });

  it('is answered by the nearest of them, in any order', () => {
    for (const order of orders([10.4, 13, 30])) {
      const [found, ...others] = answerAll(order.map(setUp));
      expect(others).toEqual([]);
      expect(found).toMatchObject({ passed: false, pose: { setting: '10.4' } });
      expect(found?.found).toBeCloseTo(0.4, 2);
    }
    for (const order of orders([12, 13, 30]))
      expect(answerAll(order.map(setUp))[0]).toMatchObject({
        passed: true,
        pose: { setting: '12' },
      });
  });
});
