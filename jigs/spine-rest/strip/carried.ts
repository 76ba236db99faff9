import {
  besideStraight,
  chain,
  fail,
  lineWithout,
  ok,
  outerFace,
  placeAt,
  planWithStrip,
  posesWithStrip,
  mendedBy,
  problem,
  proveStrip,
  spineRestJob,
  swingWithStrip,
  text,
  tiltsOf,
  USUAL,
  WORLD,
  type Blade,
  type Design,
  type Placement,
  type Issue,
  type Mend,
  type Result,
  type Side,
  type SpineRestInput,
  type SpineRestPlan,
  type StripFound,
  type StripWish,
  type Workshop,
} from '../../../src/family/index.ts';
import type { Item } from '../../shared/place/item.ts';
import { placed } from '../../shared/place/place.ts';
import type { Values } from '../parameters.ts';
import { bearingMended } from '../rules.ts';
import { ROUNDED_STEP } from './rounded-step.ts';
import { straightBody, stripWish } from './wish.ts';

/** Poses that are looked at along a stroke, its ends included. */
const POSES = 13;

/** The strip that a blade carries on this rest's rounded step. */
export interface Carried {
  readonly blade: Blade;
  readonly wish: StripWish;
  readonly found: StripFound;
  /** The plan of the straight step that the strip was worked out from. */
  readonly straight: SpineRestPlan;
  /** How far behind the abrasive face the blade swings over the nose, mm. */
  readonly swing: number;
}

/** A plan whose settings are those of the rounded step, and the strip that belongs to it. */
export interface PlanOnStrip {
  readonly plan: SpineRestPlan;
  readonly strip: Carried;
}

const words = text.family.spineRest.strip;

/** Where in the design stands what a strip lacks; what is not here, only a straight step mends. */
const PLACES: Readonly<Record<string, string>> = {
  'line.allowed': 'blades.0.line.allowed',
  'nose.front': 'fixture.parameters.noseGap',
  'step.top': 'fixture.parameters.plate',
};

/** What a strip lacks, each once: both sides often lack the same. */
const inDesign = <T>(found: Result<T>, mended: (issue: Issue, nose: Mend) => Issue): Result<T> => {
  const issues = found.issues
    .filter(({ message }, i, all) => all.findIndex((one) => one.message === message) === i)
    .map(({ mend, ...issue }): Issue => {
      const path = PLACES[issue.path];
      if (path === undefined)
        return mendedBy({ ...issue, path: 'fixture.parameters.step' }, 'straight');
      return mend ? mended({ ...issue, path }, mend) : { ...issue, path };
    });
  return { ...found, issues };
};

/**
 * The strip for the one blade of a design, and the plan with it. Fails where a design has more
 * blades than one, whose settings would differ, and where no strip holds the line: the issues say
 * why. What the straight step's plan warns of is no longer so and is left out.
 */
export const onStrip = (
  design: Design,
  v: Values,
  input: SpineRestInput,
  straight: SpineRestPlan,
  workshop: Workshop,
): Result<PlanOnStrip> => {
  const [blade, another] = design.blades;
  if (blade === undefined || another !== undefined)
    return fail(
      problem(
        'strip-one-blade',
        'fixture.parameters.step',
        words.issues.oneBlade(design.blades.length),
      ),
    );
  const wish = stripWish(design, v, blade);
  const body = straightBody(design, v);
  const job = spineRestJob(blade, input, straight, body);
  const virtual = { ...job, resolution: USUAL };
  const asked = JSON.stringify([input, wish, body.noseHalf, body.noseFront, body.stepTop]);
  // What is kept by what it depends on: the straight step tells only what the line would be.
  const proved = workshop.keep('strip of a spine rest', asked, () =>
    proveStrip({ virtual, wish, tilts: tiltsOf(blade, input, straight) }),
  );
  const without = () =>
    workshop.keep('line without a strip', JSON.stringify([input, body]), () =>
      lineWithout(virtual),
    );
  const beside = chain(proved, (one) => besideStraight(one, without(), wish));
  /** The nose that a strip would leave its bearing, and so where the spine's corner stands. */
  const mended = (issue: Issue, { value }: Mend): Issue =>
    bearingMended(issue, design, v, straight, Number(value) + v.leastBearing);
  return chain(inDesign(beside, mended), (cure) =>
    ok({
      plan: planWithStrip(blade, input, straight, cure),
      strip: {
        blade,
        wish,
        found: { cure, poses: (setting) => posesWithStrip(cure, setting, POSES) },
        straight,
        swing: swingWithStrip(cure, body.noseHalf),
      },
    }),
  );
};

/** The strip where it sits while one side is ground, in blade coordinates. */
export const stripItems = ({ cure }: StripFound, side: Side): Item[] =>
  cure.sides
    .filter((one) => one.side === side)
    .map(({ part, frame }) => ({
      part: part.id,
      name: 'line-strip',
      group: 'blade',
      frame,
      touches: ['step'],
    }));

/** A placement of the straight step with the rounded one in its place. */
export const onRoundedStep = <T extends { readonly part: string }>(placement: T): T =>
  placement.part === 'step' ? { ...placement, part: ROUNDED_STEP } : placement;

/** What the blade carries, in its own coordinates. */
export const placedOnBlade = (items: readonly Item[]): Placement[] =>
  placed(items, { base: 0, step: 0, hand: 0, blade: WORLD });

/** The first place of the blade that has the strip on it, mm from the plunge. */
export const stripFrom = ({ found }: Carried): number =>
  Math.min(...found.cure.sides.map(({ strip }) => strip.us[0] ?? 0));

/** Where the strip sits on the blade while a side is ground, and where the stroke ends, mm. */
export const seatOf = ({ found, wish }: Carried, side?: Side) => {
  const own = found.cure.sides.find((one) => one.side === side) ?? found.cure.sides[0];
  const { us = [], bottom = 0 } = own?.strip ?? {};
  return { from: us[0] ?? 0, to: us.at(-1) ?? 0, below: bottom, tape: wish.tape };
};

/** How thick strip and tape stand on the blade at a place, mm. */
export const packingAt = ({ found, blade }: Carried, u: number): number => {
  const [side] = found.cure.sides;
  return side ? outerFace(side.strip, u) - placeAt(blade, u).thickness / 2 : NaN;
};
