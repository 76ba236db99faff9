import type { Carrier } from '../../../src/family/index.ts';
import type * as shared from '../../shared/place/item.ts';

/** What a part moves with. Items of jaw and heel screw stand where the layout has them level. */
export type Group = 'base' | 'fence' | 'carriage' | 'heel' | 'jaw';

/** A part in the assembly: base and fence in the seat frame, the rest in the level carriage. */
export type Item = shared.Item<Group>;

export const CARRIER: Readonly<Record<Group, Carrier>> = {
  base: 'ground',
  fence: 'step',
  carriage: 'carriage',
  heel: 'carriage',
  jaw: 'carriage',
};
