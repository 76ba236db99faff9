import type { Issue } from '../../core/issue.ts';
import { problem } from '../../core/issue.ts';
import { fail, ok, type Result } from '../../core/result.ts';
import { text } from '../../text/index.ts';
import { chiSquareLimit, normalFactor, studentFactor } from '../distributions.ts';
import { advise, type Advice } from './advice.ts';
import { fit } from './fit.ts';
import { outliers } from './outliers.ts';
import type { FitProblem, Fitted, Residual } from './observations.ts';

/**
 * Where the size of the errors comes from: as `stated` with every reading, or as `observed` in the
 * scatter of the readings about the fit, the stated uncertainties being weights only.
 */
export type Scatter = 'stated' | 'observed';

/** The true offset of a fixture from what its dial says, in the unit of the setting. */
export interface Offset {
  readonly offset: number;
  /** Standard uncertainty of the offset. */
  readonly uncertainty: number;
  /** Interval that holds the true offset with 95 % probability. */
  readonly interval: { readonly low: number; readonly high: number };
  /** Half of the interval over the standard uncertainty. */
  readonly factor: number;
  readonly method: 'known-variance' | 'student';
  /** Whether the readings agree with the model and each other within their uncertainties. */
  readonly agreement: {
    readonly chiSquare: number;
    /** What chi-square exceeds in one of twenty sound sets; absent without spare readings. */
    readonly limit?: number;
    readonly freedom: number;
    readonly consistent: boolean;
  };
  readonly residuals: readonly Residual[];
  readonly advice: Advice;
}

/**
 * How the standard uncertainty is scaled and covered. Stated errors give a normal interval. Where
 * the errors are taken from the scatter, or the readings scatter more than they should (the
 * stated errors are then too small), they are scaled by sqrt(chi-square / freedom) and the
 * interval is Student's.
 */
const spread = (
  { chiSquare, freedom }: Fitted,
  scatter: Scatter,
  consistent: boolean,
): { scale: number; factor: number; method: Offset['method'] } =>
  scatter === 'stated' && consistent
    ? { scale: 1, factor: normalFactor(), method: 'known-variance' }
    : {
        scale: Math.sqrt(chiSquare / freedom),
        factor: studentFactor(freedom),
        method: 'student',
      };

/** What the offset of a fit's first shared unknown is, how sure, and what to do about it. */
export const assess = (given: FitProblem, scatter: Scatter, wished: number): Result<Offset> => {
  const words = text.setup.calibration;
  const fitted = fit(given);
  if (fitted === 'undetermined') return fail(problem(fitted, 'places', words.undetermined));
  if (fitted === 'out-of-reach') return fail(problem(fitted, 'places', words.outOfReach));
  const { chiSquare, freedom } = fitted;
  if (scatter === 'observed' && freedom < 1)
    return fail(problem('too-few', 'places', words.tooFew(freedom)));
  const limit = freedom > 0 ? chiSquareLimit(freedom) : undefined;
  const consistent = limit === undefined || scatter === 'observed' || chiSquare <= limit;
  const { scale, factor, method } = spread(fitted, scatter, consistent);
  const [offset = 0] = fitted.shared;
  const uncertainty = scale * Math.sqrt(fitted.covariance[0]?.[0] ?? NaN);
  const half = factor * uncertainty;
  const issues: Issue[] = [
    ...(consistent
      ? []
      : [
          problem(
            'inconsistent-readings',
            'places',
            words.inconsistent(
              chiSquare,
              limit ?? 0,
              outliers(given, fitted.residuals).map(({ place, label }) =>
                words.named(place, label),
              ),
            ),
            'warning',
          ),
        ]),
    ...(limit === undefined ? [problem('no-spare-reading', 'places', words.noSpare, 'note')] : []),
  ];
  return ok(
    {
      offset,
      uncertainty,
      interval: { low: offset - half, high: offset + half },
      factor,
      method,
      agreement: { chiSquare, freedom, consistent, ...(limit === undefined ? {} : { limit }) },
      residuals: fitted.residuals,
      advice: advise(fitted, scale * factor, offset, wished),
    },
    issues,
  );
};
