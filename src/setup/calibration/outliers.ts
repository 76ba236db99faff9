import { chiSquareLimit } from '../distributions.ts';
import { fit } from './fit.ts';
import type { FitProblem, Fitted, Residual } from './observations.ts';

/** Share of the places that may be called wrong before the fault is sought elsewhere. */
const MOST_WRONG = 1 / 3;

const without = (given: FitProblem, label: string): FitProblem => ({
  ...given,
  places: given.places.filter((place) => place.label !== label),
});

const agrees = ({ chiSquare, freedom }: Fitted): boolean =>
  freedom > 0 && chiSquare <= chiSquareLimit(freedom);

/** The readings of a place that stand farthest out; several where the model ties them. */
const farthest = (residuals: readonly Residual[], place: string): Residual[] => {
  const here = residuals.filter((residual) => residual.place === place);
  const most = Math.max(...here.map(({ studentised }) => Math.abs(studentised)));
  return here.filter(({ studentised }) => Math.abs(studentised) > 0.999 * most);
};

/**
 * The readings without which the rest agrees: the place whose leaving lowers chi-square most is
 * left out, and again, until the others agree. Empty when no third of the places explains it, or
 * the places are too few to tell: then a measure that all share is wrong, or all are worse than
 * stated. Labels of places tell them apart.
 */
export const outliers = (given: FitProblem, residuals: readonly Residual[]): Residual[] => {
  const named: Residual[] = [];
  let rest = given;
  const most = Math.floor(given.places.length * MOST_WRONG);
  for (let count = 0; count < most; count += 1) {
    const tries = rest.places.flatMap(({ label }) => {
      const fitted = fit(without(rest, label));
      return typeof fitted === 'string' ? [] : [{ label, fitted }];
    });
    const [best] = tries.sort((a, b) => a.fitted.chiSquare - b.fitted.chiSquare);
    if (best === undefined) return [];
    named.push(...farthest(residuals, best.label));
    if (agrees(best.fitted)) return named;
    rest = without(rest, best.label);
  }
  return [];
};
