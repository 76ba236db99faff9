import type { Matrix } from '../matrix.ts';

/** A measured number with its standard uncertainty; mm or degrees. */
export interface Observation {
  readonly label: string;
  readonly value: number;
  /** Greater than 0. */
  readonly uncertainty: number;
}

/** An unknown that all places have in common; it may have been measured itself. */
export interface SharedUnknown {
  readonly start: number;
  readonly observed?: Observation;
}

/**
 * What was measured at one place. Besides the shared unknowns one unknown of its own decides what
 * is seen there (how far the cut went), because nothing on these fixtures stops the cut.
 */
export interface PlaceObservations {
  readonly label: string;
  readonly observations: readonly Observation[];
  readonly start: number;
  /** What the forward model says of each observation; undefined out of its reach. */
  readonly predict: (shared: readonly number[], own: number) => readonly number[] | undefined;
}

export interface FitProblem {
  readonly shared: readonly SharedUnknown[];
  readonly places: readonly PlaceObservations[];
}

/** How well one observation agrees with the fit. */
export interface Residual {
  /** Empty for what all places have in common. */
  readonly place: string;
  readonly label: string;
  readonly measured: number;
  readonly fitted: number;
  /** Residual over its own standard deviation, which is less than the reading's. */
  readonly studentised: number;
}

export interface Fitted {
  readonly shared: readonly number[];
  /** Covariance of the shared unknowns for the stated uncertainties. */
  readonly covariance: Matrix;
  readonly chiSquare: number;
  /** Observations less unknowns. */
  readonly freedom: number;
  readonly residuals: readonly Residual[];
  /** What each place tells of the shared unknowns: its share of the information matrix. */
  readonly information: readonly Matrix[];
  /** What the shared unknowns' own measurements tell, by unknown. */
  readonly prior: readonly number[];
}

export const sum = (values: readonly number[]): number =>
  values.reduce((total, value) => total + value, 0);
