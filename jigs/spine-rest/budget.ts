import {
  bevelPlace,
  fail,
  ok,
  problem,
  spineRestQuestion,
  text,
  type BudgetQuestion,
  type SpineRestCause,
  type Design,
  type Result,
  type SpineRestPlan,
} from '../../src/family/index.ts';
import type { Layout } from '../shared/layout/layout.ts';
import type { Values } from './parameters.ts';
import { DIVISIONS, PITCH } from '../shared/feed.ts';

/** Push on the blade, N: common practice, no source. */
const PUSH = 30;

/** Young's modulus of the plates, N/mm2: handbook values of steels and aluminium alloys. */
const MODULUS = { steel: 200_000, stainless: 193_000, aluminium: 69_000 } as const;

/** What carries the fixture, as a cantilever: an estimate, since bolts and frame give as well. */
const armOf = ({ grinder: { rest } }: Design) => ({
  length: rest.kind === 'arm' ? rest.reach : rest.depth,
  width: rest.width,
  thickness: rest.kind === 'arm' ? rest.height : rest.thickness,
  modulus: MODULUS.steel,
});

/** What the budget is made of, for the last setting of each side, at the bevel place of the first blade. */
export const budgetQuestion = (
  design: Design,
  v: Values,
  l: Layout,
  plan: SpineRestPlan,
): Result<BudgetQuestion<SpineRestCause>> => {
  const step = Math.max(...plan.settings.map((setting) => setting.step));
  const [first, other] = plan.settings.filter((setting) => setting.step === step);
  const [blade] = design.blades;
  const u = blade ? bevelPlace(blade) : 0;
  const [at] = [...(first?.blades[0]?.places ?? [])].sort(
    (a, b) => Math.abs(a.u - u) - Math.abs(b.u - u),
  );
  if (first === undefined || blade === undefined || at === undefined)
    return fail(problem('budget-out-of-reach', '', text.setup.budget.outOfReach));
  const { grinder, making } = design;
  const backing = grinder.backings.find(({ id }) => id === first.backing);
  const modulus = MODULUS[making.plates.material];
  return ok(
    spineRestQuestion(
      {
        thickness: at.thickness,
        height: at.height,
        spineRadius: blade.spineRadius,
        lean: plan.lean,
        first: { setoff: first.setoff, edge: first.edgeSide },
        second: other && { setoff: other.setoff, edge: other.edgeSide },
        push: PUSH,
        structure: {
          nose: { length: l.nose.depth / 2, width: 2 * l.nose.half, thickness: v.plate, modulus },
          arm: armOf(design),
          stepHeight: l.levels.stack + armOf(design).thickness / 2,
          stepShare: (first.push.stepForceMin + first.push.stepForceMax) / 2,
          seatShare: Math.max(0, first.push.seatForceMin),
        },
      },
      {
        settingTolerance: v.settingTolerance,
        yaw: l.slide.yaw,
        beltWidth: grinder.belt.width,
        division: PITCH / DIVISIONS,
        splice: grinder.belt.splice,
        softBacking: backing?.kind === 'leather' || backing?.kind === 'rubber',
      },
    ),
  );
};
