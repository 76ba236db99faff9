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
import { onStrip, type Carried } from './strip/carried.ts';
import { DIVISIONS, PITCH } from '../shared/feed.ts';
import { standsOf, type Stand } from '../shared/site.ts';

const inputOf = (design: Design, v: Values): SpineRestInput => ({
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
    padMargin: v.padMargin,
  },
});

/** A plan and what it was made from. */
interface Planned {
  readonly plan: SpineRestPlan;
  readonly strip?: Carried;
}

/** The plan for the form of the step that is asked for. */
const planned = (
  design: Design,
  v: Values,
  input: SpineRestInput,
  workshop: Workshop,
): Result<Planned> => {
  const key = JSON.stringify(input);
  const straight = workshop.keep('plan of a spine rest', key, () => planSpineRest(input));
  if (!straight.ok) return straight;
  const { value: plan, issues } = straight;
  return v.step === 'straight' ? ok({ plan }, issues) : onStrip(design, v, input, plan, workshop);
};

/** From a valid design to a solved fixture; the issues where it cannot be built. */
export const solve = (
  design: Design,
  workshop: Workshop = createWorkshop(),
): Result<SpineRestFixture> => {
  const v = valuesOf(parameters, design.fixture.parameters);
  const wrong = parameterIssues(design, v);
  if (hasError(wrong)) return fail(...wrong);
  const input = inputOf(design, v);
  return chain(planned(design, v, input, workshop), ({ plan, strip }) => {
    const unfit = planIssues(design, v, plan);
    if (hasError(unfit)) return fail(...unfit);
    const stands = standsOf(design, v.plate + v.base).filter(
      (stand): stand is Stand => stand !== undefined,
    );
    return chain(contextOf(design, v, plan, stands, strip?.swing), (context) =>
      chain(itemsOf(context), (items) =>
        ok(
          fixtureOf({
            ...{ design, v, workshop, input, plan, stands, context, items },
            ...(strip ? { strip } : {}),
          }),
          [...wrong, ...unfit],
        ),
      ),
    );
  });
};
