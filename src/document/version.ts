import { problem } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { text } from '../text/index.ts';

/** Plain data of a file whose fields are not checked yet. */
export type Draft = Readonly<Record<string, unknown>>;

/** One step from version `from` to the next; it sees data of that version and must not fail. */
export interface Migration {
  readonly from: number;
  /** What it changes, for the log of the format. */
  readonly change: string;
  readonly up: (draft: Draft) => Draft;
}

/** A file format: its mark, its version, and the way there from every earlier one. */
export interface Format {
  readonly mark: string;
  /** What a person calls it: "design", "grinder". */
  readonly noun: string;
  readonly version: number;
  readonly migrations: readonly Migration[];
}

const words = text.document.open;

export const isDraft = (value: unknown): value is Draft =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * Brings plain data of any known version to the present one. Refused: another format, no
 * version, a newer version (which this program would only damage).
 */
export const upgrade = (value: unknown, format: Format, path = ''): Result<Draft> => {
  const at = (key: string): string => (path === '' ? key : `${path}.${key}`);
  if (!isDraft(value) || value.format !== format.mark) {
    const found = isDraft(value) ? value.format : value;
    return fail(problem('not-this-format', at('format'), words.notFormat(format, found)));
  }
  const version = value.schema;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return fail(problem('no-version', at('schema'), words.noVersion(format, version)));
  if (version > format.version)
    return fail(problem('too-new', at('schema'), words.tooNew(format, version)));
  let draft: Draft = value;
  for (let from = version; from < format.version; from += 1) {
    const migration = format.migrations.find((step) => step.from === from);
    if (migration === undefined)
      return fail(problem('too-old', at('schema'), words.tooOld(format, version)));
    draft = { ...migration.up(draft), schema: from + 1 };
  }
  return ok(draft);
};
