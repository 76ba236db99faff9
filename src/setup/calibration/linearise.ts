import type { Matrix } from '../matrix.ts';
import { sum, type PlaceObservations } from './observations.ts';

/** Half step of the central differences; models are smooth on this scale, mm or degrees. */
const STEP = 1e-5;

/** Derivatives and residuals of one place, its own unknown eliminated. */
export interface Linearised {
  readonly residuals: readonly number[];
  readonly weights: readonly number[];
  /** Derivatives by the own unknown. */
  readonly own: readonly number[];
  /** Information on its own unknown. */
  readonly ownInformation: number;
  /** Change of the own unknown with each shared one, were it fitted anew. */
  readonly follows: readonly number[];
  /** Step of the own unknown with the shared ones kept. */
  readonly ownStep: number;
  /** Derivatives by the shared unknowns once the own one follows, a row an observation. */
  readonly reduced: Matrix;
  /** What the place would tell of each shared unknown, were its own one known. */
  readonly most: readonly number[];
}

/** Linearises one place by central differences of its exact model; undefined out of its reach. */
export const linearise = (
  { predict, observations }: PlaceObservations,
  shared: readonly number[],
  ownValue: number,
): Linearised | undefined => {
  const slopes = (at: (h: number) => readonly number[] | undefined): number[] | undefined => {
    const [more, less] = [at(STEP), at(-STEP)];
    return more && less?.map((value, k) => ((more[k] ?? NaN) - value) / (2 * STEP));
  };
  const nudged = (j: number, h: number): number[] =>
    shared.map((value, i) => (i === j ? value + h : value));
  const fitted = predict(shared, ownValue);
  const own = slopes((h) => predict(shared, ownValue + h));
  const by = shared.flatMap((_, j) => {
    const column = slopes((h) => predict(nudged(j, h), ownValue));
    return column === undefined ? [] : [column];
  });
  if (!fitted || !own || by.length < shared.length) return undefined;
  const residuals = observations.map(({ value }, k) => value - (fitted[k] ?? NaN));
  const weights = observations.map(({ uncertainty }) => uncertainty ** -2);
  const dot = (x: readonly number[], y: readonly number[]): number =>
    sum(weights.map((w, k) => w * (x[k] ?? 0) * (y[k] ?? 0)));
  const ownInformation = dot(own, own);
  const follows = by.map((column) => -dot(own, column) / ownInformation);
  const reduced = observations.map((_, k) =>
    by.map((column, j) => (column[k] ?? 0) + (own[k] ?? 0) * (follows[j] ?? 0)),
  );
  const ownStep = dot(own, residuals) / ownInformation;
  return {
    residuals,
    weights,
    own,
    ownInformation,
    follows,
    ownStep,
    reduced,
    most: by.map((column) => dot(column, column)),
  };
};

/** What one place tells of `size` shared unknowns. */
export const informationOf = ({ reduced, weights }: Linearised, size: number): Matrix =>
  Array.from({ length: size }, (_, a) =>
    Array.from({ length: size }, (__, b) =>
      sum(weights.map((w, k) => w * (reduced[k]?.[a] ?? 0) * (reduced[k]?.[b] ?? 0))),
    ),
  );

/** Information of independent sources on the shared unknowns, the places' taken `times` over. */
export const totalInformation = (
  prior: readonly number[],
  places: readonly Matrix[],
  times = 1,
): Matrix =>
  prior.map((own, a) =>
    prior.map(
      (_, b) => (a === b ? own : 0) + times * sum(places.map((place) => place[a]?.[b] ?? 0)),
    ),
  );
