import type { Family, FamilyCard } from '../src/family/index.ts';
import { card as backingCarrier } from './backing-carrier/card.ts';
import { card as carriage } from './carriage/card.ts';
import { card as edgeRest } from './edge-rest/card.ts';
import { card as spineRest } from './spine-rest/card.ts';

/** A family whose way to solve a design is fetched when a design of it is first solved. */
export interface Fetched extends FamilyCard {
  readonly fetch: () => Promise<Family>;
}

/** Every fixture family for a page, which fetches only those in use; as in `registry.ts`. */
export const cards: { readonly families: Readonly<Record<string, Fetched>> } = {
  families: {
    'backing-carrier': {
      ...backingCarrier,
      fetch: async () => (await import('./backing-carrier/index.ts')).backingCarrier,
    },
    carriage: { ...carriage, fetch: async () => (await import('./carriage/index.ts')).carriage },
    'edge-rest': {
      ...edgeRest,
      fetch: async () => (await import('./edge-rest/index.ts')).edgeRest,
    },
    'spine-rest': {
      ...spineRest,
      fetch: async () => (await import('./spine-rest/index.ts')).spineRest,
    },
  },
};
