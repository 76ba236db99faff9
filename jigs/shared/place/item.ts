import {
  cross3,
  type Carrier,
  type Frame,
  type HardwarePart,
  type Vec3,
} from '../../../src/family/index.ts';

/** What a part moves with. The base stands on the rest, the nose keeps its gap to the belt. */
export type Group = 'base' | 'nose' | 'step' | 'hand' | 'blade';

/**
 * A part in the assembly at the mean place of base and step (blade coordinates for what the
 * blade carries; the block of the hand with its pad's tip at y = 0).
 */
export interface Item<G extends string = Group> {
  readonly name: string;
  readonly part: string;
  readonly group: G;
  readonly frame: Frame;
  readonly touches: readonly string[];
  /** The piece itself where it is bought: its shape and designation. */
  readonly bought?: HardwarePart;
}

export const CARRIER: Readonly<Record<Group, Carrier>> = {
  base: 'ground',
  nose: 'nose',
  step: 'step',
  hand: 'hand',
  blade: 'blade',
};

/** A frame whose local z points along a unit axis of space. */
export const along = (origin: Vec3, z: Vec3): Frame => {
  const x: Vec3 = Math.abs(z[0]) > 0.5 ? [0, 1, 0] : [1, 0, 0];
  return { origin, x, y: cross3(z, x), z };
};

/** Numbered names of several of a kind, or the bare name of a single one. */
export const numbered = (name: string, count: number, i: number): string =>
  count === 1 ? name : `${name}-${String(i + 1)}`;

/** The part of an item that is bought, and the piece itself. */
export const bought = (piece: HardwarePart): Pick<Item, 'part'> & { bought: HardwarePart } => ({
  part: piece.id,
  bought: piece,
});
