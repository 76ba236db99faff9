import { sin } from '../../core/trigonometry.ts';
import type { Shape } from '../../blade/shape.ts';
import { columnFrom, type Field } from '../field.ts';
import { addPoint, lineUnder, type Points } from '../hull.ts';
import type { Pose } from '../pose.ts';
import { acrossAt, cutterOf, depthAt, type Surface } from '../surface.ts';
import type { Stands } from './hold.ts';
import type { Settled, SettleQuestion, SpineRestBody, Stood } from './spine-settle.ts';

/** What the edge is looked at with. */
export interface Looking {
  readonly field: Field;
  readonly shape: Shape;
  readonly step: SpineRestBody['step'];
  readonly surface: Surface;
  readonly beltWidth: number;
  readonly stop: Float64Array;
  readonly settle: (question: SettleQuestion, guess: Settled) => Stood | undefined;
  readonly short: number;
  /** Farthest that the blade reaches from its spine, mm. */
  readonly highest: number;
  /** The metal under the belt, drawn anew by every look. */
  readonly under: Points;
}

/** Edge under the belt at one pose: how much it still has to lose. */
export interface Look {
  readonly pose: Pose;
  readonly settled: Settled;
  readonly moved: number;
  readonly stands: Stands;
  /** Least metal over the stop, or, at a narrow step, that of the line that bears, mm. */
  readonly over: number;
  /** Slope of the supporting line along the stroke: the yaw still to be taken up. */
  readonly slope: number;
  readonly at: number;
  /** Height of the edge there: what the edge loses for each radian of tilt. */
  readonly height: number;
}

const heightAt = ({ edge, spine }: Shape, u: number): number =>
  Math.max(edge.value(u) - spine.value(u), 1);

/** Settles the blade and looks at its edge under the belt. */
export const lookAt = (
  looking: Looking,
  question: SettleQuestion,
  guess: Settled,
): Look | undefined => {
  const { field, shape, step, surface, beltWidth, stop, highest, under } = looking;
  const stood = looking.settle(question, guess);
  if (stood === undefined) return undefined;
  const { pose, settled, moved, stands } = stood;
  const { us, rows, v } = field;
  const { m, load } = question;
  const half = beltWidth / 2;
  const narrow = step.kind === 'narrow';
  const cutter = cutterOf(pose, surface);
  const slack = 2 + highest * Math.abs(sin(settled.pitch));
  const first = Math.max(0, columnFrom(field, m - half - slack) - 1);
  const last = Math.min(us.length, columnFrom(field, m + half + slack) + 1);
  under.count = 0;
  let over = Infinity;
  let at = m;
  let lastX = NaN;
  let lastOver = 0;
  let lastU = m;
  for (let i = first; i < last; i += 1) {
    const u = us[i] as number;
    const low = v[i * rows + rows - 1] as number;
    const n = depthAt(cutter, u, low);
    const x = acrossAt(cutter, u, low, n);
    const metal = n - (stop[i] as number);
    for (let end = -half; end <= half; end += beltWidth)
      if (lastX < end && x > end) {
        const k = (end - lastX) / (x - lastX);
        const left = lastOver + k * (metal - lastOver);
        if (narrow) addPoint(under, end, left);
        if (left < over) {
          over = left;
          at = lastU + k * (u - lastU);
        }
      }
    if (Math.abs(x) <= half) {
      if (narrow) addPoint(under, x, metal);
      if (metal < over) {
        over = metal;
        at = u;
      }
    }
    lastX = x;
    lastOver = metal;
    lastU = u;
  }
  if (over === Infinity) return undefined;
  if (step.kind === 'wide')
    return { pose, settled, moved, stands, over, slope: 0, at, height: heightAt(shape, at) };
  const line = lineUnder(under, load, looking.short);
  if (line === undefined) return undefined;
  // The blade turns about the step while it takes up the slope: what counts is left there.
  const left = line.a + line.b * step.at;
  const height = heightAt(shape, m + load);
  return { pose, settled, moved, stands, over: left, slope: line.b, at, height };
};
