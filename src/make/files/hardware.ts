import type { PackageFile } from '../../export/index.ts';
import type { Part } from '../../model/part.ts';
import { text } from '../../text/index.ts';
import { utf8 } from './bytes.ts';

/** A field of comma-separated values (RFC 4180): quoted where it must be. */
const field = (value: string | number): string => {
  const content = String(value);
  return /[",\r\n]/.test(content) ? `"${content.replaceAll('"', '""')}"` : content;
};

/** What has to be bought: hardware and stock, one line each. */
export const hardwareFile = (parts: readonly Part[]): PackageFile => {
  const rows = parts.flatMap((part) => {
    if (part.kind === 'hardware')
      return [[part.quantity, part.designation, part.name, part.material]];
    return part.kind === 'stock' ? [[part.quantity, part.section, part.name, part.material]] : [];
  });
  const lines = [text.make.hardwareColumns, ...rows].map((row) => row.map(field).join(','));
  return { path: 'hardware.csv', kind: 'hardware-list', bytes: utf8(`${lines.join('\r\n')}\r\n`) };
};
