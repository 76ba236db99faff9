import { chain, ok, type Result } from '../../core/result.ts';
import type { Making } from '../../document/schema.ts';
import { lintPrintMesh, stl, stlName, threeMf, type PackageFile } from '../../export/index.ts';
import { couponLayers, openingsOf, pinnedOpening, rowLabel } from '../../model/fit-coupon.ts';
import { boundingBox, unionBox } from '../../geometry/loop-measure.ts';
import type { PrintPart } from '../../model/part.ts';
import { meshOf } from '../../model/solid.ts';
import { text } from '../../text/index.ts';
import { utf8 } from './bytes.ts';

const ID = 'fit-coupon';
const KIND = 'fit-coupon';

/**
 * The fit coupon of the printed parts as 3MF and STL, and in words how it is read. No file where
 * no printed part has an opening.
 */
export const couponFiles = (
  parts: readonly PrintPart[],
  { prints: { play, fit } }: Making,
  carry: string,
): Result<PackageFile[]> =>
  chain(openingsOf(parts, play[fit]), (openings) => {
    if (openings.length === 0) return ok([]);
    const words = text.make.coupon;
    const rows = openings.map((opening) => words.row(rowLabel(opening), opening.uses));
    const pinned = pinnedOpening(openings);
    const pins = pinned ? words.pins(rowLabel(pinned)) : [];
    return chain(couponLayers(openings), (layers) =>
      chain(meshOf(layers), (mesh) => {
        const { min, max } = unionBox(layers.map(({ profile }) => boundingBox(profile.outer)));
        const reading = words.reading(
          [max[0] - min[0], max[1] - min[1]],
          rows,
          pins,
          play,
          text.document.parameters.making.fit.options[fit],
        );
        const lint = lintPrintMesh(mesh);
        const object = { name: words.name, id: ID, mesh, lint, quantity: 1 };
        return chain(threeMf([object], { title: words.name, carry }), (packed) =>
          chain(stl(mesh, lint), (plainMesh) =>
            ok<PackageFile[]>([
              { path: `prints/${ID}_mm.3mf`, kind: KIND, bytes: packed },
              { path: `prints/${stlName(ID)}`, kind: KIND, bytes: plainMesh },
              { path: `prints/${ID}.txt`, kind: KIND, bytes: utf8(reading) },
            ]),
          ),
        );
      }),
    );
  });
