import { backingCarrier } from './backing-carrier/index.ts';
import { bevelGauge } from './bevel-gauge.ts';
import { carriage } from './carriage/index.ts';
import { edgeRest } from './edge-rest/index.ts';
import { shared } from './shared/index.ts';
import { spineRest } from './spine-rest/index.ts';

/** Words of the fixture families, by family; and of what they share. */
export const family = {
  backingCarrier,
  bevelGauge,
  carriage,
  edgeRest,
  shared,
  spineRest,
} as const;
