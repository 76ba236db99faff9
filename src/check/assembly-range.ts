import { text } from '../text/index.ts';
import type { CheckResult } from './result.ts';

/** A number held to limits. */
export interface RangeTerms {
  readonly id: string;
  readonly label: string;
  readonly kind?: CheckResult['kind'];
  readonly unit?: CheckResult['unit'];
  readonly found: number | null;
  readonly atLeast?: number;
  readonly atMost?: number;
  readonly basis: string;
  readonly fix: string;
  readonly parameter?: string;
  readonly pose?: CheckResult['pose'];
}

/** Slack of a comparison: rounding of a sum that is meant to be equal. */
const ROUNDING = 1e-9;

/** Holds a number to its limits; one that is null or not finite has failed. */
export const rangeCheck = (terms: RangeTerms): CheckResult => {
  const { id, label, atLeast, atMost, basis, fix, parameter, pose } = terms;
  const found = terms.found !== null && Number.isFinite(terms.found) ? terms.found : null;
  const unit = terms.unit ?? 'mm';
  const passed =
    found !== null &&
    (atLeast === undefined || found >= atLeast - ROUNDING) &&
    (atMost === undefined || found <= atMost + ROUNDING);
  return {
    id,
    label,
    kind: terms.kind ?? 'range',
    passed,
    unit,
    found,
    ...(atLeast === undefined ? {} : { atLeast }),
    ...(atMost === undefined ? {} : { atMost }),
    basis,
    ...(pose === undefined ? {} : { pose }),
    message: text.check.assembly.range(label, found, unit, atLeast, atMost),
    fix: passed ? '' : fix,
    ...(parameter === undefined ? {} : { parameter }),
  };
};
