import type { Frame } from '../../geometry/frame.ts';
import { pieceBounds, type Pieces } from './pieces.ts';
import type { Filling, TreeSolid } from './solid.ts';
import { fitTree, treeNodes } from './tree.ts';

/** A sound solid, ready to be placed: what does not depend on where it stands is done. */
export interface Form {
  readonly at: (frame: Frame) => TreeSolid;
}

/** Points in a frame. */
const placed = (points: Float64Array, { origin, x, y, z }: Frame): Float64Array => {
  const there = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    const [u, v, w] = [points[i] as number, points[i + 1] as number, points[i + 2] as number];
    there[i] = origin[0] + x[0] * u + y[0] * v + z[0] * w;
    there[i + 1] = origin[1] + x[1] * u + y[1] * v + z[1] * w;
    there[i + 2] = origin[2] + x[2] * u + y[2] * v + z[2] * w;
  }
  return there;
};

/** The form of pieces with flat sides; `anchors` are as those of a solid. */
export const formOf = (of: Filling, pieces: Pieces, anchors: Float64Array): Form => {
  // Halved as the pieces come: neighbours stay neighbours wherever they stand.
  const next = treeNodes(pieceBounds(pieces));
  return {
    at: (frame) => {
      const there = { ...pieces, points: placed(pieces.points, frame) };
      return {
        kind: 'tree',
        of,
        pieces: there,
        tree: fitTree(next, pieceBounds(there)),
        anchors: placed(anchors, frame),
        proud: 0,
      };
    },
  };
};
