import * as build from './build.ts';
import { checks } from './checks.ts';
import { issues } from './issues.ts';
import { parameters } from './parameters.ts';
import { parts } from './parts.ts';
import { reach } from './reach.ts';
import { bevelSheet } from './sheet.ts';
import { supplies } from './supplies.ts';
import { tight } from './tight.ts';

/** Words of what several fixture families share. */
export const shared = {
  bevelSheet,
  build,
  checks,
  issues,
  parameters,
  parts,
  reach,
  /** The machine's own, in a section. */
  restLabel: 'Rest',
  supplies,
  tight,
} as const;
