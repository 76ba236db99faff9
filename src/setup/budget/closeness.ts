import type { BudgetQuestion, OutputKey } from './budget.ts';
import { sensitivities } from './propagate.ts';
import { departuresOn, inputsOf, type Input } from './sides.ts';

/** What one millimetre of error of a made feature does to causes of a budget, in their units. */
export type Acting<Id extends string> = Partial<Readonly<Record<Id, number>>>;

/** What an error does to the output that feels it most, beside what the whole budget does to it. */
export interface Felt {
  readonly key: OutputKey;
  readonly effect: number;
  /** Root of the sum of squared half widths of all contributors. */
  readonly budget: number;
}

export interface Closeness extends Felt {
  /** How near the feature must be made, mm. */
  readonly within: number;
  /** Whether that is near enough by the rule, or only as near as is asked of a shop. */
  readonly enough: boolean;
}

/** What is asked of a shop with hand tools, widest first, mm: common practice, no source. */
const NEAR = [0.2, 0.1, 0.05, 0.03, 0.02] as const;

/** ISO 2768-1 m from 30 to 120 mm: what needs no nearer is not singled out. */
const GENERAL = 0.3;

/**
 * Greatest part of the budget that one feature may come to. A third adds 5 % to a root of a sum of
 * squares (1 + 1/9 under the root): common practice, no source.
 */
const PART = 1 / 3;

/** The widest of 0.2, 0.1, 0.05, 0.03 and 0.02 mm that keeps a limit, or the last that does not. */
export const widest = (
  keeps: (within: number) => boolean,
): { readonly within: number; readonly enough: boolean } => {
  const near = NEAR.find(keeps);
  return { within: near ?? NEAR[NEAR.length - 1] ?? 0, enough: near !== undefined };
};

/** What a budget's outputs feel of its inputs, an output a row. */
export interface Sensed {
  readonly inputs: readonly Input[];
  readonly rows: readonly { readonly key: OutputKey; readonly row: readonly number[] }[];
}

/** Asked once of a budget, for all its features. Undefined where its model does not reach. */
export const sensed = <Id extends string>({
  contributors,
  keys,
  model,
}: BudgetQuestion<Id>): Sensed | undefined => {
  const inputs = inputsOf(contributors);
  const jacobian = sensitivities(
    (values) =>
      model(departuresOn(inputs, values, 'first'), departuresOn(inputs, values, 'second')),
    inputs.map(() => 0),
  );
  return jacobian && { inputs, rows: keys.map((key, k) => ({ key, row: jacobian[k] ?? [] })) };
};

/**
 * What a feature that is off by `off` mm does to the output that feels it most by its share of the
 * budget. Causes that act on each side anew count for one side.
 */
export const felt = <Id extends string>(
  { inputs, rows }: Sensed,
  acting: Acting<Id>,
  off: number,
): Felt | undefined => {
  const gains: Partial<Record<string, number>> = acting;
  const share = ({ effect, budget }: Felt): number => (budget > 0 ? effect / budget : 0);
  return rows
    .map(({ key, row }): Felt => {
      const sideEffect = (other: 'first' | 'second'): number =>
        inputs.reduce((sum, { contributor, side }, i) => {
          const gain = side === other ? 0 : (gains[contributor.id] ?? 0);
          return sum + Math.abs(gain * (row[i] ?? NaN)) * off;
        }, 0);
      const halves = inputs.map(
        ({ contributor: { minus, plus } }, i) => ((row[i] ?? NaN) * (minus + plus)) / 2,
      );
      const effect = Math.max(sideEffect('first'), sideEffect('second'));
      return { key, effect, budget: Math.hypot(...halves) };
    })
    .sort((a, b) => share(b) - share(a))[0];
};

/**
 * How near a feature must be made so that it comes to no more than a third of what everything in
 * the budget does to any output: the widest of 0.2, 0.1, 0.05, 0.03 and 0.02 mm. `general` where
 * the general class is near enough; undefined where the effect is no number.
 */
export const closeness = <Id extends string>(
  budget: Sensed,
  acting: Acting<Id>,
): Closeness | 'general' | undefined => {
  const unit = felt(budget, acting, 1);
  if (unit === undefined || !Number.isFinite(unit.effect)) return undefined;
  const keeps = (off: number): boolean => unit.effect * off <= PART * unit.budget;
  if (keeps(GENERAL)) return 'general';
  const near = widest(keeps);
  return { ...unit, ...near, effect: unit.effect * near.within };
};
