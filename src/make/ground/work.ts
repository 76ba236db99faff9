import type { Result } from '../../core/result.ts';
import type { StripKit, VirtualOrder, BladePose } from '../../family/index.ts';
import {
  adviseStroke,
  carriageJob,
  cureLine,
  edgeRestJob,
  frameOf,
  spineRestJob,
  type Cure,
  type Resolution,
  type StrokeAdvice,
  type VirtualJob,
} from '../../virtual/index.ts';

/** What can be asked about one blade; nothing but the job is computed before it is asked. */
export interface VirtualWork {
  readonly job: VirtualJob;
  /** Which stroke leaves the evenest edge; absent where the family has no stroke to choose. */
  readonly advice?: () => Result<StrokeAdvice>;
  /** The strip that mends a wandering grind line; absent where the family has no step for it. */
  readonly cure?: (resolution: Resolution) => Result<Cure>;
  /** Thickness of what the strip is stuck on with, mm. */
  readonly tape?: number;
  /** What is made for that strip and how it is set, checked on the solids. */
  readonly kit?: (cure: Cure) => Result<StripKit>;
}

/** Poses that are looked at along a stroke, its ends included. */
const POSES = 13;

/** How a blade stood at one setting of its strip, at places along the stroke. */
const posesOf =
  (blade: string, { cured }: Cure) =>
  (setting: string): BladePose[] => {
    const result = cured.passes.find(({ pass }) => pass.id === setting);
    if (result === undefined) return [];
    const { reached, pass } = result;
    const last = reached.length - 1;
    const count = Math.min(POSES, reached.length);
    return Array.from({ length: count }, (_, i) => Math.round((last * i) / Math.max(1, count - 1)))
      .flatMap((i) => reached[i] ?? [])
      .map(({ pose }) => ({ setting, blade, u: pose.m, frame: frameOf(pose, pass.side) }));
  };

/** The work that a fixture orders. */
export const workOf = (order: VirtualOrder): VirtualWork => {
  if (order.kind === 'edge-rest') return { job: edgeRestJob(order.blade, order.input, order.plan) };
  if (order.kind === 'carriage') return { job: carriageJob(order.blade, order.input, order.plan) };
  const { blade, input, plan, body, wish, kit } = order;
  const job = spineRestJob(blade, input, plan, body);
  return {
    job,
    cure: (resolution) => cureLine({ virtual: { ...job, resolution }, wish }),
    tape: wish.tape,
    kit: (cure) => kit({ cure, poses: posesOf(blade.name, cure) }),
    advice: () => adviseStroke(input, blade, body),
  };
};
