import { columnFrom, type Field } from './field.ts';
import type { Reached } from './hold/hold.ts';
import type { Pose } from './pose.ts';
import { cutterOf, lieAt, type Cutter, type Surface } from './surface.ts';

/** What the belt does to a blade in one pose, and how the columns that it may meet lie to it. */
export interface Cutting {
  readonly cutter: Cutter;
  /** The column it first meets, and the first one behind it. */
  readonly first: number;
  readonly last: number;
  /** How each of them lies, from the first on. */
  readonly lies: Uint8Array;
}

/** What the belt does in one pose, the step between poses and the blade's height given. */
const cuttingAt = (
  field: Field,
  pose: Pose,
  surface: Surface,
  half: number,
  step: number,
  highest: number,
): Cutting => {
  const { us, rows, v } = field;
  const { m, x } = pose;
  const slack = 1 + 2 * step + highest * Math.abs(x[2] / x[1]);
  const first = columnFrom(field, m - half - slack);
  const last = columnFrom(field, m + half + slack);
  const cutter = cutterOf(pose, surface);
  const lies = new Uint8Array(last - first);
  for (let i = first; i < last; i += 1) {
    const [from, to] = [v[i * rows] as number, v[(i + 1) * rows - 1] as number];
    lies[i - first] = lieAt(cutter, us[i] as number, from, to, half);
  }
  return { cutter, first, last, lies };
};

/**
 * What the belt does in the poses of a stroke. Its band leans across the blade with the pitch; its
 * ends bound the columns.
 */
export const cuttingsOf = (
  field: Field,
  reached: readonly Reached[],
  surface: Surface,
  half: number,
): Cutting[] => {
  const highest = field.v.reduce((most, at) => Math.max(most, Math.abs(at)), 0);
  return reached.map(({ pose }, index) => {
    const step = Math.abs(pose.m - (reached[index - 1]?.pose.m ?? pose.m));
    return cuttingAt(field, pose, surface, half, step, highest);
  });
};

/** Of two planes one is left out where it stands this much farther off at both ends, mm. */
const SURELY = 1e-9;

/**
 * Which of the poses that have a whole column under the belt may take most of it somewhere. A plane
 * stands over a column along a straight line: where another one is nearer to the midplane at both of
 * the column's ends, it takes nothing. `top`, `low`: its depth there.
 */
export const deepest = (
  poses: readonly Cutting[],
  top: Float64Array,
  low: Float64Array,
): readonly Cutting[] => {
  let [t, l, both] = [0, 0, 0];
  for (let k = 1; k < poses.length; k += 1) {
    const [here, there] = [top[k] as number, low[k] as number];
    if (here < (top[t] as number)) t = k;
    if (there < (low[l] as number)) l = k;
    if (here + there < (top[both] as number) + (low[both] as number)) both = k;
  }
  const more = (k: number, than: number): boolean =>
    (top[k] as number) > (top[than] as number) + SURELY &&
    (low[k] as number) > (low[than] as number) + SURELY;
  return poses.filter((_, k) => !more(k, t) && !more(k, l) && !more(k, both));
};
