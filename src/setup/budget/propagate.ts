import { form, type Matrix } from '../matrix.ts';

/** Half step of the central differences, mm, degrees or N: kinks apart, good to about 1e-8. */
const STEP = 1e-4;

/**
 * Sensitivity of every output of a model to every input, a row an output, by central differences
 * of the exact model about `inputs`. Undefined where the model does not reach.
 */
export const sensitivities = (
  model: (inputs: readonly number[]) => readonly number[] | undefined,
  inputs: readonly number[],
): Matrix | undefined => {
  const columns = inputs.flatMap((_, j) => {
    const at = (h: number) => model(inputs.map((value, i) => (i === j ? value + h : value)));
    const [more, less] = [at(STEP), at(-STEP)];
    return more && less ? [more.map((value, k) => (value - (less[k] ?? NaN)) / (2 * STEP))] : [];
  });
  if (columns.length < inputs.length) return undefined;
  const outputs = columns[0]?.length ?? 0;
  return Array.from({ length: outputs }, (_, k) => columns.map((column) => column[k] ?? NaN));
};

/** Square root of the sum of the squared effects of independent inputs. */
export const rootSumSquare = (row: readonly number[], spreads: readonly number[]): number =>
  Math.hypot(...row.map((c, i) => c * (spreads[i] ?? 0)));

/** Covariance matrix of inputs from their standard uncertainties and correlation coefficients. */
export const covarianceOf = (uncertainties: readonly number[], correlations: Matrix): Matrix =>
  uncertainties.map((a, i) =>
    uncertainties.map((b, j) => a * b * (i === j ? 1 : (correlations[i]?.[j] ?? 0))),
  );

/**
 * Law of propagation of uncertainty for correlated inputs, J V J' (JCGM 100, 5.2.2 and H.2.3): the
 * covariance matrix of the outputs; the roots of its diagonal are their standard uncertainties.
 */
export const propagated = (jacobian: Matrix, covariance: Matrix): Matrix =>
  jacobian.map((a) => jacobian.map((b) => form(a, covariance, b)));

/** Standard uncertainties of outputs. */
export const deviationsOf = (covariance: Matrix): number[] =>
  covariance.map((row, i) => Math.sqrt(Math.max(0, row[i] ?? NaN)));
