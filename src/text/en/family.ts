import { bevelGauge } from './bevel-gauge.ts';
import { spineRest } from './spine-rest/index.ts';

/** Words of the fixture families, by family. */
export const family = { bevelGauge, spineRest } as const;
