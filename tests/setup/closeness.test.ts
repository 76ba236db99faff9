import { describe, expect, it } from 'vitest';
import type { BudgetQuestion } from '../../src/setup/budget/budget.ts';
import * as near from '../../src/setup/budget/closeness.ts';
import type { Contributor } from '../../src/setup/budget/contributor.ts';
import { spineRestQuestion } from '../../src/setup/budget/families.ts';

const contributor = (
  id: 'a' | 'b',
  half: number,
  acts: Contributor['acts'],
): Contributor<'a' | 'b'> => ({
  id,
  label: id,
  unit: 'mm',
  nominal: 0,
  minus: half,
  plus: half,
  distribution: 'uniform',
  acts,
  source: '',
});

const { widest } = near;

const closeness = <Id extends string>(of: BudgetQuestion<Id>, acting: near.Acting<Id>) => {
  const budget = near.sensed(of);
  return budget && near.closeness(budget, acting);
};

const felt = <Id extends string>(of: BudgetQuestion<Id>, acting: near.Acting<Id>, off: number) => {
  const budget = near.sensed(of);
  return budget && near.felt(budget, acting, off);
};

/** Outputs 2a + b and a, both of the side ground first; b of each side anew. */
const question: BudgetQuestion<'a' | 'b'> = {
  contributors: [contributor('a', 0.1, 'both'), contributor('b', 0.4, 'each')],
  keys: ['angle', 'bevelHeight'],
  model: ({ a, b }) => [2 * a + b, 10 + a],
};

describe('how near a feature must be made', () => {
  // By hand: the root of the sum of squares is hypot(2 x 0.1, 0.4) = 0.4472 for the first output
  // and 0.1 for the second, whose share by `a` is the greater: 0.1 / 3 allows 0.03 mm.
  it('is a third of the budget at most, on the output that feels it most', () => {
    expect(closeness(question, { a: 1 })).toEqual({
      key: 'bevelHeight',
      within: 0.03,
      enough: true,
      effect: expect.closeTo(0.03, 6) as number,
      budget: expect.closeTo(0.1, 6) as number,
    });
    // b alone: 0.4472 / 3 = 0.149 allows 0.1 mm.
    expect(closeness(question, { b: 1 })).toMatchObject({ key: 'angle', within: 0.1 });
    // Both at once: the first output feels 3 mm for a millimetre, 2 of them by a: 0.3 of 0.4472
    // still less than the second's 1 of 0.1.
    expect(closeness(question, { a: 1, b: 1 })).toMatchObject({ key: 'bevelHeight' });
  });

  it('is nothing to single out where the general class will do, and says when it is not enough', () => {
    expect(closeness(question, { a: 0.1 })).toBe('general');
    expect(closeness(question, {})).toBe('general');
    expect(closeness(question, { a: 20 })).toMatchObject({ within: 0.02, enough: false });
    expect(widest(() => true)).toEqual({ within: 0.2, enough: true });
  });

  it('is not known where the model does not reach', () => {
    const none = { ...question, model: () => undefined };
    expect(closeness(none, { a: 1 })).toBeUndefined();
    expect(felt(none, { a: 1 }, 0.1)).toBeUndefined();
  });

  // Bar standing on its spine, setoff s = (T/2 + e) cos a + H sin a: da/ds = 1 / (H cos a - (T/2 + e) sin a).
  it('follows the closed form of a spine rest: degrees for a millimetre of setoff', () => {
    const rad = Math.PI / 180;
    const [angle, height, half, edge] = [3.5, 50, 1.5, 0.1];
    const setoff = (half + edge) * Math.cos(angle * rad) + height * Math.sin(angle * rad);
    const cantilever = { length: 25, width: 110, thickness: 6, modulus: 200_000 };
    const found = felt(
      spineRestQuestion(
        {
          thickness: 2 * half,
          height,
          spineRadius: 0,
          lean: 0,
          first: { setoff, edge },
          second: { setoff, edge },
          push: 30,
          structure: {
            nose: cantilever,
            arm: cantilever,
            stepHeight: 35,
            stepShare: 0.3,
            seatShare: 0.4,
          },
        },
        {
          settingTolerance: 0.05,
          yaw: 0.19,
          beltWidth: 50,
          division: 0.02,
          splice: 0.2,
          softBacking: false,
        },
      ),
      { step: 1 },
      0.1,
    );
    const slope =
      1 / (height * Math.cos(angle * rad) - (half + edge) * Math.sin(angle * rad)) / rad;
    expect(found?.key).toBe('angle');
    expect(found?.effect).toBeCloseTo(0.1 * slope, 3);
  });
});
