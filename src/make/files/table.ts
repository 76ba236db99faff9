import { utf8 } from './bytes.ts';

export type Cell = string | number;

const NUMBER = /^-?\d+(?:\.\d+)?$/;

/**
 * Beginnings that make a spreadsheet take a cell for a formula, in wide letters too; OWASP, "CSV
 * Injection". A blade's name may begin like that.
 */
const FORMULA = /^[\s\uFEFF]*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]/;

/** Text as it is, but for what would be computed: an apostrophe before it keeps it text. */
const inert = (content: string): string =>
  FORMULA.test(content) && !NUMBER.test(content) ? `'${content}` : content;

/** A field of comma-separated values (RFC 4180): quoted where it must be. */
const field = (value: Cell): string => {
  const content = typeof value === 'number' ? String(value) : inert(value);
  return /[",\r\n]/.test(content) ? `"${content.replaceAll('"', '""')}"` : content;
};

/** A table as comma-separated values, RFC 4180, UTF-8; no cell of it is a formula. */
export const csv = (rows: readonly (readonly Cell[])[]): Uint8Array =>
  utf8(rows.map((row) => `${row.map(field).join(',')}\r\n`).join(''));
