import {
  edgeRestQuestion,
  fail,
  ok,
  problem,
  text,
  type BudgetQuestion,
  type EdgeRestCause,
  type EdgeRestPlan,
  type Result,
} from '../../src/family/index.ts';
import { DIVISIONS, PITCH } from '../shared/feed.ts';
import type { EdgeContext } from './context.ts';

/** What the budget is made of, for the last belt, at the bevel place of the first blade. */
export const budgetQuestion = (
  { v }: EdgeContext,
  { settings }: EdgeRestPlan,
): Result<BudgetQuestion<EdgeRestCause>> => {
  const last = settings.at(-1);
  const place = last?.blades[0]?.places[0];
  if (last === undefined || place === undefined)
    return fail(problem('budget-out-of-reach', '', text.setup.budget.outOfReach));
  const { corner } = place.standing;
  const sides = settings.some(({ side }) => side !== last.side) ? 2 : 1;
  const [y, z] = [last.wheel.radius + corner[0], last.wheel.drop - corner[1]];
  // The face's line from the edge's corner, from what is known: L^2 = (R - d + q)^2 + c^2.
  const square = Math.sqrt(y * y + z * z - last.centre * last.centre);
  return ok(
    edgeRestQuestion(
      {
        radius: last.wheel.radius,
        lip: corner[0],
        drop: z,
        faceOffset: square - last.wheel.radius + last.depth,
        depth: last.depth,
        // The web at the hollow's middle, with what was ground off put back.
        thickness: place.web.thickness + sides * last.depth,
        sides,
      },
      { settingTolerance: v.settingTolerance, division: PITCH / DIVISIONS },
    ),
  );
};
