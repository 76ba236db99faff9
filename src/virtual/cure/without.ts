import { SIDES, type Side } from '../../blade/schema.ts';
import { grindVirtually } from '../grind.ts';
import { greatest, linePlaces } from '../measure/report.ts';
import type { SpineRestPass, VirtualInput, VirtualPass } from '../types.ts';
import { judgedBy } from './find.ts';

/** Whether a pass is one on a spine rest with a straight step. */
const isWide = (pass: VirtualPass): pass is SpineRestPass =>
  pass.holding.kind === 'spine-rest' && pass.holding.body.step.kind === 'wide';

/** The last pass of a side on a straight step: the one that leaves its line. */
export const lastPass = ({ passes }: VirtualInput, side: Side): SpineRestPass | undefined =>
  passes.filter(isWide).findLast((pass) => pass.side === side);

/**
 * Greatest deviation of each side's grind line on the straight step where places count, mm. Only
 * the last belts are ground: the earlier ones stay outside their faces, as the plan has them.
 */
export const lineWithout = (virtual: VirtualInput): ReadonlyMap<Side, number> => {
  const passes = SIDES.flatMap((side) => lastPass(virtual, side) ?? []);
  const { shape, finished } = grindVirtually({ ...virtual, passes });
  return new Map(
    passes.map((pass) => {
      const lines = linePlaces(shape, finished, pass.side, judgedBy(pass));
      const counted = lines.filter(({ steers }) => steers);
      return [pass.side, Math.abs(greatest(counted, ({ deviation }) => deviation).value)];
    }),
  );
};
