import { all, chain, ok, type Result } from '../../core/result.ts';
import type { Making } from '../../document/schema.ts';
import { lintPrintMesh, stl, stlName, threeMf, type PackageFile } from '../../export/index.ts';
import type { Part, PrintPart } from '../../model/part.ts';
import { meshOf } from '../../model/solid.ts';
import { bedFiles, type Printed } from './beds.ts';
import { couponFiles } from './coupon.ts';

const isPrint = (part: Part): part is PrintPart => part.kind === 'print';

const withMesh = (part: PrintPart): Result<Printed> =>
  chain(meshOf(part.layers), (mesh) =>
    ok({
      part,
      object: {
        name: part.name,
        id: part.id,
        mesh,
        lint: lintPrintMesh(mesh),
        quantity: part.quantity,
      },
    }),
  );

/** 3MF (it carries the unit) and STL of one print, as it lies on the bed. */
const singleFiles = ({ part, object }: Printed, carry: string): Result<PackageFile[]> => {
  const entry = { kind: 'print', part: part.id, quantity: part.quantity };
  return chain(threeMf([object], { title: part.name, carry }), (packed) =>
    chain(stl(object.mesh, object.lint), (plainMesh) =>
      ok<PackageFile[]>([
        { ...entry, path: `prints/${part.id}_mm.3mf`, bytes: packed },
        { ...entry, path: `prints/${stlName(part.id)}`, bytes: plainMesh },
      ]),
    ),
  );
};

/** Files of every print by itself, of all of them on their beds, and the fit coupon. */
export const printFiles = (
  parts: readonly Part[],
  making: Making,
  carry: string,
): Result<PackageFile[]> => {
  const prints = parts.filter(isPrint);
  return chain(all(prints.map(withMesh)), (printed) =>
    chain(all(printed.map((one) => singleFiles(one, carry))), (single) =>
      chain(bedFiles(printed, making, carry), (beds) =>
        chain(couponFiles(prints, making, carry), (coupon) =>
          ok([...single.flat(), ...beds, ...coupon]),
        ),
      ),
    ),
  );
};
