import { inverse, type Matrix } from '../matrix.ts';
import { totalInformation } from './linearise.ts';
import type { Fitted } from './observations.ts';

/** Whether another reading is worth taking; half widths of the 95 % interval, in its unit. */
export interface Advice {
  readonly wished: number;
  readonly now: number;
  /** Expected after one more place like those measured; an estimate, from the same errors. */
  readonly afterOneMore: number;
  /** What no number of places on this piece can go below: the piece's own measures. */
  readonly floor: number;
  /** More places needed to come to the wish; absent when no number of them will do. */
  readonly placesNeeded?: number;
  readonly verdict: 'enough' | 'one-more' | 'several-more' | 'measure-piece-better';
  /** Whether 0 lies outside the interval, so that a correction is called for at all. */
  readonly significant: boolean;
}

/** More places than this on one test piece are not asked for. */
const MOST_PLACES = 24;

/** Standard uncertainty of the first unknown when the places are taken `times` over. */
const uncertaintyWith = (
  prior: readonly number[],
  information: readonly Matrix[],
  times: number,
): number => {
  const variance = inverse(totalInformation(prior, information, times))?.[0]?.[0];
  return variance === undefined ? Infinity : Math.sqrt(variance);
};

/**
 * What another reading would bring. A place like the average of those measured adds its share of
 * information, so n places and k more give the covariance (prior + (n + k)/n sum)^-1; what stays
 * for k without end is the uncertainty of the measures shared by all places. `half` turns
 * standard uncertainties into half widths; it is kept, so the result is an estimate.
 */
export const advise = (
  { prior, information }: Pick<Fitted, 'prior' | 'information'>,
  half: number,
  offset: number,
  wished: number,
): Advice => {
  const places = information.length;
  const after = (more: number): number =>
    half * uncertaintyWith(prior, information, (places + more) / places);
  const now = after(0);
  const floor = after(1e6 * places);
  const needed = Array.from({ length: MOST_PLACES }, (_, k) => k).find((k) => after(k) <= wished);
  const verdict =
    needed === undefined
      ? floor > wished / 1.0001
        ? 'measure-piece-better'
        : 'several-more'
      : needed === 0
        ? 'enough'
        : needed === 1
          ? 'one-more'
          : 'several-more';
  return {
    wished,
    now,
    afterOneMore: after(1),
    floor,
    ...(needed === undefined ? {} : { placesNeeded: needed }),
    verdict,
    significant: Math.abs(offset) > now,
  };
};
