import {
  buttonScrew,
  capScrew,
  chain,
  all,
  fail,
  hasError,
  nut,
  ok,
  planCarriage,
  problem,
  radians,
  screwForGrip,
  setScrew,
  text,
  valuesOf,
  washer,
  type CarriageInput,
  type CarriagePlan,
  type Design,
  type Fixture,
  type Result,
} from '../../src/family/index.ts';
import { placedRest, standsOf, type Stand } from '../spine-rest/site.ts';
import { shiftsOf } from '../spine-rest/needs-of.ts';
import type { Mount } from '../spine-rest/layout/mount.ts';
import type { Screws } from './context.ts';
import { fixtureOf } from './fixture.ts';
import { gripsOf, type Grip } from './layout/grip.ts';
import {
  angleFor,
  layoutOf,
  leastFootCentre,
  leastForward,
  levelsOf,
  type Layout,
  type Levels,
  type Needs,
} from './layout/layout.ts';
import { mountOf } from './layout/mount.ts';
import { FOOT, HEEL, SOLE } from './layout/sizes.ts';
import { parameters, type Values } from './parameters.ts';
import { parameterIssues, turnedIssues } from './rules.ts';

/** Friction of belt on blade, least and greatest: common practice, no source. */
const FRICTION = [0.2, 0.6] as const;

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

/** How far the lower side of the tang sinks under the jaw when the blade is turned, mm. */
const jawDropsOf = (plan: CarriagePlan, grips: readonly Grip[], v: Values): number[] =>
  plan.settings.map(({ clamping }) =>
    Math.max(
      0,
      ...clamping.flatMap(({ blade, u, turn }) => {
        const grip = grips.find((g) => g.blade.name === blade);
        if (!grip) return [];
        const [c, s] = [Math.cos(radians(turn)), Math.sin(radians(turn))];
        const [du, dv] = [grip.at - u, grip.from - grip.shape.edge.value(u)];
        const level = dv * c - du * s - (v.jawWidth / 2) * Math.abs(s);
        return [grip.from - grip.edge - level];
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

const THREAD_SHARE = 0.8;

const { names } = text.family.carriage.parts;

/** Most washers under the head of the clamp screw. */
const MOST_WASHERS = 4;

/** A clamp screw that ends in the jaw, with as many washers as that takes. */
const clampFor = (grip: number, jaw: number): { length: number; count: number } | undefined =>
  Array.from({ length: MOST_WASHERS }, (_, i) => i + 1)
    .map((count) => {
      const from = grip + count * washer('M6').thickness;
      const length = capScrew('M6').lengths.findLast(
        (x) => x >= from + THREAD_SHARE * 6 - 1e-9 && x <= from + jaw + 1e-9,
      );
      return length === undefined ? undefined : { length, count };
    })
    .find((one) => one !== undefined);

/** Screws of the tables that hold what the layout puts between head and thread. */
const screwsOf = (v: Values, l: Layout, mount: Mount, rest: number): Result<Screws> => {
  const cap = (name: 'M5' | 'M6' | 'M8' | 'M4', grip: number, most: number, what: string) => {
    const least = THREAD_SHARE * Number(name.slice(1));
    const row = capScrew(name);
    const length = row.lengths.findLast((x) => x >= grip + least - 1e-9 && x <= grip + most + 1e-9);
    const why = text.family.carriage.issues.noScrew(name, grip + least, grip + most, what);
    return length === undefined
      ? fail(problem('no-screw', 'fixture.parameters.plate', why))
      : ok(length);
  };
  const overFoot = l.plates ? 0 : l.wall;
  const bars = mount.kind === 'bars';
  const ring = bars ? 0 : washer(mount.thread as 'M6', 'large').thickness;
  const reach = l.gripped + v.plate;
  const jack =
    setScrew('M5').lengths.findLast((x) => x <= reach && x >= l.gripped + 4) ??
    setScrew('M5').lengths.find((x) => x >= l.gripped + 4) ??
    16;
  const clamp = clampFor(l.wall + l.gripped, v.plate);
  if (clamp === undefined) {
    const grip = l.wall + l.gripped;
    const why = text.family.carriage.issues.noScrew('M6', grip, grip + v.plate, names.jaw);
    return fail(problem('no-screw', 'fixture.parameters.plate', why));
  }
  return chain(
    all([
      cap('M5', overFoot + 2 * v.plate, FOOT.drill - 1, names.foot),
      screwForGrip(capScrew('M5'), v.plate + l.palm.height - l.palm.pocket, nut('M5').height, 5),
      screwForGrip(
        buttonScrew('M6'),
        v.plate + washer('M6', 'large').thickness,
        THREAD_SHARE * 6,
        v.base,
      ),
      cap(mount.thread as 'M6', rest + (bars ? v.plate : ring), v.base, names.base),
      l.plates ? ok(0) : cap('M6', l.wall, v.plate, names.angle),
    ]),
    ([foot = 0, palm = 0, fence = 0, mounting = 0, angle = 0]) =>
      ok({
        foot,
        palm,
        clamp: clamp.length,
        clampWashers: clamp.count,
        jack,
        fence,
        mount: mounting,
        angle,
      }),
  );
};

/** Angle of the upright at the first look; the layout then moves it. */
const FIRST_FORWARD = 30;

/**
 * From a valid design to a solved fixture. The plan is made three times: to learn how far the
 * foot moves and the carriage tips, then with the upright where fence and foot need it, then with
 * the push where the tipped push block is.
 */
export const solve = (design: Design): Result<Fixture> => {
  const v = valuesOf(parameters, design.fixture.parameters);
  const grips = gripsOf(design, v);
  const levels = levelsOf(v, grips);
  const angle = v.upright === 'angle' ? angleFor(v, levels) : undefined;
  const wrong = parameterIssues(design, v, grips, levels, angle);
  if (hasError(wrong)) return fail(...wrong);
  const planned = (forward: number, push: number) =>
    planCarriage(inputOf(design, v, levels, forward, push));
  const first = planned(FIRST_FORWARD, 20);
  if (!first.ok) return first;
  // Warnings are told once, of the last plan.
  return chain(ok(needsOf(design, v, first.value, grips)), (rough) => {
    const short = leastFootCentre(v, rough) - rough.footCentre.min;
    const forward = Math.max(Math.ceil(2 * (FIRST_FORWARD + short)) / 2, leastForward(v, angle));
    const tilt = radians(rough.tiltMost);
    const low = levels.soleBottom - (v.plate > 7 ? 10 : 7.5) - FOOT.radius;
    const back = v.length + SOLE.palmFrom + SOLE.palmLength;
    const push = FOOT.radius + low * Math.cos(tilt) + back * Math.sin(tilt);
    return chain(planned(forward, push), (plan) => {
      const needs = needsOf(design, v, plan, grips);
      const low = turnedIssues(v, levels, needs.jawDrops);
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
        return chain(screwsOf(v, l, mount, rest.thickness), (screws) => {
          const { grinder, making } = design;
          const context = {
            design,
            grinder,
            making,
            v,
            l,
            plan,
            grips,
            stands,
            mount,
            restThickness: rest.thickness,
            screws,
          };
          return chain(fixtureOf(context), (fixture) => ok(fixture, wrong));
        });
      });
    });
  });
};
