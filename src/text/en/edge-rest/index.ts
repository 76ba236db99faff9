import { checks } from './checks.ts';
import { issues } from './issues.ts';
import { parameters } from './parameters.ts';
import { parts } from './parts.ts';
import { reach } from './reach.ts';
import { section, setting, sheet } from './setting.ts';
import { assembly, cautions, supplies, zeroing } from './steps.ts';

/** Words of the edge-referenced rest. */
export const edgeRest = {
  label: 'Edge-referenced rest',
  meaning:
    'The blade stands edge down on a seat, its edge against a lip under a wheel; the distance of the lip from the wheel sets the height of the hollow.',
  checks,
  issues,
  parameters,
  parts,
  reach,
  section,
  setting,
  sheet,
  assembly,
  supplies,
  zeroing,
  cautions,
} as const;
