import { describe, expect, it } from 'vitest';
import { budget, type Budget, type BudgetQuestion } from '../../src/setup/budget/budget.ts';
import {
  CARRIAGE_KEYS,
  carriageContributors,
  carriageModel,
} from '../../src/setup/budget/carriage.ts';
import { cantileverEnd } from '../../src/setup/budget/deflection.ts';
import {
  EDGE_REST_KEYS,
  edgeRestContributors,
  edgeRestModel,
} from '../../src/setup/budget/edge-rest.ts';
import { giveOfRest, setoffOfLift } from '../../src/setup/budget/give-of-rest.ts';
import { SPINE_REST_KEYS, spineRestModel } from '../../src/setup/budget/spine-rest.ts';
import {
  carriageQuestion,
  edgeRestQuestion,
  spineRestQuestion,
} from '../../src/setup/budget/families.ts';
import { spineRestContributors } from '../../src/setup/budget/spine-rest-contributors.ts';
import { seeded } from '../../src/setup/random.ts';
import { bar, grind } from '../grind/brute.ts';

const rad = Math.PI / 180;
const nose = { length: 25, width: 110, thickness: 6, modulus: 200000 };
const arm = { length: 120, width: 38, thickness: 38, modulus: 200000 };
const structure = { nose, arm, stepHeight: 35, stepShare: 0.3, seatShare: 0.4 };

/** The worked example of the spine rest: T 3, e 0.1 a side, H 50, 3.5 degrees. */
const example = {
  thickness: 3,
  height: 50,
  spineRadius: 0,
  lean: 0,
  first: { setoff: 1.6 * Math.cos(3.5 * rad) + 50 * Math.sin(3.5 * rad), edge: 0.1 },
  second: { setoff: 1.6 * Math.cos(3.5 * rad) + 50 * Math.sin(3.5 * rad), edge: 0.1 },
  push: 30,
  structure,
};
const known = {
  settingTolerance: 0.05,
  yaw: 0.19,
  beltWidth: 50,
  division: 0.02,
  splice: 0.2,
  softBacking: false,
  push: 30,
};
const contributors = spineRestContributors(known);

const spine = (over = {}): BudgetQuestion<(typeof contributors)[number]['id']> => ({
  contributors,
  keys: SPINE_REST_KEYS,
  model: spineRestModel({ ...example, ...over }),
});

const done = <Id extends string>(question: BudgetQuestion<Id>, draws = 1500): Budget => {
  const result = budget(question, draws, seeded(4));
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join(' '));
  return result.value;
};

const output = ({ outputs }: Budget, key: string): Budget['outputs'][number] =>
  outputs.find((one) => one.key === key) as Budget['outputs'][number];

const effect = (one: Budget, key: string, id: string) =>
  output(one, key).effects.find((each) => each.id === id);

describe('budget of a spine rest', () => {
  const result = done(spine(), 3000);

  it('has the nominal example and its published sensitivities', () => {
    expect(output(result, 'angle').nominal).toBeCloseTo(3.5, 9);
    expect(output(result, 'bevelHeight').nominal).toBeCloseTo(1.4 / Math.tan(3.5 * rad), 9);
    expect(output(result, 'edgeThickness').nominal).toBeCloseTo(0.2, 12);
    expect(output(result, 'difference').nominal).toBeCloseTo(0, 9);
    // 0.1 mm of step is 0.115 degrees, 0.2 mm of bow 0.23 degrees.
    expect(0.1 * (effect(result, 'angle', 'step')?.sensitivity ?? NaN)).toBeCloseTo(0.115, 3);
    expect(effect(result, 'angle', 'bow')?.most).toBeCloseTo(0.23, 2);
  });

  it('has an effect for every contributor, each with its source', () => {
    for (const { outputs } of [result])
      for (const { effects } of outputs) {
        expect(effects.map(({ id }) => id).sort()).toEqual(contributors.map(({ id }) => id).sort());
        for (const { source, label } of effects) expect(source && label).toBeTruthy();
      }
  });

  it('lets the simulation agree with propagation and stay inside the worst case', () => {
    for (const { simulated, uncertainty, worst } of result.outputs) {
      // 3000 draws give a deviation within 4 %; curvature adds a little.
      expect(Math.abs(simulated.deviation / uncertainty - 1)).toBeLessThan(0.06);
      expect(simulated.low).toBeGreaterThan(worst.low);
      expect(simulated.high).toBeLessThan(worst.high);
    }
  });

  it('lets common errors cancel between the sides and opposite ones add', () => {
    expect(effect(result, 'difference', 'step')?.most).toBeLessThan(1e-6);
    expect(effect(result, 'difference', 'belt')?.most).toBeLessThan(1e-6);
    const [one, both] = ['bevelHeight', 'difference'].map(
      (key) => effect(result, key, 'bow')?.most,
    );
    expect(both).toBeCloseTo(2 * (one ?? NaN), 3);
    expect(output(result, 'edgeThickness').dominant.id).toBe('edge');
    // The centreline moves edge from one side to the other, not the whole.
    expect(effect(result, 'edgeThickness', 'centreline')?.most).toBeLessThan(1e-6);
  });

  it('agrees with brute-force grinding of a disturbed section', () => {
    const lean = 2;
    const setoff = 4.6;
    const stop = { setoff, edge: 0.1 };
    const { model } = spine({ lean, first: stop, second: stop, spineRadius: 0.3 });
    const nothing = Object.fromEntries(
      contributors.map(({ id, nominal }) => [id, nominal]),
    ) as Parameters<typeof model>[0];
    const by = {
      ...nothing,
      step: 0.08,
      belt: 0.05,
      splice: 0.02,
      backing: 0.015,
      wear: 0.03,
      compression: 0.01,
      platen: 0.005,
      thickness: 0.1,
      height: -0.5,
      edge: 0.04,
      squareness: 0.3,
    };
    const found = model(by, nothing) as [number, number];
    // Nearer: belt, splice and backing that are thicker. Farther: what is worn or pressed away.
    const nearer = 0.05 + 0.02 + 0.015 - 0.03 - 0.01 - 0.005;
    const real = setoff + 0.08 - nearer / Math.cos((lean + 0.3) * rad);
    const cut = grind(bar(3.1, 49.5, 0.3), 49.5, real, 0.14, lean + 0.3);
    expect(found[0]).toBeCloseTo(cut.angle, 3);
    expect(Math.abs(found[1] - cut.bevelHeight)).toBeLessThan(1e-3);
  });
});

describe('deflection', () => {
  it('agrees with integrating the curvature of the bar numerically', () => {
    const bar3 = { length: 80, width: 30, thickness: 5, modulus: 69000 };
    const [force, moment, n] = [40, 500, 4000];
    const ei = (69000 * 30 * 5 ** 3) / 12;
    let [slope, deflection] = [0, 0];
    for (let i = 0; i < n; i += 1) {
      const x = ((i + 0.5) * 80) / n;
      const curvature = (force * (80 - x) + moment) / ei;
      deflection += (slope + (curvature * 80) / n / 2) * (80 / n);
      slope += (curvature * 80) / n;
    }
    const end = cantileverEnd(bar3, force, moment);
    expect(end.deflection).toBeCloseTo(deflection, 8);
    expect(end.slope).toBeCloseTo(slope, 8);
  });

  it('grows with the push, opens the step and lets the spine down', () => {
    const [some, more] = [giveOfRest(structure, 20), giveOfRest(structure, 40)];
    expect(some.setoff).toBeGreaterThan(0);
    expect(some.lift).toBeLessThan(0);
    expect(some.lean).toBeGreaterThan(0);
    expect(more.setoff).toBeCloseTo(2 * some.setoff, 12);
    // Arm by hand: 8 N down and 6 N away 35 mm up, L 120, I 38^4 / 12.
    const ei = (200000 * 38 ** 4) / 12;
    expect(some.setoff).toBeCloseTo(35 * ((8 * 120 ** 2) / (2 * ei) + (6 * 35 * 120) / ei), 12);
    // Nose by its own numbers under the same 8 N, F L^3 / 3 E I; and the arm's end with its moment.
    const { nose } = structure;
    const alone = (8 * nose.length ** 3) / ((nose.modulus * nose.width * nose.thickness ** 3) / 4);
    const end = (8 * 120 ** 3) / (3 * ei) + (6 * 35 * 120 ** 2) / (2 * ei);
    expect(some.lift).toBeCloseTo(-alone - end, 12);
    expect(setoffOfLift(-0.1, 3)).toBeCloseTo(-0.1 * Math.tan(3 * rad), 12);
  });
});

describe('budget of an edge rest', () => {
  const stock = { radius: 150, lip: 0, drop: 20, faceOffset: 0, depth: 0.3, thickness: 4 };
  const at = { ...stock, sides: 2 } as const;
  const lip = Math.sqrt(149.7 ** 2 + 20 ** 2 - 20 ** 2) - 150;
  const question = {
    contributors: edgeRestContributors({ settingTolerance: 0.05, division: 0.02 }),
    keys: EDGE_REST_KEYS,
    model: edgeRestModel({ ...at, lip }),
  };
  const result = done(question);

  it('has the worked example: R 150, centre 20, depth 0.3, 0.75 mm of hollow for 0.1 of lip', () => {
    const half = Math.sqrt(2 * 150 * 0.3 - 0.3 ** 2);
    expect(output(result, 'upperLimit').nominal).toBeCloseTo(20 + half, 9);
    expect(0.1 * (effect(result, 'upperLimit', 'lip')?.sensitivity ?? NaN)).toBeCloseTo(0.75, 2);
    expect(output(result, 'web').nominal).toBeCloseTo(3.4, 12);
    for (const { simulated, worst } of result.outputs) {
      expect(simulated.low).toBeGreaterThanOrEqual(worst.low);
      expect(simulated.high).toBeLessThanOrEqual(worst.high);
    }
  });
});

describe('budget of a carriage', () => {
  const at = {
    base: 100,
    footRadius: 3,
    tipRadius: 5,
    angle: 8,
    thickness: 5,
    edge: 0.15,
    forward: 12,
    height: 70,
    lean: 0,
    sides: 2 as const,
  };
  const result = done({
    contributors: carriageContributors({ settingTolerance: 0.05, division: 0.02 }),
    keys: CARRIAGE_KEYS,
    model: carriageModel(at),
  });

  it('has the setting as its nominal, the rounds included', () => {
    expect(output(result, 'angle').nominal).toBeCloseTo(8, 9);
    expect(output(result, 'edgeThickness').nominal).toBeCloseTo(0.3, 9);
    expect(output(result, 'bevelHeight').nominal).toBeCloseTo(2.35 / Math.tan(8 * rad), 8);
  });

  it('feels the fence by the rotated corner: a fence error is edge over the cosine', () => {
    const perFence = effect(result, 'edgeThickness', 'fence')?.sensitivity ?? NaN;
    expect(perFence).toBeCloseTo(1 / Math.cos(8 * rad), 6);
    // A turn of the screw tips about the foot: de/da = -(h - r_f) / cos^2 a + y_c tan a / cos a.
    const stop = 12.15 * Math.cos(8 * rad) + 67 * Math.sin(8 * rad);
    const dedz =
      (-67 + stop * Math.sin(8 * rad)) /
      Math.cos(8 * rad) ** 2 /
      ((100 - 2 * Math.sin(8 * rad)) / Math.cos(8 * rad) ** 2);
    expect(effect(result, 'edgeThickness', 'screw')?.sensitivity).toBeCloseTo(dedz, 5);
  });

  it('holds on a leaning platen: tilt less lean is the angle, and the fence works by its slant', () => {
    const leaning = done({
      contributors: carriageContributors({ settingTolerance: 0.05, division: 0.02 }),
      keys: CARRIAGE_KEYS,
      model: carriageModel({ ...at, lean: 6 }),
    });
    expect(output(leaning, 'angle').nominal).toBeCloseTo(8, 9);
    expect(output(leaning, 'edgeThickness').nominal).toBeCloseTo(0.3, 9);
    // Along the base, 1 mm of fence is cos t square to the face, and 1 / cos a of that at the edge.
    const perFence = effect(leaning, 'edgeThickness', 'fence')?.sensitivity ?? NaN;
    expect(perFence).toBeCloseTo(Math.cos(6 * rad) / Math.cos(8 * rad), 6);
    // A belt that is thicker is square to the face already: by 1 / cos a, whatever the lean.
    const perBelt = effect(leaning, 'edgeThickness', 'belt')?.sensitivity ?? NaN;
    expect(Math.abs(perBelt)).toBeCloseTo(2 / Math.cos(8 * rad), 6);
  });
});

describe('budget of a blade ground on one side', () => {
  const fine = { settingTolerance: 0.05, division: 0.02 };
  const lone = { radius: 150, lip: 0, drop: 20, faceOffset: 0, depth: 0.3, thickness: 4 } as const;
  const held = { base: 100, footRadius: 3, tipRadius: 5, angle: 8, thickness: 5 } as const;
  const clamped = { ...held, edge: -2, forward: 12, height: 70, lean: 0, sides: 1 } as const;
  const stop = { setoff: 4.6, edge: -1.2 };

  it('has the edge reach from its side to the other face, which nothing grinds', () => {
    // By hand: T/2 + e, 2.5 - 2 of the carriage and 1.5 - 1.2 of the rest; a web of 4 - 0.3.
    const carriage = done(carriageQuestion(clamped, fine));
    expect(output(carriage, 'edgeThickness').nominal).toBeCloseTo(0.5, 9);
    const rest = done(spineRestQuestion({ ...example, first: stop, second: undefined }, known));
    expect(output(rest, 'edgeThickness').nominal).toBeCloseTo(0.3, 9);
    const web = done(edgeRestQuestion({ ...lone, sides: 1 }, fine));
    expect(output(web, 'web').nominal).toBeCloseTo(3.7, 9);
    expect(effect(web, 'web', 'depth')?.sensitivity).toBeCloseTo(-1, 6);
  });

  it('compares it with no second side', () => {
    for (const { outputs } of [
      done(carriageQuestion(clamped, fine)),
      done(spineRestQuestion({ ...example, first: stop, second: undefined }, known)),
      done(edgeRestQuestion({ ...lone, sides: 1 }, fine)),
    ])
      expect(outputs.map(({ key }) => key)).not.toContain('difference');
  });
});
