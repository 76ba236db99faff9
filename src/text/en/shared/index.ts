import { checks } from './checks.ts';
import { issues } from './issues.ts';
import { parameters } from './parameters.ts';
import { parts } from './parts.ts';
import { reach } from './reach.ts';

/** Words of what several fixture families share. */
export const shared = { checks, issues, parameters, parts, reach } as const;
