import { describe, expect, it } from 'vitest';
import { assess, type Offset, type Scatter } from '../../src/setup/calibration/assess.ts';
import { carriageFit } from '../../src/setup/calibration/carriage.ts';
import { edgeRestFit } from '../../src/setup/calibration/edge-rest.ts';
import type { FitProblem } from '../../src/setup/calibration/observations.ts';
import { spineRestFit } from '../../src/setup/calibration/spine-rest.ts';
import { advise } from '../../src/setup/calibration/advice.ts';
import { correctedDial, updatedRecord } from '../../src/setup/calibration/correct.ts';
import type { FlatPiece, Quantity } from '../../src/setup/calibration/flat.ts';
import { seeded, type Random } from '../../src/setup/random.ts';
import { bar, grind } from '../grind/brute.ts';
import { carriageBlind, hollowBlind, spineBlind } from './blind.ts';

type Case = { problem: FitProblem | undefined; hidden: number };

const families: Readonly<Record<string, (random: Random, places?: number) => Case>> = {
  'spine rest': (random, places) => {
    const { given, hidden } = spineBlind(random, places);
    return { problem: spineRestFit(given.piece, { setoff: given.setoff, lean: 0 }), hidden };
  },
  'edge rest': (random, places) => {
    const { given, hidden } = hollowBlind(random, places);
    return { problem: edgeRestFit(given.places, given), hidden };
  },
  carriage: (random, places) => {
    const { given, hidden } = carriageBlind(random, places);
    return { problem: carriageFit(given.piece, { angle: given.angle }), hidden };
  },
};

const found = ({ problem }: Case, scatter: Scatter = 'stated', wished = 0.05): Offset => {
  if (problem === undefined) throw new Error('the model does not reach the readings');
  const result = assess(problem, scatter, wished);
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join(' '));
  return result.value;
};

const RUNS = 1000;
const SEED = 20260;

/** Share of seeded runs whose interval holds the hidden offset. */
const coverage = (family: string, scatter: Scatter, places: number): number => {
  let held = 0;
  // One stream for all runs: sequences of neighbouring seeds are not independent of each other.
  const random = seeded(SEED);
  for (let run = 0; run < RUNS; run += 1) {
    const one = families[family]?.(random, places) as Case;
    const { interval } = found(one, scatter);
    if (interval.low <= one.hidden && one.hidden <= interval.high) held += 1;
  }
  return held / RUNS;
};

describe('the stated 95 % interval, blind', () => {
  for (const family of Object.keys(families))
    it(`covers the hidden offset of a ${family} in 93 to 97 % of 1,000 seeded runs`, () => {
      const share = coverage(family, 'stated', 4);
      expect(share).toBeGreaterThanOrEqual(0.93);
      expect(share).toBeLessThanOrEqual(0.97);
    });

  it('covers as often with the errors taken from the scatter, by Student', () => {
    for (const family of ['edge rest', 'carriage']) {
      const share = coverage(family, 'observed', 4);
      expect(share).toBeGreaterThanOrEqual(0.93);
      expect(share).toBeLessThanOrEqual(0.97);
    }
  });
});

const sure = (value: number, uncertainty = 0.01): Quantity => ({ value, uncertainty });

const piece = (T: number, H: number, r: number, places: FlatPiece['places']): FlatPiece => ({
  thickness: { label: 'thickness', ...sure(T, 0.005) },
  height: { label: 'height', ...sure(H, 0.05) },
  spineRadius: r,
  edges: 'centreline',
  places,
});

describe('calibration of a spine rest', () => {
  it('finds an offset from what brute-force grinding leaves, with lean and rounded spine', () => {
    const [T, H, r, lean, setoff, hidden] = [3.2, 42, 0.4, 3, 4.4, 0.27];
    const places = [0.5, 0.3].map((e) => {
      const cut = grind(bar(T, H, r), H, setoff + hidden, e, lean);
      return { label: `edge ${e}`, edge: sure(e), bevelHeight: sure(cut.bevelHeight, 0.1) };
    });
    const problem = spineRestFit(piece(T, H, r, places), { setoff, lean });
    expect(found({ problem, hidden }).offset).toBeCloseTo(hidden, 4);
  });

  it('agrees with weighing the worked example by hand', () => {
    // T 3, e 0.1 a side, H 50 at 3.5 degrees: b 22.9, and 0.1 mm of setoff is 0.115 degrees. A
    // height alone uncertain by 0.1 mm then leaves 0.1 (tan a / b') mm with b' = db/ds.
    const [T, H, e, a] = [3, 50, 0.1, 3.5 * (Math.PI / 180)];
    const b = (T / 2 - e) / Math.tan(a);
    const dadx = 1 / (H * Math.cos(a) - (T / 2 + e) * Math.sin(a));
    const heightPerSetoff = ((T / 2 - e) / Math.sin(a) ** 2) * dadx;
    const exact = { label: 'exact', value: 0, uncertainty: 1e-4 };
    const places = [{ label: 'x', edge: sure(e, 1e-4), bevelHeight: sure(b, 0.1) }];
    const given = {
      ...piece(T, H, 0, places),
      thickness: { ...exact, value: T },
      height: { ...exact, value: H },
    };
    const problem = spineRestFit(given, { setoff: 4.6494, lean: 0 });
    const { uncertainty, interval, offset, factor } = found({ problem, hidden: 0 });
    expect(offset).toBeCloseTo(0, 4);
    expect(uncertainty).toBeCloseTo(0.1 / heightPerSetoff, 5);
    expect(factor).toBeCloseTo(1.959964, 5);
    expect(interval.high - offset).toBeCloseTo(1.959964 * uncertainty, 6);
  });

  it('refuses readings that fix nothing, and settings that cannot grind the piece', () => {
    const bare = piece(3, 50, 0, [{ label: 'a', edge: sure(0.1) }]);
    const problem = spineRestFit(bare, { setoff: 4.65, lean: 0 });
    const result = problem && assess(problem, 'stated', 0.05);
    expect(result?.ok).toBe(false);
    expect(result?.issues[0]?.code).toBe('undetermined');
    expect(spineRestFit(bare, { setoff: 300, lean: 0 })).toBeUndefined();
  });
});

describe('agreement of the readings', () => {
  const heights = (b: readonly number[]): Case => ({
    hidden: 0,
    problem: carriageFit(
      piece(
        4,
        30,
        0,
        b.map((value, i) => ({
          label: `place ${i}`,
          edge: sure(0.2),
          bevelHeight: sure(value, 0.1),
        })),
      ),
      { angle: 6 },
    ),
  });
  const right = 1.8 / Math.tan(6 * (Math.PI / 180));

  it('warns of a reading that is out of line, names it and widens the interval', () => {
    const { problem } = heights([right, right + 0.05, right - 0.05, right + 1.5]);
    const result = problem && assess(problem, 'stated', 0.05);
    expect(result?.ok).toBe(true);
    const issue = result?.issues.find(({ code }) => code === 'inconsistent-readings');
    expect(issue?.severity).toBe('warning');
    expect(issue?.message).toContain('bevel height at place 3');
    expect(issue?.message).not.toContain('place 0');
    const good = found(heights([right, right + 0.05, right - 0.05, right + 0.02]));
    expect(good.agreement.consistent).toBe(true);
    const wide = result?.ok ? result.value.interval.high - result.value.interval.low : 0;
    expect(wide).toBeGreaterThan(3 * (good.interval.high - good.interval.low));
  });

  it('blames no place where a measure of the whole piece is wrong', () => {
    const e = [0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5];
    // The piece is 4.4 mm thick, not 4.
    const places = e.map((edge, i) => ({
      label: `place ${i}`,
      edge: sure(edge, 0.001),
      bevelHeight: sure((2.2 - edge) / Math.tan(6 * (Math.PI / 180)), 0.01),
      angle: sure(6, 0.01),
    }));
    const problem = carriageFit(piece(4, 30, 0, places), { angle: 6 });
    const result = problem && assess(problem, 'stated', 0.05);
    const issue = result?.issues.find(({ code }) => code === 'inconsistent-readings');
    expect(issue?.message).toContain('No single place stands out');
  });

  it('warns of sound sets in about one of twenty runs only', () => {
    const random = seeded(31);
    const warned = Array.from({ length: 600 }, () => {
      const { given } = carriageBlind(random, 5);
      return found({ problem: carriageFit(given.piece, given), hidden: 0 }).agreement.consistent;
    }).filter((consistent) => !consistent).length;
    // 30 expected of 600, standard deviation 5.3.
    expect(warned).toBeGreaterThan(14);
    expect(warned).toBeLessThan(47);
  });

  it('says so when nothing can tell, and asks for more when the scatter is to tell', () => {
    const one = heights([right]);
    const result = one.problem && assess(one.problem, 'stated', 0.05);
    expect(result?.issues.map(({ code }) => code)).toEqual(['no-spare-reading']);
    const scatter = one.problem && assess(one.problem, 'observed', 0.05);
    expect(scatter?.issues.map(({ code }) => code)).toEqual(['too-few']);
  });
});

describe('whether another reading is worth taking', () => {
  it('expects the interval that more places then really have', () => {
    const random = seeded(99);
    for (const family of Object.keys(families)) {
      const shrink = Array.from({ length: 40 }, () => {
        const seed = Math.round(1e9 * random()) + 1;
        const [few, more] = [3, 4].map((n) =>
          found(families[family]?.(seeded(seed), n) as Case),
        ) as [Offset, Offset];
        const half = ({ interval }: Offset): number => (interval.high - interval.low) / 2;
        return half(more) / few.advice.afterOneMore;
      }).sort((a, b) => a - b);
      // Places differ, so the promise holds on the middle run, not on every one.
      expect(shrink[20]).toBeGreaterThan(0.9);
      expect(shrink[20]).toBeLessThan(1.1);
    }
  });

  it('counts the places by the square-root law and knows what they cannot mend', () => {
    const alone = advise({ prior: [0], information: [[[100]]] }, 2, 0.3, 0.1);
    // 2 / sqrt(100 n) <= 0.1 from n = 4.
    expect(alone).toMatchObject({ now: 0.2, placesNeeded: 3, verdict: 'several-more' });
    expect(alone.afterOneMore).toBeCloseTo(0.2 / Math.SQRT2, 12);
    expect(alone.significant).toBe(true);
    expect(advise({ prior: [0], information: [[[100]]] }, 2, 0.1, 0.2).verdict).toBe('enough');
    expect(advise({ prior: [0], information: [[[100]]] }, 2, 0.1, 0.2).significant).toBe(false);
    expect(advise({ prior: [0], information: [[[100]]] }, 2, 0, 0.15).verdict).toBe('one-more');
    // A second unknown, known to 1, that acts like the first: no place can separate them.
    const both = [
      [100, 100],
      [100, 100],
    ];
    const limited = advise({ prior: [0, 1], information: [both] }, 2, 0, 0.5);
    expect(limited.verdict).toBe('measure-piece-better');
    expect(limited.floor).toBeCloseTo(2, 3);
  });
});

describe('corrected dial', () => {
  it('takes the offset off the reading, in whole divisions and what they leave', () => {
    // 2.37 turns of a 1 mm screw with 50 divisions; the step stands 0.25 mm too far out.
    const { turnsFromZero, division, rounding } = correctedDial(
      { turnsFromZero: 2.37, perTurn: 1, divisions: 50 },
      0.25,
    );
    expect(turnsFromZero).toBeCloseTo(2.12, 12);
    expect(division).toBe(6);
    expect(rounding).toBeCloseTo(0, 12);
    const closed = correctedDial({ turnsFromZero: 0.1, perTurn: 1, divisions: 50 }, 0.113);
    expect(closed.turnsFromZero).toBeCloseTo(-0.013, 12);
    expect(closed.division).toBe(49);
    expect(closed.rounding).toBeCloseTo(-0.007, 12);
  });

  it('adds what is found after a correction to what was found before it', () => {
    const first = updatedRecord(undefined, { offset: 0.2, uncertainty: 0.02 }, 'first bar');
    const second = updatedRecord(first, { offset: -0.03, uncertainty: 0.01 }, 'second bar');
    expect(second.offset).toBeCloseTo(0.17, 12);
    expect(second).toMatchObject({ uncertainty: 0.01, note: 'second bar' });
  });
});
