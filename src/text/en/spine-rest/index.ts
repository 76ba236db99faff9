import { checks } from './checks.ts';
import { issues } from './issues.ts';
import { parameters } from './parameters.ts';
import { parts } from './parts.ts';
import { reach } from './reach.ts';
import { section, setting, sheet } from './setting.ts';
import { strip } from './strip.ts';
import { assembly, cautions, supplies, zeroing } from './steps.ts';

/** Words of the spine-referenced rest. */
export const spineRest = {
  label: 'Spine-referenced rest',
  meaning:
    'The blade stands edge up, its blunt spine on a nose in front of the platen and against a step; the distance of the step from the belt sets the bevel angle.',
  checks,
  issues,
  parameters,
  parts,
  reach,
  section,
  setting,
  sheet,
  strip,
  assembly,
  supplies,
  zeroing,
  cautions,
} as const;
