import { bevelGauge } from './bevel-gauge.ts';
import { carriage } from './carriage/index.ts';
import { edgeRest } from './edge-rest/index.ts';
import { spineRest } from './spine-rest/index.ts';

/** Words of the fixture families, by family. */
export const family = { bevelGauge, carriage, edgeRest, spineRest } as const;
