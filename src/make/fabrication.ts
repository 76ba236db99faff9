import type { CheckResult } from '../check/result.ts';
import type { Making } from '../document/schema.ts';
import type { Part } from '../model/part.ts';
import { plateRules, printRules, type Violation } from '../model/rules.ts';
import { text } from '../text/index.ts';

const judged = (part: Part, nozzle: number): readonly Violation[] => {
  if (part.kind === 'plate') return plateRules(part);
  return part.kind === 'print' ? printRules(part, nozzle) : [];
};

interface Judged {
  readonly nozzle: number;
  readonly found: readonly Violation[];
}

/** What was found of a part, which never changes: a drag makes few parts anew. */
const known = new WeakMap<Part, Judged>();

/** What the ways of making a design cannot make, or make badly, of its parts. */
export const violations = (
  parts: readonly Part[],
  { prints: { nozzle } }: Making,
): readonly Violation[] =>
  parts.flatMap((part) => {
    const before = known.get(part);
    if (before?.nozzle === nozzle) return before.found;
    const found = judged(part, nozzle);
    known.set(part, { nozzle, found });
    return found;
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
