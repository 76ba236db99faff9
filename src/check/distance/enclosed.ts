import type { Vec3 } from '../../geometry/vector.ts';
import { pointAt, real } from './flat.ts';
import { insideSurface } from './inside.ts';
import { applyBack, applyPose } from './motion.ts';
import { FROM, START_POSE, STRIDE, sweepAt, type Relative } from './relative.ts';
import type { TreeSolid } from './solid.ts';

/** Where one solid is inside another: a point of it, in the coordinates of the still body. */
export interface Inside {
  readonly sweep: number;
  readonly t: number;
  readonly point: Vec3;
}

/** A point of every piece of a solid that is apart from the others; none where the other is open. */
const anchorsOf = ({ anchors }: TreeSolid, { of }: TreeSolid): Vec3[] => {
  const points: Vec3[] = [];
  for (let i = 0; of === 'facets' && i < anchors.length; i += 3) points.push(pointAt(anchors, i));
  return points;
};

const insideAt = (motion: Relative, node: number, point: Vec3): Inside => ({
  sweep: sweepAt(motion, node),
  t: real(motion.data, node * STRIDE + FROM),
  point,
});

/**
 * A solid wholly inside the other at the start of some sweep. Called where no surfaces meet on any
 * sweep: then what is inside stays inside.
 */
export const findInside = (
  moving: TreeSolid,
  still: TreeSolid,
  motion: Relative,
): Inside | undefined => {
  const { data } = motion;
  const [carried, standing] = [anchorsOf(moving, still), anchorsOf(still, moving)];
  for (const node of motion.whole) {
    const pose = node * STRIDE + START_POSE;
    for (const at of carried) {
      const point = applyPose(data, pose, at);
      if (insideSurface(still, point)) return insideAt(motion, node, point);
    }
    for (const point of standing)
      if (insideSurface(moving, applyBack(data, pose, point))) return insideAt(motion, node, point);
  }
  return undefined;
};
