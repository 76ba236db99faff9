import type { PlatePart } from '../model/part.ts';

/** Least sizes that a way of making holds, mm, for a sheet of thickness t. */
export interface Limits {
  readonly hole: (t: number) => number;
  /** Metal between two holes, and from a hole to the outline. */
  readonly web: (t: number) => number;
}

const atLeast =
  (least: number, share: number) =>
  (t: number): number =>
    Math.max(least, share * t);

/** Common practice, no source: shops state their own limits, and most are finer than these. */
export const PLATE_LIMITS: Readonly<Record<PlatePart['process'], Limits>> = {
  laser: { hole: atLeast(1, 0.5), web: atLeast(1.5, 0.5) },
  waterjet: { hole: atLeast(2, 0.3), web: atLeast(1.5, 0.3) },
  plasma: { hole: atLeast(4, 0.6), web: atLeast(3, 0.6) },
  'saw-drill': { hole: atLeast(2, 0.25), web: atLeast(2, 0.3) },
};

/** Least wall and hole of a print, in nozzle widths and mm (common practice, no source). */
export const PRINT_LIMITS = { wallNozzles: 3, hole: 2 } as const;
