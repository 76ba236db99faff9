import type { Result } from '../../core/result.ts';
import type { VirtualOrder } from '../../family/index.ts';
import {
  adviseStroke,
  carriageJob,
  cureLine,
  edgeRestJob,
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
}

/** The work that a fixture orders. */
export const workOf = (order: VirtualOrder): VirtualWork => {
  if (order.kind === 'edge-rest') return { job: edgeRestJob(order.blade, order.input, order.plan) };
  if (order.kind === 'carriage') return { job: carriageJob(order.blade, order.input, order.plan) };
  const { blade, input, plan, body, wish } = order;
  const job = spineRestJob(blade, input, plan, body);
  return {
    job,
    cure: (resolution) => cureLine({ virtual: { ...job, resolution }, wish }),
    advice: () => adviseStroke(input, blade, body),
  };
};
