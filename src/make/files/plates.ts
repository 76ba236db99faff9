import { all, chain, ok, type Result } from '../../core/result.ts';
import type { Making } from '../../document/schema.ts';
import { dxfName, plateDxf, type DxfOptions, type PackageFile } from '../../export/index.ts';
import type { Part, PlatePart } from '../../model/part.ts';
import { utf8 } from './bytes.ts';
import { nestedFiles } from './nest.ts';

const isPlate = (part: Part): part is PlatePart => part.kind === 'plate';

/** Cut at nominal size by a saw: there is no beam to allow for. */
const kerfOf = (part: PlatePart, making: Making): number =>
  part.process === 'saw-drill' ? 0 : making.plates.kerf;

/**
 * Cut files of every plate: the current flavour and the compatible one, and where something is
 * engraved a third file that marks it; one in inches and nested sheets where they are asked for.
 */
export const plateFiles = (
  parts: readonly Part[],
  making: Making,
  carry: string,
): Result<PackageFile[]> => {
  const file = (part: PlatePart, options: DxfOptions): Result<PackageFile> =>
    chain(plateDxf(part, { ...options, carry }), (dxf) =>
      ok({
        path: `plates/${dxfName(part.id, options)}`,
        kind: 'cut-file',
        part: part.id,
        quantity: part.quantity,
        bytes: utf8(dxf),
      }),
    );
  const plates = parts.filter(isPlate);
  const { inches, nest } = making.plates;
  const single = all(
    plates.flatMap((part) => {
      const kerf = kerfOf(part, making);
      return [
        file(part, { kerf }),
        file(part, { kerf, flavour: 'r12' }),
        ...(part.engraving.length > 0 ? [file(part, { kerf, engrave: true })] : []),
        ...(inches === 'beside' ? [file(part, { kerf, units: 'in' })] : []),
      ];
    }),
  );
  if (nest.sheets === 'no') return single;
  return chain(single, (files) =>
    chain(nestedFiles(plates, making, carry), (sheets) => ok([...files, ...sheets])),
  );
};
