import type { Unit } from '../core/parameter.ts';
import type { Interval } from '../geometry/interval.ts';

/** A size in which a reach is told: tabled from `from` to `to`, in steps of `step`. */
export interface ReachAxis {
  readonly label: string;
  readonly unit: 'mm' | 'deg';
  readonly from: number;
  readonly to: number;
  readonly step: number;
}

/** The sizes of a reach, as its family names them. */
export interface ReachAxes {
  /** Columns and rows of the table. */
  readonly across: ReachAxis;
  readonly up: ReachAxis;
  /** What is stated in each cell. */
  readonly run: ReachAxis;
  /** What is stated beside it: the range down from its greatest value. */
  readonly also?: ReachAxis;
}

/** Every combination of sizes from the given ranges, in the units of the axes. */
export interface ReachBox {
  readonly across: Interval;
  readonly up: Interval;
  readonly run: Interval;
  /** Zero where the family names no such axis. */
  readonly also: Interval;
}

/**
 * Something that a fixture, as it is built, holds blades to. It is stated on ranges: `found` has
 * to hold every value that a blade of the box can give, so that a range within the limits proves
 * them for every such blade.
 */
export interface Limit<Box = ReachBox> {
  readonly id: string;
  readonly label: string;
  readonly unit: Unit;
  readonly atLeast?: number;
  readonly atMost?: number;
  readonly found: (box: Box) => Interval;
}

/** What a fixture can grind besides the blades it was made for. */
export interface Reach {
  readonly axes: ReachAxes;
  readonly limits: readonly Limit[];
  /** Which blades the limits speak of, in words. */
  readonly scope: string;
}
