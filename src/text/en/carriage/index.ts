import { certainty, plan } from './plan.ts';

/** Words of the guided-angle carriage. */
export const carriage = { certainty, plan } as const;
