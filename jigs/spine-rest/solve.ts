import {
  chain,
  createWorkshop,
  fail,
  hasError,
  ok,
  planSpineRest,
  valuesOf,
  type Design,
  type Result,
  type SpineRestInput,
  type SpineRestPlan,
  type Workshop,
} from '../../src/family/index.ts';
import { contextOf } from './context-of.ts';
import { fixtureOf, type SpineRestFixture } from './fixture.ts';
import { FRICTION } from '../shared/friction.ts';
import { itemsOf } from '../shared/place/items.ts';
import { parameters, type Values } from './parameters.ts';
import { parameterIssues, planIssues } from './rules.ts';
import { DIVISIONS, PITCH } from '../shared/feed.ts';
import { standsOf, type Stand } from '../shared/site.ts';

const inputOf = (design: Design, v: Values, pushHeight?: number): SpineRestInput => ({
  blades: design.blades,
  grinder: design.grinder,
  sequence: design.sequence,
  parameters: {
    noseWidth: design.grinder.belt.width + 2 * v.wing,
    stackHeight: v.plate + v.base,
    plungeStop: v.plungeMargin,
    tipOverlap: v.tipOverlap,
    friction: FRICTION,
    reserve: v.pushReserve,
    screwPitch: PITCH,
    divisions: DIVISIONS,
    settingTolerance: v.settingTolerance,
    aim: v.aim === 'place' ? 'place' : 'line',
    ...(pushHeight === undefined ? {} : { pushHeight }),
  },
});

/** A plan and what it was made from. */
interface Planned {
  readonly input: SpineRestInput;
  readonly plan: SpineRestPlan;
}

const planned = (input: SpineRestInput): Result<Planned> =>
  chain(planSpineRest(input), (plan) => ok({ input, plan }));

/**
 * The plan with the push in the middle of what all passes and the margin below the edge leave, or
 * as high as that margin allows where nothing is left (a check then says so).
 */
const planOf = (design: Design, v: Values): Result<Planned> =>
  chain(planned(inputOf(design, v)), (first) => {
    const { plan } = first;
    const low = Math.max(...plan.settings.map(({ push }) => push.from));
    const high = Math.min(...plan.settings.map(({ push }) => push.to)) - v.padMargin;
    if (plan.pushHeight >= low && plan.pushHeight <= high) return ok(first);
    return planned(inputOf(design, v, high > low ? (low + high) / 2 : high));
  });

/** From a valid design to a solved fixture; the issues where it cannot be built. */
export const solve = (
  design: Design,
  workshop: Workshop = createWorkshop(),
): Result<SpineRestFixture> => {
  const v = valuesOf(parameters, design.fixture.parameters);
  const wrong = parameterIssues(design, v);
  if (hasError(wrong)) return fail(...wrong);
  return chain(planOf(design, v), ({ input, plan }) => {
    const unfit = planIssues(design, v, plan);
    if (hasError(unfit)) return fail(...unfit);
    const stands = standsOf(design, v.plate + v.base).filter(
      (stand): stand is Stand => stand !== undefined,
    );
    return chain(contextOf(design, v, plan, stands), (context) =>
      chain(itemsOf(context), (items) =>
        ok(fixtureOf({ design, v, workshop, input, plan, stands, context, items }), [
          ...wrong,
          ...unfit,
        ]),
      ),
    );
  });
};
