import { utf8 } from './bytes.ts';

export type Cell = string | number;

/** A field of comma-separated values (RFC 4180): quoted where it must be. */
const field = (value: Cell): string => {
  const content = String(value);
  return /[",\r\n]/.test(content) ? `"${content.replaceAll('"', '""')}"` : content;
};

/** A table as comma-separated values, RFC 4180, UTF-8. */
export const csv = (rows: readonly (readonly Cell[])[]): Uint8Array =>
  utf8(rows.map((row) => `${row.map(field).join(',')}\r\n`).join(''));
