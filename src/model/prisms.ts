import { problem } from '../core/issue.ts';
import { all, chain, fail, ok, type Result } from '../core/result.ts';
import { polygon } from '../geometry/loop.ts';
import { signedArea } from '../geometry/loop-measure.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { text } from '../text/index.ts';
import { convexParts } from './convex.ts';
import type { Layer } from './part.ts';
import { stackOf, type Sheet } from './stack.ts';

/** A convex polygon, anticlockwise, between two levels, mm. */
export interface Prism {
  readonly polygon: readonly Vec2[];
  readonly from: number;
  readonly to: number;
}

/** Share of its area by which the parts of a face may miss it: what rounding leaves. */
const SHARE = 1e-9;

const areaOf = (points: readonly Vec2[]): number => signedArea(polygon(points));

/** Convex polygons that fill a sheet; none where its contours enclose no face. */
const partsOf = (sheet: Sheet): Vec2[][] | undefined => {
  const rings = sheet.map(({ ring: { points, isHole } }) =>
    isHole ? points.toReversed() : points,
  );
  const parts = convexParts(rings);
  const whole = rings.reduce((sum, ring) => sum + areaOf(ring), 0);
  const filled = parts.reduce((sum, part) => sum + areaOf(part), 0);
  return Math.abs(filled - whole) <= SHARE * areaOf(rings[0] ?? []) ? parts : undefined;
};

/**
 * Convex prisms that fill a stack of flat profiles and overlap nowhere: for distances a solid is a few
 * of these where its surface is thousands of triangles. Contours are polygons that leave their curves
 * by at most `chord` mm, holes around theirs, as in a mesh of the stack. Fails where the stack does, and
 * on contours that enclose no face.
 */
export const prismsOf = (layers: readonly Layer[], chord: number): Result<Prism[]> =>
  chain(stackOf(layers, chord, 'circumscribed'), ({ sheets }) => {
    const known = new Map<string, Vec2[][] | undefined>();
    const lists = sheets.map((sheet): Result<Prism[]> => {
      const [{ from, to }] = sheet;
      const key = sheet.map(({ ring }) => ring.number).join(' ');
      if (!known.has(key)) known.set(key, partsOf(sheet));
      const parts = known.get(key);
      return parts
        ? ok(parts.map((part) => ({ polygon: part, from, to })))
        : fail(problem('layer-without-face', '', text.model.layerWithoutFace(from, to)));
    });
    return chain(all(lists), (prisms) => ok(prisms.flat()));
  });
