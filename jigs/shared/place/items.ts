import { chain, ok, type Result } from '../../../src/family/index.ts';
import type { Context } from '../parts/context.ts';
import type { Item } from './item.ts';
import { plateItems } from './plates.ts';
import { collarItems, screwItems } from './screws.ts';

/** Everything placed: what stands on the machine or lies in the hand, and what the blade carries. */
export interface Items {
  readonly machine: readonly Item[];
  readonly blade: readonly Item[];
}

export const itemsOf = (c: Context): Result<Items> =>
  chain(screwItems(c), (screws) =>
    chain(collarItems(c), (blade) => ok({ machine: [...plateItems(c), ...screws], blade })),
  );
