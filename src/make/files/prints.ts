import { all, chain, ok, type Result } from '../../core/result.ts';
import { stl, stlName, threeMf, type PackageFile } from '../../export/index.ts';
import type { Part, PrintPart } from '../../model/part.ts';
import { meshOf } from '../../model/solid.ts';

const isPrint = (part: Part): part is PrintPart => part.kind === 'print';

/** 3MF (it carries the unit) and STL of every print, as it lies on the bed. */
export const printFiles = (parts: readonly Part[], carry: string): Result<PackageFile[]> =>
  chain(
    all(
      parts.filter(isPrint).map((part) =>
        chain(meshOf(part.layers), (mesh) => {
          const entry = { kind: 'print', part: part.id, quantity: part.quantity };
          const object = { name: part.name, id: part.id, mesh, quantity: part.quantity };
          return chain(threeMf([object], { title: part.name, carry }), (packed) =>
            chain(stl(mesh), (plainMesh) =>
              ok<PackageFile[]>([
                { ...entry, path: `prints/${part.id}_mm.3mf`, bytes: packed },
                { ...entry, path: `prints/${stlName(part.id)}`, bytes: plainMesh },
              ]),
            ),
          );
        }),
      ),
    ),
    (files) => ok(files.flat()),
  );
