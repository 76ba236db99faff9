import { placeAt, stepAtPin, type Design, type SpineRestPlan } from '../../src/family/index.ts';
import { GUIDE, SIZE } from '../shared/layout/sizes.ts';
import { behindOf, joined, rangeOf, shiftsOf } from '../shared/needs-of.ts';
import type { Needs } from '../shared/needs.ts';
import { greatestOver } from './over-places.ts';
import { padHeights } from './pads.ts';
import type { Values } from './parameters.ts';
import type { Stand } from '../shared/site.ts';

/**
 * What the plan asks of the mechanics. `stands` has one entry for each pass of the sequence; `swing`
 * is how far behind the abrasive face a blade comes that the step does not square, mm.
 */
export const needsOf = (
  design: Design,
  v: Values,
  plan: SpineRestPlan,
  stands: readonly Stand[],
  swing = 0,
): Needs => {
  const { shifts } = shiftsOf(stands);
  const shiftAt = (step: number): number => shifts[step - 1] ?? 0;
  const zero = stepAtPin(SIZE.zeroPin / 2, plan.lean);
  const collar = v.wing - v.plungeMargin;
  const beltHalf = design.grinder.belt.width / 2;
  const [atStop, noseHalf] = [beltHalf + v.plungeMargin, beltHalf + v.wing];
  const setoff = rangeOf(plan.settings.map((one) => one.setoff));
  const places = plan.settings.flatMap(({ blades }) => blades.flatMap((b) => b.places));
  return {
    beltHalf,
    lean: plan.lean,
    shift: rangeOf(shifts),
    setoff,
    onBase: rangeOf([
      ...plan.settings.map(({ setoff, step }) => setoff - shiftAt(step)),
      ...shifts.map((shift) => zero - shift),
    ]),
    edgeTop: greatestOver(plan.settings, ({ seating }) => seating.edge[1]),
    pad: plan.pushHeight,
    otherPads: padHeights(
      plan,
      design.blades.map(({ name }) => name),
      v,
    ).slice(1),
    behind: joined(
      design.blades.map((blade) => behindOf(blade, -collar - GUIDE.collarWidth, -collar)),
    ),
    // A spine that falls towards the edge lies on the seat with its tip lowered.
    stop: {
      slopes: design.blades.map((blade) => -placeAt(blade, atStop, 2 * noseHalf).slope),
      stands: places.map(({ seating: { tilt, origin } }) => ({ tilt, rise: origin[1] })),
    },
    lastSetoff: plan.settings.at(-1)?.setoff ?? 0,
    // Beyond the step's ends a blade that it squares comes as far back as the step stands.
    swing: Math.max(swing, setoff.max),
  };
};
