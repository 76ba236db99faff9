import { bevelGauge } from './bevel-gauge.ts';
import { carriage } from './carriage/index.ts';
import { spineRest } from './spine-rest/index.ts';

/** Words of the fixture families, by family. */
export const family = { bevelGauge, carriage, spineRest } as const;
