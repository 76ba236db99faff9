import {
  bevelPlace,
  carriageBudget,
  fail,
  problem,
  text,
  type Budget,
  type Result,
  type Simulating,
} from '../../src/family/index.ts';
import type { Context } from './context.ts';
import { FOOT, HEEL } from './layout/sizes.ts';

/** The budget of the last setting, at the bevel place of the first blade. */
export const budgetOf = (c: Context, simulating: Simulating): Result<Budget> => {
  const { plan, design, v, l } = c;
  const last = plan.settings.findLast(({ facet }) => facet === 0);
  const [blade] = design.blades;
  const u = blade ? bevelPlace(blade) : 0;
  const [at] = [...(last?.blades[0]?.places ?? [])].sort(
    (a, b) => Math.abs(a.u - u) - Math.abs(b.u - u),
  );
  if (!last || !at) return fail(problem('budget-out-of-reach', '', text.setup.budget.outOfReach));
  return carriageBudget(
    {
      base: v.length,
      footRadius: FOOT.radius,
      tipRadius: HEEL.tipRadius,
      angle: last.faceAngle,
      thickness: at.thickness,
      edge: last.edgeSide,
      forward: l.forward + (last.clamping[0]?.midplane ?? 0),
      height: v.edgeHeight,
      lean: plan.lean,
    },
    { settingTolerance: v.fenceTolerance, division: HEEL.pitch / HEEL.divisions },
    simulating,
  );
};
