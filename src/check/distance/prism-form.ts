import type { Vec3 } from '../../geometry/vector.ts';
import type { Prism } from '../../model/prisms.ts';
import { formOf, type Form } from './form.ts';
import { packPieces } from './pieces.ts';

/**
 * The form of prisms: each is a piece, its lower corners and then those above them in the same order.
 */
export const prismForm = (prisms: readonly Prism[]): Form => {
  const pieces = packPieces(
    prisms.map(({ polygon, from, to }) =>
      [from, to].flatMap((z) => polygon.map(([x, y]): Vec3 => [x, y, z])),
    ),
    [],
  );
  // Which of them hang together is not asked: each has an anchor of its own.
  const anchors = prisms.flatMap(({ polygon: [first = [NaN, NaN]], from }) => [...first, from]);
  return formOf('prisms', pieces, Float64Array.from(anchors));
};
