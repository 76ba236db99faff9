import { columnFrom, type Field } from './field.ts';
import type { Reached } from './hold/hold.ts';
import { cutterOf, type Surface } from './surface.ts';

/**
 * The near face after the blade was led through the poses of a stroke: every node is taken down to
 * the abrasive face of every pose that has it under the belt. Most places are reached deepest at the
 * very end of the belt, between two poses: where a node passes an end of the belt, depth and place
 * are taken straight between the two poses, which errs by the square of their distance. Metal never
 * goes beyond the far face.
 */
export const cutBy = (
  field: Field,
  near: Float64Array,
  far: Float64Array,
  reached: readonly Reached[],
  surface: Surface,
  beltWidth: number,
): Float64Array => {
  const { us, rows, v } = field;
  const half = beltWidth / 2;
  const face = near.slice();
  const highest = v.reduce((most, at) => Math.max(most, Math.abs(at)), 0);
  // Depth and place under the last pose that looked at a node, and which pose that was.
  const lastDepth = new Float64Array(v.length);
  const lastAcross = new Float64Array(v.length);
  const lastPose = new Int32Array(v.length).fill(-2);
  const take = (k: number, n: number): void => {
    if (n < (face[k] ?? 0)) face[k] = Math.max(n, -(far[k] ?? 0));
  };
  let lastM = reached[0]?.pose.m ?? 0;
  reached.forEach(({ pose }, index) => {
    const { depth, across } = cutterOf(pose, surface);
    // The belt's band leans across the blade with its pitch; its ends bound the columns.
    const slack = 1 + 2 * Math.abs(pose.m - lastM) + highest * Math.abs(pose.x[2] / pose.x[1]);
    lastM = pose.m;
    const first = columnFrom(field, pose.m - half - slack);
    const last = columnFrom(field, pose.m + half + slack);
    for (let i = first; i < last; i += 1) {
      const du = (us[i] ?? 0) - pose.m;
      for (let k = i * rows; k < (i + 1) * rows; k += 1) {
        const dv = (v[k] ?? 0) - pose.v0;
        const n = depth(du, dv);
        const x = n === Infinity ? across(du, dv, 0) : across(du, dv, n);
        const under = Math.abs(x) <= half;
        if (under) take(k, n);
        if (lastPose[k] === index - 1) {
          const before = lastAcross[k] ?? 0;
          if (Math.abs(before) <= half !== under) {
            const end = (under ? before : x) > 0 ? half : -half;
            const share = (end - before) / (x - before);
            const was = lastDepth[k] ?? 0;
            take(k, was + share * (n - was));
          }
        }
        lastDepth[k] = n;
        lastAcross[k] = x;
        lastPose[k] = index;
      }
    }
  });
  return face;
};

/** Whether two faces differ where seat or step may touch the blade: on the spine's corner. */
export const spineMoved = (
  { us, rows, spineRows }: Field,
  before: Float64Array,
  after: Float64Array,
  by: number,
): boolean => {
  for (let i = 0; i < us.length; i += 1)
    for (let j = 0; j <= spineRows; j += 1) {
      const k = i * rows + j;
      if ((before[k] ?? 0) - (after[k] ?? 0) > by) return true;
    }
  return false;
};
