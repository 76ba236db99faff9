import { inverse, times, type Matrix } from '../matrix.ts';
import { informationOf, linearise, totalInformation, type Linearised } from './linearise.ts';
import { sum, type FitProblem, type Fitted } from './observations.ts';
import { residualsOf } from './residuals.ts';

const ROUNDS = 60;

/** Gain of chi-square, as a share of it and 1, below which the iteration has settled. */
const SETTLED = 1e-10;

interface State {
  readonly shared: readonly number[];
  readonly own: readonly number[];
}

/** Sum of weighted squares at a state; Infinity where the model does not reach. */
const misfit = (given: FitProblem, { shared, own }: State): number => {
  const ofShared = given.shared.map(({ observed }, j) =>
    observed ? ((observed.value - (shared[j] ?? NaN)) / observed.uncertainty) ** 2 : 0,
  );
  const ofPlaces = given.places.map(({ predict, observations }, i) => {
    const fitted = predict(shared, own[i] ?? NaN);
    if (!fitted) return Infinity;
    return sum(
      observations.map(
        ({ value, uncertainty }, k) => ((value - (fitted[k] ?? NaN)) / uncertainty) ** 2,
      ),
    );
  });
  const total = sum([...ofShared, ...ofPlaces]);
  return Number.isFinite(total) ? total : Infinity;
};

/** Observations less unknowns. */
const freedomOf = ({ shared, places }: FitProblem): number =>
  shared.filter(({ observed }) => observed).length +
  sum(places.map(({ observations }) => observations.length)) -
  shared.length -
  places.length;

/** Least share of information that may be left once the places' own unknowns are fitted. */
const LEAST_LEFT = 1e-9;

/** Whether the readings fix every shared unknown, and not by rounding alone. */
const determined = (
  prior: readonly number[],
  information: readonly Matrix[],
  linear: readonly Linearised[],
): boolean =>
  prior.every((own, j) => {
    const left = own + sum(information.map((place) => place[j]?.[j] ?? 0));
    return left > LEAST_LEFT * sum(linear.map(({ most }) => most[j] ?? 0));
  });

/** The slope that pulls the shared unknowns, their own measurements included. */
const pullOf = (
  given: FitProblem,
  prior: readonly number[],
  shared: readonly number[],
  linear: readonly Linearised[],
): number[] =>
  given.shared.map(({ observed }, j) => {
    const own = observed ? (prior[j] ?? 0) * (observed.value - (shared[j] ?? NaN)) : 0;
    const ofPlaces = linear.map(({ reduced, weights, residuals }) =>
      sum(weights.map((w, k) => w * (reduced[k]?.[j] ?? 0) * (residuals[k] ?? 0))),
    );
    return own + sum(ofPlaces);
  });

/** The longest of the step and its halves that does not raise chi-square. */
const stepped = (
  given: FitProblem,
  { shared, own }: State,
  chiSquare: number,
  step: State,
): (State & { chiSquare: number }) | undefined => {
  for (let share = 1; share > 1e-4; share /= 2) {
    const moved = {
      shared: shared.map((value, j) => value + share * (step.shared[j] ?? 0)),
      own: own.map((value, i) => value + share * (step.own[i] ?? 0)),
    };
    const tried = misfit(given, moved);
    if (tried <= chiSquare) return { ...moved, chiSquare: tried };
  }
  return undefined;
};

/**
 * Weighted least squares with every reading uncertain: Gauss and Newton's iteration with halved
 * steps, the unknown of each place eliminated, so that only the shared ones are solved together.
 *
 *     information = prior + sum over places K' W K,   K = J - j (j' W J) / (j' W j)
 *
 * with J and j the derivatives of a place's readings by the shared unknowns and by its own. The
 * covariance is the inverse, valid where the model is straight over the uncertainties.
 *
 * `undetermined`: the readings do not fix the unknowns. `out-of-reach`: the model cannot be near
 * the readings at all, or the iteration does not settle.
 */
export const fit = (given: FitProblem): Fitted | 'undetermined' | 'out-of-reach' => {
  const prior = given.shared.map(({ observed }) => (observed ? observed.uncertainty ** -2 : 0));
  let state: State = {
    shared: given.shared.map(({ start }) => start),
    own: given.places.map(({ start }) => start),
  };
  let chiSquare = misfit(given, state);
  for (let round = 0; round < ROUNDS && chiSquare < Infinity; round += 1) {
    const { shared, own } = state;
    const linear = given.places.flatMap(
      (place, i) => linearise(place, shared, own[i] ?? NaN) ?? [],
    );
    if (linear.length < given.places.length) return 'out-of-reach';
    const information = linear.map((place) => informationOf(place, shared.length));
    if (!determined(prior, information, linear)) return 'undetermined';
    const covariance = inverse(totalInformation(prior, information));
    if (covariance === undefined) return 'undetermined';
    const step = times(covariance, pullOf(given, prior, shared, linear));
    const ownSteps = linear.map(
      ({ ownStep, follows }) => ownStep + sum(follows.map((f, j) => f * (step[j] ?? 0))),
    );
    const next = stepped(given, state, chiSquare, { shared: step, own: ownSteps });
    if (next === undefined || chiSquare - next.chiSquare < SETTLED * (1 + chiSquare))
      return {
        shared,
        covariance,
        chiSquare,
        freedom: freedomOf(given),
        residuals: residualsOf(given, shared, covariance, linear),
        information,
        prior,
      };
    ({ chiSquare, ...state } = next);
  }
  return 'out-of-reach';
};
