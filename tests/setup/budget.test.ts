import { describe, expect, it } from 'vitest';
import { budget, type Budget, type BudgetQuestion } from '../../src/setup/budget/budget.ts';
import { draw, momentsOf, type Contributor } from '../../src/setup/budget/contributor.ts';
import {
  covarianceOf,
  deviationsOf,
  propagated,
  rootSumSquare,
  sensitivities,
} from '../../src/setup/budget/propagate.ts';
import { seeded } from '../../src/setup/random.ts';

const done = <Id extends string>(question: BudgetQuestion<Id>, draws = 2000): Budget => {
  const result = budget(question, draws, seeded(11));
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join(' '));
  return result.value;
};

const part = (id: string, half: number, rest: Partial<Contributor> = {}): Contributor => ({
  id,
  label: id,
  unit: 'mm',
  nominal: 0,
  minus: half,
  plus: half,
  distribution: 'uniform',
  acts: 'both',
  source: 'test',
  ...rest,
});

describe('published stacks of tolerances', () => {
  // Worked stacks of tool and design pages: mech.toolfusion.net, ficientdesign.com and
  // metricmech.com (the last: inputs published, results computed from them).
  const stacks: readonly [string, readonly number[], number, number][] = [
    ['ten parts of 0.1', Array<number>(10).fill(0.1), 1, 0.316],
    ['five parts of 0.1', Array<number>(5).fill(0.1), 0.5, 0.224],
    ['0.20, 0.10, 0.15', [0.2, 0.1, 0.15], 0.45, 0.269258],
    ['a gap of 0.020', [0.005, 0.005, 0.003, 0.002], 0.015, 0.00794],
    ['a gap of 3.00', [0.1, 0.05, 0.03, 0.05], 0.23, 0.1261],
  ];
  for (const [name, halves, worst, rss] of stacks)
    it(`${name}: worst case and root sum of squares`, () => {
      const signs = halves.map((_, i) => (i === 0 ? 1 : -1));
      expect(Math.abs(rootSumSquare(signs, halves) - rss)).toBeLessThan(
        5e-4 * (rss < 0.1 ? 0.1 : 1),
      );
      const { outputs } = done({
        contributors: halves.map((half, i) => part(`part ${i}`, half)),
        keys: ['edgeThickness'],
        model: (by) => [signs.reduce((sum, sign, i) => sum + sign * (by[`part ${i}`] ?? NaN), 3)],
      });
      expect(outputs[0]?.worst.high).toBeCloseTo(3 + worst, 9);
      expect(outputs[0]?.worst.low).toBeCloseTo(3 - worst, 9);
      expect(outputs[0]?.rootSumSquare).toBeCloseTo(rootSumSquare(signs, halves), 9);
    });
});

describe('the examples of JCGM 100 (GUM)', () => {
  it('H.1, end gauge: combined uncertainty', () => {
    const effects = [25, 16.599, 6.7, 5.8, 3.9, 2.88679];
    const ones = effects.map(() => 1);
    expect(rootSumSquare(ones, effects)).toBeCloseTo(31.66, 2);
  });

  it('H.2, resistance and reactance from correlated readings', () => {
    const inputs = [4.999, 0.019661, 1.04446];
    const model = ([v = NaN, i = NaN, phi = NaN]: readonly number[]): number[] => [
      (v / i) * Math.cos(phi),
      (v / i) * Math.sin(phi),
      v / i,
    ];
    // Current in mA, so that one step of differences suits all three.
    const jacobian = sensitivities(
      ([v = NaN, i = NaN, phi = NaN]) => model([v, i / 1000, phi]),
      [4.999, 19.661, 1.04446],
    );
    const covariance = propagated(
      jacobian ?? [],
      covarianceOf(
        [0.0032, 0.0095, 0.00075],
        [
          [1, -0.36, 0.86],
          [-0.36, 1, -0.65],
          [0.86, -0.65, 1],
        ],
      ),
    );
    const [r, x, z] = model(inputs) as [number, number, number];
    expect(r).toBeCloseTo(127.732, 2);
    expect(x).toBeCloseTo(219.847, 2);
    expect(z).toBeCloseTo(254.26, 2);
    const u = deviationsOf(covariance) as [number, number, number];
    // Published to two digits from unrounded readings, so half a last digit and a little more.
    expect(Math.abs(u[0] - 0.07)).toBeLessThan(0.002);
    expect(Math.abs(u[1] - 0.295)).toBeLessThan(0.006);
    expect(Math.abs(u[2] - 0.236)).toBeLessThan(0.006);
    const correlation = (a: 0 | 1 | 2, b: 0 | 1 | 2): number =>
      (covariance[a]?.[b] ?? NaN) / (u[a] * u[b]);
    expect(correlation(0, 1)).toBeCloseTo(-0.588, 1);
    expect(correlation(0, 2)).toBeCloseTo(-0.485, 1);
    expect(correlation(1, 2)).toBeCloseTo(0.993, 2);
  });
});

describe('spreads', () => {
  const shapes = [
    [0.2, 0.2],
    [0, 0.3],
    [0.1, 0.4],
    [0.3, 0],
  ] as const;

  it('draws what the stated mean and deviation say, inside the range', () => {
    const random = seeded(3);
    for (const distribution of ['uniform', 'triangular', 'normal'] as const)
      for (const [minus, plus] of shapes) {
        const one = part('x', 0, { distribution, minus, plus });
        const { mean, deviation } = momentsOf(one);
        const draws = Array.from({ length: 20000 }, () => draw(one, random));
        const found = draws.reduce((sum, x) => sum + x, 0) / draws.length;
        const spread = Math.sqrt(
          draws.reduce((sum, x) => sum + (x - found) ** 2, 0) / draws.length,
        );
        expect(Math.abs(found - mean)).toBeLessThan(0.03 * deviation);
        expect(Math.abs(spread / deviation - 1)).toBeLessThan(0.03);
        if (distribution !== 'normal')
          expect(draws.every((x) => x >= -minus && x <= plus)).toBe(true);
        else if (minus > 0 && plus > 0) {
          const inside = draws.filter((x) => x >= -minus && x <= plus).length / draws.length;
          expect(Math.abs(inside - 0.95)).toBeLessThan(0.006);
        }
      }
  });

  it('gives the divisors of the GUM for a half width of 1', () => {
    const of = (distribution: Contributor['distribution']): number =>
      momentsOf({ minus: 1, plus: 1, distribution }).deviation;
    expect(of('uniform')).toBeCloseTo(1 / Math.sqrt(3), 12);
    expect(of('triangular')).toBeCloseTo(1 / Math.sqrt(6), 12);
    expect(of('normal')).toBeCloseTo(1 / 1.96, 12);
  });
});

describe('a budget', () => {
  const three = [part('a', 0.3), part('b', 0.1), part('c', 0.05, { distribution: 'normal' })];
  const model: BudgetQuestion<string>['model'] = ({ a = NaN, b = NaN, c = NaN }) => [a + 2 * b - c];

  it('names the dominant contributor and what halving it leaves', () => {
    const [output] = done({ contributors: three, keys: ['angle'], model }, 20000).outputs;
    expect(output?.dominant.id).toBe('a');
    const u = [0.3 / Math.sqrt(3), 0.2 / Math.sqrt(3), 0.05 / 1.96];
    expect(output?.uncertainty).toBeCloseTo(Math.hypot(...u), 9);
    expect(output?.dominant.share).toBeCloseTo((u[0] as number) ** 2 / Math.hypot(...u) ** 2, 9);
    expect(output?.dominant.halved.uncertainty).toBeCloseTo(
      Math.hypot((u[0] as number) / 2, u[1] as number, u[2] as number),
      9,
    );
    expect(output?.dominant.halved.rootSumSquare).toBeCloseTo(Math.hypot(0.15, 0.2, 0.05), 9);
    expect(output?.effects.map(({ share }) => share).reduce((x, y) => x + y)).toBeCloseTo(1, 12);
    // A straight model: the simulation must find the propagated spread, within 2 % at 20000 draws.
    expect(Math.abs((output?.simulated.deviation ?? 0) / Math.hypot(...u) - 1)).toBeLessThan(0.02);
    expect(output?.simulated.low).toBeGreaterThan((output?.worst.low ?? 0) - 0.05);
  });

  it('counts correlations: wholly correlated errors add or cancel', () => {
    const of = (coefficient: number): number =>
      done({
        contributors: [part('a', 0.3), part('b', 0.15)],
        keys: ['angle'],
        correlations: [{ between: ['a', 'b'], coefficient }],
        model: ({ a = NaN, b = NaN }) => [a + 2 * b],
      }).outputs[0]?.uncertainty ?? NaN;
    expect(of(1)).toBeCloseTo(0.6 / Math.sqrt(3), 9);
    expect(of(-1)).toBeCloseTo(0, 6);
    expect(of(0)).toBeCloseTo(Math.hypot(0.3, 0.3) / Math.sqrt(3), 9);
  });

  it('lets errors act on both sides alike, on each anew, or opposite', () => {
    const difference = (acts: Contributor['acts']): number =>
      done({
        contributors: [part('a', 0.3, { acts })],
        keys: ['difference'],
        model: (first, second) => [(second['a'] ?? NaN) - (first['a'] ?? NaN)],
      }).outputs[0]?.worst.high ?? NaN;
    expect(difference('both')).toBeCloseTo(0, 12);
    expect(difference('each')).toBeCloseTo(0.6, 12);
    expect(difference('opposite')).toBeCloseTo(0.6, 12);
  });

  it('is repeatable for a seed', () => {
    const question: BudgetQuestion<string> = { contributors: three, keys: ['angle'], model };
    expect(done(question)).toEqual(done(question));
  });

  it('refuses what means nothing, naming parameter, value, range, reason and mend', () => {
    const codes = (question: Partial<BudgetQuestion<string>>): string[] =>
      budget(
        { contributors: three, keys: ['angle'], model, ...question },
        100,
        seeded(1),
      ).issues.map(({ code }) => code);
    expect(codes({ contributors: [part('a', -1)] })).toEqual(['bad-range']);
    expect(codes({ contributors: [part('a', NaN)] })).toEqual(['bad-range']);
    expect(codes({ contributors: [part('a', Infinity)] })).toEqual(['bad-range']);
    expect(codes({ contributors: [part('a', 1), part('a', 1)] })).toEqual(['same-contributor']);
    expect(codes({ correlations: [{ between: ['a', 'x'], coefficient: 0.5 }] })).toEqual([
      'bad-correlation',
    ]);
    expect(codes({ correlations: [{ between: ['a', 'b'], coefficient: 1.5 }] })).toEqual([
      'bad-correlation',
    ]);
    expect(codes({ model: () => undefined })).toEqual(['budget-out-of-reach']);
  });

  it('says when draws were out of reach', () => {
    const result = budget(
      {
        contributors: [part('a', 1)],
        keys: ['angle'],
        model: ({ a = NaN }) => (a > 0.9 ? undefined : [a]),
      },
      1000,
      seeded(2),
    );
    // The corner of the worst case is among what cannot be followed.
    expect(result.ok).toBe(false);
    const wide = budget(
      {
        contributors: [part('a', 1)],
        keys: ['angle'],
        model: ({ a = NaN }) => (Math.abs(a) > 0.9 && Math.abs(a) < 1 ? undefined : [a]),
      },
      1000,
      seeded(2),
    );
    expect(wide.ok).toBe(true);
    expect(wide.issues.map(({ code }) => code)).toEqual(['draws-missed']);
  });
});
