import type { CheckResult } from '../check/result.ts';
import type { Making } from '../document/schema.ts';
import type { Part } from '../model/part.ts';
import { plateRules, printRules, type Violation } from '../model/rules.ts';
import { text } from '../text/index.ts';

/** What the ways of making a design cannot make, or make badly, of its parts. */
export const violations = (parts: readonly Part[], { prints }: Making): Violation[] =>
  parts.flatMap((part) => {
    if (part.kind === 'plate') return plateRules(part);
    return part.kind === 'print' ? printRules(part, prints.nozzle) : [];
  });

/** A feature that cannot be made as a failed check, so that it blocks the files like any other. */
export const failedCheck = ({
  code,
  path,
  feature,
  value,
  least,
  message,
  fix,
}: Violation): CheckResult => ({
  id: `fabrication/${path.replace('.', '/')}/${code}`,
  label: feature,
  kind: 'fabrication',
  passed: false,
  unit: 'mm',
  found: value ?? null,
  ...(least === undefined ? {} : { atLeast: least }),
  basis: text.check.rules.basis,
  message,
  fix,
});
