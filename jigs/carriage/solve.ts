import {
  type CarriageInput,
  type CarriagePlan,
  chain,
  cos,
  createWorkshop,
  type Design,
  fail,
  hasError,
  ok,
  planCarriage,
  radians,
  type Result,
  sin,
  valuesOf,
  type Workshop,
} from '../../src/family/index.ts';
import { placedRest, standsOf, type Stand } from '../shared/site.ts';
import { shiftsOf } from '../shared/needs-of.ts';
import { FRICTION } from '../shared/friction.ts';
import { halfUp } from '../shared/layout/half.ts';
import { fixtureOf, type CarriageFixture } from './fixture.ts';
import { gripsOf, heldIn, type Grip } from './layout/grip.ts';
import {
  angleFor,
  layoutOf,
  leastFootCentre,
  leastForward,
  levelsOf,
  type Levels,
  type Needs,
} from './layout/layout.ts';
import { mountOf } from './layout/mount.ts';
import { FOOT, HEEL, SOLE } from './layout/sizes.ts';
import { parameters, type Values } from './parameters.ts';
import { dipIssues, parameterIssues, turnedIssues } from './rules.ts';
import { screwsOf } from './screws.ts';

const inputOf = (
  design: Design,
  v: Values,
  levels: Levels,
  forward: number,
  pushHeight: number,
): CarriageInput => ({
  blades: design.blades,
  grinder: design.grinder,
  sequence: design.sequence.map(({ belt, backing, edge, steeper }) => ({
    belt,
    backing,
    edge,
    steeper,
  })),
  parameters: {
    base: v.length,
    footRadius: FOOT.radius,
    tipRadius: HEEL.tipRadius,
    screwPitch: HEEL.pitch,
    divisions: HEEL.divisions,
    forward,
    edgeHeight: v.edgeHeight,
    jaw: {
      gap: v.jawGap,
      width: v.jawWidth,
      thickness: v.plate,
      below: v.edgeHeight - levels.jawTop,
    },
    plungeStop: v.plungeMargin,
    tipOverlap: v.tipOverlap,
    tipSettings: Math.round(v.tipSettings),
    friction: FRICTION,
    reserve: v.heelReserve,
    pushHeight,
    angleTolerance: v.angleTolerance,
    fenceTolerance: v.fenceTolerance,
  },
});

/** How far the jaw is lowered at every setting, mm: by what a turned tang sinks at its lower end. */
const jawDropsOf = (plan: CarriagePlan, grips: readonly Grip[], v: Values): number[] =>
  plan.settings.map(({ clamping }) =>
    Math.max(
      0,
      ...clamping.flatMap((one) => {
        const grip = grips.find((g) => g.blade.name === one.blade);
        return grip ? [grip.from - grip.edge - heldIn(grip, one, v.jawWidth).low] : [];
      }),
    ),
  );

const needsOf = (design: Design, v: Values, plan: CarriagePlan, grips: readonly Grip[]): Needs => {
  const { settings } = plan;
  const centres = settings.map(({ footCentre }) => footCentre);
  return {
    beltHalf: design.grinder.belt.width / 2,
    bladeLength: Math.max(...grips.map(({ shape }) => shape.length)),
    bevelMost: Math.max(...settings.map(({ bevelHeight }) => bevelHeight)),
    gripped: Math.max(...grips.map(({ thickness }) => thickness)),
    footCentre: { min: Math.min(...centres), max: Math.max(...centres) },
    tiltMost: Math.max(...settings.map(({ tilt }) => tilt)),
    extensionMost: Math.max(...settings.map(({ heel }) => heel.extension)),
    jawDrops: jawDropsOf(plan, grips, v),
  };
};

/** The upright ahead of the foot at the first look; the layout then moves it, mm. */
const FIRST_FORWARD = 30;

/**
 * From a valid design to a solved fixture. The plan is made three times: to learn how far the
 * foot moves and the carriage tips, then with the upright where fence and foot need it, then with
 * the push where the tipped push block is.
 */
export const solve = (
  design: Design,
  workshop: Workshop = createWorkshop(),
): Result<CarriageFixture> => {
  const v = valuesOf(parameters, design.fixture.parameters);
  const grips = gripsOf(design, v);
  const levels = levelsOf(v, grips);
  const angle = v.upright === 'angle' ? angleFor(v, levels) : undefined;
  const wrong = parameterIssues(design, v, grips, levels, angle);
  if (hasError(wrong)) return fail(...wrong);
  const planned = (forward: number, push: number) => {
    const input = inputOf(design, v, levels, forward, push);
    const key = JSON.stringify(input);
    return chain(
      workshop.keep('plan of a carriage', key, () => planCarriage(input)),
      (plan) => ok({ input, plan }),
    );
  };
  const first = planned(FIRST_FORWARD, 20);
  if (!first.ok) return first;
  // Warnings are told once, of the last plan.
  return chain(ok(needsOf(design, v, first.value.plan, grips)), (rough) => {
    const short = leastFootCentre(v, rough) - rough.footCentre.min;
    const forward = Math.max(halfUp(FIRST_FORWARD + short), leastForward(v, angle));
    const tilt = radians(rough.tiltMost);
    const low = levels.soleBottom - (v.plate > 7 ? 10 : 7.5) - FOOT.radius;
    const back = v.length + SOLE.palmFrom + SOLE.palmLength;
    const push = FOOT.radius + low * cos(tilt) + back * sin(tilt);
    return chain(planned(forward, push), ({ input, plan }) => {
      const needs = needsOf(design, v, plan, grips);
      const low = [
        ...turnedIssues(v, levels, needs.jawDrops),
        ...dipIssues(design, v, levels, forward, plan),
      ];
      if (hasError(low)) return fail(...low);
      const drawn = layoutOf(v, levels, angle, forward, needs);
      const stands = standsOf(design, v.base).filter((s): s is Stand => s !== undefined);
      const { middle, shifts } = shiftsOf(stands);
      const rest = placedRest(design.grinder, middle);
      const spread = Math.max(0, ...shifts.map((shift) => Math.abs(shift)));
      return chain(mountOf(v, drawn, rest, spread), (mount) => {
        // Clamp bars reach round the rest, and the base with them.
        const half = Math.max(drawn.base.half, mount.earHalf);
        const l = { ...drawn, base: { ...drawn.base, half } };
        const { making } = design;
        return chain(screwsOf(making, v, l, mount, rest), (screws) => {
          const { grinder } = design;
          const context = {
            design,
            grinder,
            making,
            v,
            l,
            input,
            plan,
            grips,
            stands,
            mount,
            restThickness: rest.thickness,
            screws,
          };
          return chain(fixtureOf(context, workshop), (fixture) => ok(fixture, wrong));
        });
      });
    });
  });
};
