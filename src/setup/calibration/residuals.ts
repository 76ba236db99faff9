import { form, type Matrix } from '../matrix.ts';
import type { Linearised } from './linearise.ts';
import type { FitProblem, Observation, Residual } from './observations.ts';

const residual = (
  place: string,
  { label, value, uncertainty }: Observation,
  fitted: number,
  variance: number,
): Residual => {
  // What the fit leaves free of this reading; none left means it was followed exactly.
  const free = uncertainty ** 2 - variance;
  const studentised = free > 1e-9 * uncertainty ** 2 ? (value - fitted) / Math.sqrt(free) : 0;
  return { place, label, measured: value, fitted, studentised };
};

/**
 * All residuals of a fit. The variance of a fitted reading is K C K' + j^2 / (j' W j), C the
 * covariance of the shared unknowns; what is left of the reading's own is its residual's.
 */
export const residualsOf = (
  { shared, places }: FitProblem,
  values: readonly number[],
  covariance: Matrix,
  linear: readonly Linearised[],
): Residual[] => [
  ...shared.flatMap(({ observed }, j) =>
    observed ? [residual('', observed, values[j] ?? NaN, covariance[j]?.[j] ?? 0)] : [],
  ),
  ...linear.flatMap(({ reduced, own, ownInformation, residuals }, i) => {
    const { label = '', observations = [] } = places[i] ?? {};
    return observations.map((observation, k) => {
      const row = reduced[k] ?? [];
      const variance = form(row, covariance, row) + (own[k] ?? 0) ** 2 / ownInformation;
      return residual(label, observation, observation.value - (residuals[k] ?? NaN), variance);
    });
  }),
];
