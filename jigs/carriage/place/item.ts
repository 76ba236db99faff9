import type { Carrier, Frame, HardwarePart } from '../../../src/family/index.ts';

/** What a part moves with. Items of jaw and heel screw stand where the layout has them level. */
export type Group = 'base' | 'fence' | 'carriage' | 'heel' | 'jaw';

/** A part in the assembly: base and fence in the seat frame, the rest in the level carriage. */
export interface Item {
  readonly name: string;
  readonly part: string;
  readonly group: Group;
  readonly frame: Frame;
  readonly touches: readonly string[];
  /** The piece itself where it is bought: its shape and designation. */
  readonly bought?: HardwarePart;
}

export const CARRIER: Readonly<Record<Group, Carrier>> = {
  base: 'ground',
  fence: 'step',
  carriage: 'carriage',
  heel: 'carriage',
  jaw: 'carriage',
};
