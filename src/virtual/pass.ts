import { columnFrom, type Field } from './field.ts';
import type { Faces, Reached } from './hold/hold.ts';
import type { Pose } from './pose.ts';
import { cutterOf, type Cutter, type Surface } from './surface.ts';

/** How a column lies to the belt in one pose. */
const OFF = 1;
const UNDER = 2;
const PARTLY = 3;

const lieOf = ([low, high]: readonly [number, number], half: number): number => {
  if (low >= -half && high <= half) return UNDER;
  return low > half || high < -half ? OFF : PARTLY;
};

/** What the belt does to a blade in one pose, and the columns that it may meet. */
interface Cutting extends Cutter, Pick<Pose, 'm' | 'v0'> {
  readonly first: number;
  readonly last: number;
}

/** Depth of the face at a node, and where it stands along the stroke: onto the belt or off it. */
const nodeAt = ({ m, v0, depth, across }: Cutting, u: number, v: number) => {
  const n = depth(u - m, v - v0);
  return { n, x: across(u - m, v - v0, n === Infinity ? 0 : n) };
};

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
  const highest = v.reduce((most, at) => Math.max(most, Math.abs(at)), 0);
  const take = (k: number, n: number): void => {
    if (n < (face[k] as number)) face[k] = Math.max(n, -(far[k] as number));
  };
  /** The nodes of a column that an end of the belt may have passed since the pose before. */
  const takePassed = (i: number, now: Cutting, before: Cutting | undefined): void => {
    const u = us[i] as number;
    for (let k = i * rows; k < (i + 1) * rows; k += 1) {
      const { n, x } = nodeAt(now, u, v[k] as number);
      const under = Math.abs(x) <= half;
      if (under) take(k, n);
      if (before === undefined) continue;
      const was = nodeAt(before, u, v[k] as number);
      if (Math.abs(was.x) <= half === under) continue;
      const end = (under ? was.x : x) > 0 ? half : -half;
      take(k, was.n + ((end - was.x) / (x - was.x)) * (n - was.n));
    }
  };
  const takeWhole = (i: number, { m, v0, depth, plane }: Cutting): void => {
    const du = (us[i] as number) - m;
    if (plane !== undefined) {
      const level = plane.a + plane.b * du;
      const { g } = plane;
      for (let k = i * rows; k < (i + 1) * rows; k += 1)
        take(k, level + g * ((v[k] as number) - v0));
      return;
    }
    for (let k = i * rows; k < (i + 1) * rows; k += 1) take(k, depth(du, (v[k] as number) - v0));
  };
  // The belt's band leans across the blade with its pitch; its ends bound the columns.
  const cuttings = reached.map(({ pose }, index): Cutting => {
    const { m, v0, x } = pose;
    const step = Math.abs(m - (reached[index - 1]?.pose.m ?? m));
    const slack = 1 + 2 * step + highest * Math.abs(x[2] / x[1]);
    const first = columnFrom(field, m - half - slack);
    return { ...cutterOf(pose, surface), m, v0, first, last: columnFrom(field, m + half + slack) };
  });
  const lieIn = ({ m, v0, span }: Cutting, i: number): number => {
    const from = v[i * rows] as number;
    const to = v[(i + 1) * rows - 1] as number;
    return lieOf(span((us[i] as number) - m, from - v0, to - v0), half);
  };
  const order = new Map(done.map((one, i) => [one, i]));
  cuttings.forEach((now, index) => {
    const before = cuttings[index - 1];
    const [was, is] = [reached[index - 1], reached[index]].map((one) => one && order.get(one));
    if (is !== undefined && (before === undefined || was === is - 1)) return;
    for (let i = now.first; i < now.last; i += 1) {
      const lie = lieIn(now, i);
      const followed = before !== undefined && i >= before.first && i < before.last;
      if (lie === PARTLY || (followed && lieIn(before, i) !== lie))
        takePassed(i, now, followed ? before : undefined);
      else if (lie === UNDER) takeWhole(i, now);
    }
  });
  return face;
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
