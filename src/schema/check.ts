import * as v from 'valibot';
import { problem, type Issue } from '../core/issue.ts';
import { ok, type Result } from '../core/result.ts';
import { text } from '../text/index.ts';

/** A name for programs of each kind of finding. */
const CODES: Readonly<Record<string, string>> = {
  min_value: 'out-of-range',
  max_value: 'out-of-range',
  integer: 'not-whole',
  picklist: 'unknown-choice',
  variant: 'unknown-kind',
  min_length: 'wrong-length',
  max_length: 'wrong-length',
  regex: 'wrong-characters',
};

const codeOf = (issue: v.BaseIssue<unknown>): string =>
  issue.received === 'undefined' ? 'missing' : (CODES[issue.type] ?? 'wrong-type');

const toIssue = (issue: v.BaseIssue<unknown>): Issue => {
  const [message = '', fix = text.document.field.otherwise] = issue.message.split('\n');
  return problem(codeOf(issue), v.getDotPath(issue) ?? '', { message, fix });
};

/** Fields of the input that the checked value no longer holds. */
const dropped = (input: unknown, kept: unknown, path: string): Issue[] => {
  if (typeof input !== 'object' || typeof kept !== 'object' || !input || !kept) return [];
  const known = new Map(Object.entries(kept));
  return Object.entries(input).flatMap(([key, value]: [string, unknown]) => {
    const at = path === '' ? key : `${path}.${key}`;
    return known.has(key)
      ? dropped(value, known.get(key), at)
      : [problem('unknown-field', at, text.document.field.unknown(key), 'warning')];
  });
};

/**
 * Checks plain data against a schema: the value with every initial value filled in and a warning
 * for each field that is not known (and was dropped), or an error for each field that is wrong.
 */
export const checkFields = <Schema extends v.GenericSchema>(
  schema: Schema,
  input: unknown,
): Result<v.InferOutput<Schema>> => {
  const checked = v.safeParse(schema, input);
  return checked.success
    ? ok(checked.output, dropped(input, checked.output, ''))
    : { ok: false, issues: checked.issues.map(toIssue) };
};
