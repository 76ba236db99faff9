import type { PackageFile } from '../../export/index.ts';
import type { Fixture } from '../../family/index.ts';
import type { Part } from '../../model/part.ts';
import { text } from '../../text/index.ts';
import { csv } from './table.ts';

/** What has to be bought or be at hand: hardware, stock and supplies, one line each. */
export const hardwareFile = (
  parts: readonly Part[],
  supplies: Fixture['supplies'] = [],
): PackageFile => {
  const rows = parts.flatMap((part) => {
    if (part.kind === 'hardware')
      return [[part.quantity, part.designation, part.name, part.material]];
    return part.kind === 'stock' ? [[part.quantity, part.section, part.name, part.material]] : [];
  });
  const used = supplies.map(([what, use]) => [text.make.asNeeded, what, use, '']);
  return {
    path: 'hardware.csv',
    kind: 'hardware-list',
    bytes: csv([text.make.hardwareColumns, ...rows, ...used]),
  };
};
