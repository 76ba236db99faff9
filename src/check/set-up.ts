import type { Part, Placement } from '../model/part.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { PairTerms } from './assembly-result.ts';
import type { Body, Motion, PairRule } from './distance/index.ts';
import type { Workshop } from './workshop.ts';

/** A pair that is asked about, once for every set-up; the worst answer is the result. */
export interface Asked {
  readonly id: string;
  readonly rule: PairRule;
  readonly fix: string;
  readonly parameter?: string;
}

/** Names of all bodies for people, and the pose of a result from the label of its sweep. */
export interface Told {
  readonly names: Readonly<Record<string, string>>;
  readonly pose: NonNullable<PairTerms['pose']>;
}

/** Bodies as they move together, and what is asked about them. */
export interface SetUp {
  readonly asked: readonly Asked[];
  readonly bodies: ReadonlyMap<string, Body>;
  readonly told: Told;
}

/** Two placements whose faces must lie on each other: the first comes off the second upwards. */
export type Face = readonly [string, string];

/** A fixture's own parts where they stand, and how they move. */
export interface Assembly {
  readonly parts: readonly Part[];
  readonly workshop: Workshop;
  readonly placements: readonly Placement[];
  /** Motion of what moves with a carrier; at rest unless stated. */
  readonly motions?: ReadonlyMap<string, Motion>;
  readonly faces: readonly Face[];
  /** The way faces come off each other. */
  readonly up: Vec3;
  /** First word of the ids of faces. */
  readonly prefix: string;
}

/** A pair of bodies that no check compares, and why it cannot or need not meet. */
export interface Unasked {
  readonly a: string;
  readonly b: string;
  readonly reason: string;
}

/**
 * Everything the checks of solids look at. Every two bodies of a set-up are asked about, are both
 * of the assemblies, or are left out with a reason.
 */
export interface Solids {
  readonly setUps: readonly SetUp[];
  readonly assemblies: readonly Assembly[];
  readonly unasked: readonly Unasked[];
}
