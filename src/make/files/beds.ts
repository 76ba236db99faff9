import { problem } from '../../core/issue.ts';
import { all, chain, ok, type Result } from '../../core/result.ts';
import type { Making } from '../../document/schema.ts';
import { threeMf, type PackageFile, type PrintItem, type PrintObject } from '../../export/index.ts';
import { boundingBox } from '../../geometry/loop-measure.ts';
import { pack } from '../../geometry/pack.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { unionBox } from '../../geometry/loop-measure.ts';
import type { PrintPart } from '../../model/part.ts';
import { text } from '../../text/index.ts';

/** A printed part with its mesh, as it goes into a 3MF. */
export interface Printed {
  readonly part: PrintPart;
  readonly object: PrintObject;
}

/** Between two prints, and to the edge of the bed, mm: room for brims and clips (common practice). */
const ROOM = { gap: 5, margin: 5 } as const;

const sizeOf = ({ layers }: PrintPart): Vec2 => {
  const { min, max } = unionBox(layers.map(({ profile }) => boundingBox(profile.outer)));
  return [max[0] - min[0], max[1] - min[1]];
};

const heightOf = ({ layers }: PrintPart): number =>
  Math.max(...layers.map(({ to }) => to)) - Math.min(...layers.map(({ from }) => from));

/**
 * All prints in their number on as few beds as it takes, one 3MF a bed with one named object a
 * part. Nothing is tipped: parts keep the face they lie on and are at most turned on the bed. A
 * part larger than the bed, or higher than the printer reaches, is left out with a warning that
 * names it; its own file is there.
 */
export const bedFiles = (
  printed: readonly Printed[],
  { prints: { bed } }: Making,
  carry: string,
): Result<PackageFile[]> => {
  const high = printed.filter(({ part }) => heightOf(part) > bed.height + 1e-9);
  const low = printed.filter((one) => !high.includes(one));
  const copies = low.flatMap((one) => Array.from({ length: one.part.quantity }, () => one));
  const sheet: Vec2 = [bed.width, bed.depth];
  const { packed, tooLarge } = pack(
    copies.map(({ part }) => sizeOf(part)),
    { sheet, ...ROOM },
  );
  const left = low.filter((one) => tooLarge.some((i) => copies[i] === one));
  const warnings = [
    ...left.map(({ part }) =>
      problem(
        'bed-too-small',
        'making.prints.bed',
        text.make.bedTooSmall(part.name, sizeOf(part), sheet, ROOM.margin),
        'warning',
      ),
    ),
    ...high.map(({ part }) =>
      problem(
        'bed-too-low',
        'making.prints.bed.height',
        text.make.bedTooLow(part.name, heightOf(part), bed.height),
        'warning',
      ),
    ),
  ];
  const count = Math.max(-1, ...packed.map((place) => place.sheet)) + 1;
  const beds = Array.from({ length: count }, (_, n): Result<PackageFile> => {
    const here = packed.filter((place) => place.sheet === n);
    const on = low.filter((one) => here.some(({ index }) => copies[index] === one));
    const items = here.map(({ index, at, turned }): PrintItem => ({
      object: on.findIndex((one) => one === copies[index]),
      at,
      turned,
    }));
    const title = text.make.bedTitle(n + 1, count);
    const objects = on.map(({ object }) => object);
    return chain(threeMf(objects, { title, items, carry }), (bytes) =>
      ok({ path: `prints/bed-${String(n + 1)}_mm.3mf`, kind: 'print-bed', bytes }),
    );
  });
  return chain(all(beds), (files) => ok(files, warnings));
};
