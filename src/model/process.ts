import type { PlatePart } from './part.ts';

/** Least sizes, mm, in sheet of thickness t: what can be made, and what makes no trouble. */
export interface Limit {
  readonly least: (t: number) => number;
  readonly advised: (t: number) => number;
}

/** What a way of cutting sheet can do. */
export interface ProcessProfile {
  readonly hole: Limit;
  readonly slot: Limit;
  /** Material between two holes. */
  readonly web: Limit;
  /** Material from a hole to the outline. */
  readonly edge: Limit;
  /** Radius that an inner corner gets anyway, mm: half the beam, or the file's edge. */
  readonly innerRadius: number;
  /** Usual width of the cut, mm. */
  readonly kerf: readonly [number, number];
}

const limit = (floor: number, least: number, advised: number): Limit => ({
  least: (t) => Math.max(floor, least * t),
  advised: (t) => Math.max(floor, advised * t),
});

/**
 * Laser, `advised`: job-shop design guides (the laxer of two: hole 0.7 t and 1 mm, web 0.7 t,
 * edge t, slot t; kerf in steel 0.13 to 0.38 mm). Everything else here is common practice, no
 * source: shops state their own limits, and most are finer than these.
 */
export const PROCESS: Readonly<Record<PlatePart['process'], ProcessProfile>> = {
  laser: {
    hole: limit(1, 0.5, 0.7),
    slot: limit(1, 0.5, 1),
    web: limit(1.5, 0.5, 0.7),
    edge: limit(1.5, 0.5, 1),
    innerRadius: 0.2,
    kerf: [0.13, 0.38],
  },
  waterjet: {
    hole: limit(2, 0.3, 0.5),
    slot: limit(2, 0.3, 0.5),
    web: limit(1.5, 0.3, 0.5),
    edge: limit(1.5, 0.3, 0.5),
    innerRadius: 0.5,
    kerf: [0.8, 1.2],
  },
  plasma: {
    hole: limit(4, 0.6, 1),
    slot: limit(4, 0.6, 1),
    web: limit(3, 0.6, 1),
    edge: limit(3, 0.6, 1),
    innerRadius: 1,
    kerf: [1, 2],
  },
  'saw-drill': {
    hole: limit(2, 0.25, 0.4),
    slot: limit(3, 0.3, 0.5),
    web: limit(2, 0.3, 0.5),
    edge: limit(2, 0.3, 0.5),
    innerRadius: 0.5,
    kerf: [0.8, 1.5],
  },
};

/** Least material between a hole and the outline of a plate of this thickness, mm. */
export const leastEdge = (process: PlatePart['process'], thickness: number): number =>
  PROCESS[process].edge.least(thickness);

/**
 * Printing with a nozzle of some diameter. Walls: two lines are the least and three serve (print
 * design guides: 0.8 and 1.0 to 1.2 mm for a 0.4 mm nozzle); holes 2 mm, posts 3 mm (the same).
 */
export const PRINT = {
  wall: (nozzle: number) => ({ least: 2 * nozzle, advised: 3 * nozzle }),
  hole: 2,
  post: 3,
} as const;
