import type { Registry } from '../src/family/index.ts';
import { backingCarrier } from './backing-carrier/index.ts';
import { carriage } from './carriage/index.ts';
import { edgeRest } from './edge-rest/index.ts';
import { spineRest } from './spine-rest/index.ts';

/** Every fixture family, one line each. */
export const registry: Registry = {
  families: {
    'backing-carrier': backingCarrier,
    carriage,
    'edge-rest': edgeRest,
    'spine-rest': spineRest,
  },
};
