import { shapeOf } from '../../blade/shape.ts';
import { chain, ok, type Result } from '../../core/result.ts';
import { tan } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import type { StripKit, VirtualOrder } from '../../family/index.ts';
import { text } from '../../text/index.ts';
import {
  adviseStroke,
  carriageJob,
  cureLine,
  edgeRestJob,
  spineRestJob,
  posesWithStrip,
  reportOf,
  tiltsOf,
  withYawStep,
  yawStep,
  type Cure,
  type Resolution,
  type SpineRestBody,
  type StrokeAdvice,
  type VirtualJob,
  type VirtualReport,
} from '../../virtual/index.ts';

/** The parameter of a spine rest, and its value, that make the rest for a strip. */
export const STRIP_FORM = { parameter: 'step', value: 'rounded' } as const;

/** What can be asked about one blade; nothing but the job is computed before it is asked. */
export interface VirtualWork {
  readonly job: VirtualJob;
  /** Which stroke leaves the evenest edge; absent where the family has no stroke to choose. */
  readonly advice?: () => Result<StrokeAdvice>;
  /** The strip that mends a wandering grind line; absent where the family has no step for it. */
  readonly cure?: (resolution: Resolution, progress: (share: number) => void) => Result<Cure>;
  /** The step turned by half a linear taper, and what it leaves; absent without a step. */
  readonly yaw?: (resolution: Resolution) => Result<YawOffer>;
  /** Where the fixture is made for the strip and `job` grinds with it: the straight step's job. */
  readonly straight?: VirtualJob;
  /** Thickness of what the strip is stuck on with, mm. */
  readonly tape?: number;
  /** What is made for that strip and how it is set, checked on the solids. */
  readonly kit?: (cure: Cure) => Result<StripKit>;
}

/** A turned step: half the taper, degrees, and the blade as it leaves it. */
export interface YawOffer {
  readonly half: number;
  /** Width of the step along the stroke, and how much nearer its tip end stands to the belt, mm. */
  readonly over: { readonly width: number; readonly rise: number };
  readonly report: VirtualReport;
}

const worstLine = ({ lines }: VirtualReport): number =>
  Math.max(0, ...lines.map(({ worst }) => Math.abs(worst.value)));

/** A turned step in a sentence, against what the straight one leaves. */
export const yawSentence = ({ half, over, report }: YawOffer, straight: VirtualReport): string => {
  const of = (one: VirtualReport) => ({ line: worstLine(one), uneven: one.uneven });
  return text.virtual.yawStep.offer(half, over, of(straight), of(report));
};

const yawOf =
  (job: VirtualJob, { step }: SpineRestBody) =>
  (resolution: Resolution): Result<YawOffer> =>
    chain(yawStep(shapeOf(job.blade)), (turned) => {
      const passes = job.passes.map((pass) =>
        pass.holding.kind === 'spine-rest'
          ? withYawStep({ ...pass, holding: pass.holding }, turned)
          : pass,
      );
      const { half } = turned;
      const width = step.kind === 'wide' ? 2 * step.half : 0;
      return ok({
        half,
        over: { width, rise: width * tan(radians(half)) },
        report: reportOf({ ...job, passes }, resolution),
      });
    });

/** Poses that are looked at along a stroke, its ends included. */
const POSES = 13;

/** The work that a fixture orders. */
export const workOf = (order: VirtualOrder): VirtualWork => {
  if (order.kind === 'edge-rest') return { job: edgeRestJob(order.blade, order.input, order.plan) };
  if (order.kind === 'carriage') return { job: carriageJob(order.blade, order.input, order.plan) };
  const { blade, input, plan, body, wish, kit, carried } = order;
  const job = spineRestJob(blade, input, carried?.straight ?? plan, body);
  if (carried !== undefined) {
    const { cure } = carried.found;
    return {
      job: { ...job, passes: cure.passes, model: plan.lines },
      cure: () => ok(cure),
      straight: job,
      tape: wish.tape,
      kit: () => kit(carried.found),
    };
  }
  return {
    job,
    cure: (resolution, progress) =>
      cureLine(
        { virtual: { ...job, resolution }, wish, tilts: tiltsOf(blade, input, plan) },
        progress,
      ),
    yaw: yawOf(job, body),
    tape: wish.tape,
    kit: (cure) => kit({ cure, poses: (setting) => posesWithStrip(cure, setting, POSES) }),
    advice: () => adviseStroke(input, blade, body),
  };
};
