import { problem, type Issue } from '../../core/issue.ts';
import { fail, ok, type Result } from '../../core/result.ts';
import { text } from '../../text/index.ts';
import type { Random } from '../random.ts';
import { momentsOf, type Contributor } from './contributor.ts';
import {
  covarianceOf,
  deviationsOf,
  propagated,
  rootSumSquare,
  sensitivities,
} from './propagate.ts';
import { effectsOf, matrixOf, type Correlation, type Effect } from './effects.ts';
import { departuresOn, inputsOf, type Departures, type Input } from './sides.ts';
import { simulate, type Simulated } from './simulate.ts';

/** What a budget may be drawn up for; the catalogue names each with its unit. */
export type OutputKey = keyof typeof text.setup.budgetCommand.outputs;

export interface OutputBudget {
  readonly key: OutputKey;
  readonly nominal: number;
  /** Greatest first. */
  readonly effects: readonly Effect[];
  /** The exact model with every contributor at the end of its range that does most. */
  readonly worst: { readonly low: number; readonly high: number };
  /** Root of the sum of squared half widths, as in a stack of tolerances. */
  readonly rootSumSquare: number;
  /** Combined standard uncertainty (JCGM 100), correlations counted. */
  readonly uncertainty: number;
  readonly simulated: Simulated;
  /** The contributor with the greatest share, and what halving its range would leave. */
  readonly dominant: Effect & { readonly halved: { uncertainty: number; rootSumSquare: number } };
}

export interface Budget {
  readonly outputs: readonly OutputBudget[];
  readonly draws: number;
}

/** What a budget is made of. */
export interface BudgetQuestion<Id extends string> {
  readonly contributors: readonly Contributor<Id>[];
  readonly correlations?: readonly Correlation[];
  /** Names of the model's outputs, in order. */
  readonly keys: readonly OutputKey[];
  /** The exact forward model of both sides; undefined out of its reach. */
  readonly model: (first: Departures<Id>, second: Departures<Id>) => readonly number[] | undefined;
}

const words = text.setup.budget;

const unfit = (
  contributors: readonly Contributor[],
  correlations: readonly Correlation[],
): Issue[] => {
  const ids = contributors.map(({ id }) => id);
  return [
    ...contributors.flatMap(({ id, label, minus, plus }) =>
      minus >= 0 && plus >= 0 && minus + plus < Infinity
        ? []
        : [problem('bad-range', id, words.badRange(label, minus, plus))],
    ),
    ...ids
      .filter((id, i) => ids.indexOf(id) < i)
      .map((id) => problem('same-contributor', id, words.same(id))),
    ...correlations.flatMap(({ between, coefficient }) =>
      between.every((id) => ids.includes(id)) && Math.abs(coefficient) <= 1
        ? []
        : [
            problem(
              'bad-correlation',
              between.join(','),
              words.badCorrelation(between, coefficient),
            ),
          ],
    ),
  ];
};

/** The end of each input's range that raises (or lowers) an output, by the sign of its effect. */
const corner = (inputs: readonly Input[], row: readonly number[], up: boolean): number[] =>
  inputs.map(({ contributor: { minus, plus } }, i) => ((row[i] ?? 0) > 0 === up ? plus : -minus));

/** Half width of an input. */
const halfOf = ({ contributor: { minus, plus } }: Input): number => (minus + plus) / 2;

/**
 * The tolerance budget of a fixture: for every output sensitivities, worst case, root sum of
 * squares, combined standard uncertainty, a simulation of `draws` settings with the generator
 * passed in, and the contributor that counts most. Fails on ranges or correlations that mean
 * nothing, and where the nominal setting is out of the model's reach.
 */
export const budget = <Id extends string>(
  { contributors, correlations = [], keys, model }: BudgetQuestion<Id>,
  draws: number,
  random: Random,
): Result<Budget> => {
  const issues = unfit(contributors, correlations);
  if (issues.length > 0) return fail(...issues);
  const inputs = inputsOf(contributors);
  const evaluate = (values: readonly number[]): readonly number[] | undefined =>
    model(departuresOn(inputs, values, 'first'), departuresOn(inputs, values, 'second'));
  const zero = inputs.map(() => 0);
  const nominal = evaluate(zero);
  const jacobian = sensitivities(evaluate, zero);
  const simulation = simulate(evaluate, inputs, draws, random);
  if (nominal === undefined || jacobian === undefined || simulation === undefined)
    return fail(problem('budget-out-of-reach', '', words.outOfReach));
  const spreads = inputs.map(({ contributor }) => momentsOf(contributor).deviation);
  const covariance = covarianceOf(spreads, matrixOf(inputs, correlations));
  const uncertainties = deviationsOf(propagated(jacobian, covariance));
  const outputs = keys.flatMap((key, k): OutputBudget[] => {
    const [row, simulated] = [jacobian[k] ?? [], simulation.outputs[k]];
    const effects = effectsOf(inputs, row);
    const [first] = effects;
    const [low, high] = [false, true].map((up) => evaluate(corner(inputs, row, up))?.[k]);
    if (!simulated || !first || low === undefined || high === undefined) return [];
    const halves = (factor: (id: string) => number): number =>
      rootSumSquare(
        row,
        inputs.map((input) => factor(input.contributor.id) * halfOf(input)),
      );
    const smaller = spreads.map((u, i) => (inputs[i]?.contributor.id === first.id ? u / 2 : u));
    const less = propagated([row], covarianceOf(smaller, matrixOf(inputs, correlations)));
    return [
      {
        key,
        nominal: nominal[k] ?? NaN,
        effects,
        worst: { low, high },
        rootSumSquare: halves(() => 1),
        uncertainty: uncertainties[k] ?? NaN,
        simulated,
        dominant: {
          ...first,
          halved: {
            uncertainty: deviationsOf(less)[0] ?? NaN,
            rootSumSquare: halves((id) => (id === first.id ? 0.5 : 1)),
          },
        },
      },
    ];
  });
  return outputs.length < keys.length
    ? fail(problem('budget-out-of-reach', '', words.outOfReach))
    : ok(
        { outputs, draws },
        simulation.missed > 0
          ? [problem('draws-missed', '', words.missed(simulation.missed, draws), 'warning')]
          : [],
      );
};
