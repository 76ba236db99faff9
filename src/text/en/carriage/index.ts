import { checks } from './checks.ts';
import { issues } from './issues.ts';
import { parameters } from './parameters.ts';
import { parts } from './parts.ts';
import { certainty, plan } from './plan.ts';
import { reach } from './reach.ts';
import { section, setting, sheet } from './setting.ts';
import { assembly, cautions, supplies, zeroing } from './steps.ts';

/** Words of the guided-angle carriage. */
export const carriage = {
  label: 'Guided-angle carriage',
  meaning:
    'The blade is clamped on a square upright; a heel screw tips the carriage to the bevel angle and a fence stops it, so that it cuts one plane: for short or thick blades and steep plunges.',
  assembly,
  cautions,
  certainty,
  checks,
  issues,
  parameters,
  parts,
  plan,
  reach,
  section,
  setting,
  sheet,
  supplies,
  zeroing,
} as const;
