import type { Mend } from '../core/issue.ts';
import { valueAt } from '../core/path.ts';
import { gridDown, gridUp } from '../core/units.ts';
import type { CheckResult } from './result.ts';

/** Deviations of a line that a person allows: taking what was found is a choice, not a risk. */
const ALLOWANCE = /^blades\.\d+\.line\.allowed$/;

/**
 * The value that mends a failed check, where the numbers alone say it: the check holds a
 * parameter's own value against a limit (the limit mends it), or the line's deviation against
 * what the design allows (allowing it mends it). No margin of safety is ever offered smaller.
 */
export const mendOf = (design: unknown, check: CheckResult): Mend | undefined => {
  const { passed, found, parameter: path, atLeast, atMost } = check;
  if (passed || found === null || path === undefined) return undefined;
  const value = valueAt(design, path);
  if (typeof value !== 'number') return undefined;
  if (ALLOWANCE.test(path) && value === atMost) return { path, value: gridUp(found) };
  if (value !== found) return undefined;
  if (atLeast !== undefined && found < atLeast) return { path, value: gridUp(atLeast) };
  return atMost !== undefined && found > atMost ? { path, value: gridDown(atMost) } : undefined;
};
