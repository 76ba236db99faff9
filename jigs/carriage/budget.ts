import {
  bevelPlace,
  carriageQuestion,
  fail,
  ok,
  problem,
  text,
  type BudgetQuestion,
  type CarriageCause,
  type Result,
} from '../../src/family/index.ts';
import type { Context } from './context.ts';
import { FOOT, HEEL } from './layout/sizes.ts';

/** What the budget is made of, for the last setting, at the bevel place of the first blade. */
export const budgetQuestion = (c: Context): Result<BudgetQuestion<CarriageCause>> => {
  const { plan, design, v, l } = c;
  const last = plan.settings.findLast(({ facet }) => facet === 0);
  const [blade] = design.blades;
  const u = blade ? bevelPlace(blade) : 0;
  const [at] = [...(last?.blades[0]?.places ?? [])].sort(
    (a, b) => Math.abs(a.u - u) - Math.abs(b.u - u),
  );
  if (!last || !at) return fail(problem('budget-out-of-reach', '', text.setup.budget.outOfReach));
  return ok(
    carriageQuestion(
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
        sides: plan.settings.some(({ side }) => side !== last.side) ? 2 : 1,
      },
      { settingTolerance: v.fenceTolerance, division: HEEL.pitch / HEEL.divisions },
    ),
  );
};
