import type { Unit } from '../core/parameter.ts';
import type { Interval } from '../geometry/interval.ts';

/** Sections of blades: every combination of the given ranges, mm and degrees. */
export interface SectionBox {
  /** From spine to edge. */
  readonly height: Interval;
  /** At the spine. */
  readonly thickness: Interval;
  /** Of the finished bevel, a side. */
  readonly angle: Interval;
}

/**
 * Something that a fixture, as it is built, holds blades to. It is stated on ranges: `found` has
 * to hold every value that a blade of the box can give, so that a range within the limits proves
 * them for every such blade.
 */
export interface Limit {
  readonly id: string;
  readonly label: string;
  readonly unit: Unit;
  readonly atLeast?: number;
  readonly atMost?: number;
  readonly found: (box: SectionBox) => Interval;
}

/** What a fixture can grind besides the blades it was made for. */
export interface Reach {
  readonly limits: readonly Limit[];
  /** Bands of height in which they are tabled, mm: 5 where nothing is said. */
  readonly heightStep?: number;
  /** Which blades the limits speak of, in words. */
  readonly scope: string;
}
