import { cuttingsOf, deepest, type Cutting } from './cutting.ts';
import type { Field } from './field.ts';
import type { Faces, Reached } from './hold/hold.ts';
import { acrossAt, depthAt, PARTLY, UNDER, type Cutter, type Surface } from './surface.ts';

/**
 * The near face after the blade was led through the poses of a stroke: every node is taken down to
 * the abrasive face of every pose that has it under the belt. Most places are reached deepest at the
 * very end of the belt, between two poses: where a node passes an end of the belt, depth and place
 * are taken straight between the two poses, which errs by the square of their distance. Metal never
 * goes beyond the far face. `done`: the poses that have cut the near face before; what two of them
 * in a row take is gone.
 */
export const cutBy = (
  field: Field,
  { near, far }: Faces,
  reached: readonly Reached[],
  done: readonly Reached[],
  surface: Surface,
  beltWidth: number,
): Float64Array => {
  const { us, rows, v } = field;
  const half = beltWidth / 2;
  const face = near.slice();
  const cuttings = cuttingsOf(field, reached, surface, half);
  const order = new Map(done.map((one, i) => [one, i]));
  const gone = reached.map((one, index) => {
    const [was, is] = [reached[index - 1], one].map((pose) => pose && order.get(pose));
    return is !== undefined && (index === 0 || was === is - 1);
  });
  const under: Cutting[] = [];
  const [top, low] = [new Float64Array(cuttings.length), new Float64Array(cuttings.length)];
  for (let i = 0; i < us.length; i += 1) {
    const u = us[i] as number;
    const column = v.subarray(i * rows, (i + 1) * rows);
    const taken = face.subarray(i * rows, (i + 1) * rows);
    const [from, to] = [column[0] as number, column[rows - 1] as number];
    under.length = 0;
    let before: Cutting | undefined;
    for (let index = 0; index < cuttings.length; index += 1) {
      const now = cuttings[index] as Cutting;
      const was = before;
      before = now;
      if (i < now.first || i >= now.last || gone[index]) continue;
      const lie = now.lies[i - now.first];
      const followed = was !== undefined && i >= was.first && i < was.last;
      if (lie === PARTLY || (followed && was.lies[i - was.first] !== lie))
        takePassed(taken, column, u, half, now.cutter, followed ? was.cutter : undefined);
      else if (lie === UNDER) {
        const count = under.push(now) - 1;
        top[count] = depthAt(now.cutter, u, from);
        low[count] = depthAt(now.cutter, u, to);
      }
    }
    const most = surface.round === undefined ? deepest(under, top, low) : under;
    for (const cutting of most) takeWhole(taken, column, u, cutting);
    // Metal never goes beyond the far face.
    for (let k = i * rows; k < (i + 1) * rows; k += 1) {
      const end = -(far[k] as number);
      if ((face[k] as number) < end && (face[k] as number) < (near[k] as number)) face[k] = end;
    }
  }
  return face;
};

/** Takes a column down to the abrasive face of a pose that has all of it under the belt. */
const takeWhole = (
  taken: Float64Array,
  column: Float64Array,
  u: number,
  { cutter }: Cutting,
): void => {
  for (let k = 0; k < column.length; k += 1) {
    const n = depthAt(cutter, u, column[k] as number);
    if (n < (taken[k] as number)) taken[k] = n;
  }
};

/** The same of the nodes that an end of the belt may have passed since the pose before. */
const takePassed = (
  taken: Float64Array,
  column: Float64Array,
  u: number,
  half: number,
  now: Cutter,
  before: Cutter | undefined,
): void => {
  for (let k = 0; k < column.length; k += 1) {
    const v = column[k] as number;
    const n = depthAt(now, u, v);
    const x = acrossAt(now, u, v, n === Infinity ? 0 : n);
    const under = Math.abs(x) <= half;
    if (under && n < (taken[k] as number)) taken[k] = n;
    if (before === undefined) continue;
    const n0 = depthAt(before, u, v);
    const x0 = acrossAt(before, u, v, n0 === Infinity ? 0 : n0);
    if (Math.abs(x0) <= half === under) continue;
    const end = (under ? x0 : x) > 0 ? half : -half;
    const between = n0 + ((end - x0) / (x - x0)) * (n - n0);
    if (between < (taken[k] as number)) taken[k] = between;
  }
};

/**
 * How far two faces differ where seat or step may touch the blade, on the spine's corner, and
 * between what places they do.
 */
export const spineMoved = (
  { us, rows, spineRows }: Field,
  before: Float64Array,
  after: Float64Array,
): { readonly by: number; readonly from: number; readonly to: number } => {
  let [by, from, to] = [0, Infinity, -Infinity];
  for (let i = 0; i < us.length; i += 1)
    for (let j = 0; j <= spineRows; j += 1) {
      const off = Math.abs((before[i * rows + j] as number) - (after[i * rows + j] as number));
      if (off === 0) continue;
      by = Math.max(by, off);
      from = Math.min(from, us[i] as number);
      to = us[i] as number;
    }
  return { by, from, to };
};
