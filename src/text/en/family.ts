import { spineRest } from './spine-rest/index.ts';

/** Words of the fixture families, by family. */
export const family = { spineRest } as const;
