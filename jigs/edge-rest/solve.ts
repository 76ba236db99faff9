import {
  chain,
  createWorkshop,
  fail,
  frontWheel,
  hasError,
  ok,
  planEdgeRest,
  problem,
  text,
  valuesOf,
  type Design,
  type EdgeRestInput,
  type Result,
  type Workshop,
} from '../../src/family/index.ts';
import { DIVISIONS, PITCH } from '../shared/feed.ts';
import { edgeContext, lipEnd, stackOf } from './context-of.ts';
import { FRICTION } from '../shared/friction.ts';
import { fixtureOf, type EdgeRestFixture } from './fixture.ts';
import { parameters, type Values } from './parameters.ts';
import { itemsOf } from './place/items.ts';
import { parameterIssues, planIssues } from './rules.ts';
import { wheelStands } from './site.ts';

const inputOf = (design: Design, v: Values, wheel: string): EdgeRestInput => ({
  blades: design.blades,
  grinder: design.grinder,
  sequence: design.sequence,
  parameters: {
    wheel,
    stackHeight: stackOf(v),
    lip: v.lip === 'strip' ? 'strip' : 'pads',
    lipHeight: v.lipHeight,
    lipThickness: v.lipThickness,
    lipReach: lipEnd(design, v),
    runningClearance: v.runningClearance,
    leastWeb: v.leastWeb,
    plungeStop: v.plungeMargin,
    tipOverlap: v.tipOverlap,
    friction: FRICTION,
    reserve: v.pushReserve,
    wheelShare: v.wheelShare,
    screwPitch: PITCH,
    divisions: DIVISIONS,
    settingTolerance: v.settingTolerance,
  },
});

/** From a valid design to a solved fixture; the issues where it cannot be built. */
export const solve = (
  design: Design,
  workshop: Workshop = createWorkshop(),
): Result<EdgeRestFixture> => {
  const v = valuesOf(parameters, design.fixture.parameters);
  const wrong = parameterIssues(design, v);
  if (hasError(wrong)) return fail(...wrong);
  const wheel = frontWheel(design.grinder, v.wheel);
  if (wheel === undefined) {
    const found = design.grinder.wheels.map(({ role }) => role).join(', ');
    const why = text.family.edgeRest.issues.noWheel(v.wheel, found);
    return fail(problem('no-wheel', 'fixture.parameters.wheel', why));
  }
  const input = inputOf(design, v, wheel.id);
  const key = JSON.stringify(input);
  const planned = workshop.keep('plan of an edge rest', key, () => planEdgeRest(input));
  return chain(planned, (plan) => {
    const unfit = planIssues(v, plan);
    if (hasError(unfit)) return fail(...unfit);
    const stands = wheelStands(design, wheel, stackOf(v));
    return chain(edgeContext(design, v, plan, stands), (context) =>
      chain(itemsOf(context), (items) =>
        ok(fixtureOf({ design, v, workshop, input, plan, context, items }), [...wrong, ...unfit]),
      ),
    );
  });
};
