import {
  placeAt,
  stepAtPin,
  type Blade,
  type Design,
  type SpineRestPlan,
} from '../../src/family/index.ts';
import { GUIDE, SIZE } from './layout/sizes.ts';
import type { Needs, Range } from './needs.ts';
import { padHeights } from './pads.ts';
import type { Values } from './parameters.ts';
import type { Stand } from './site.ts';

export const rangeOf = (values: readonly number[]): Range => ({
  min: Math.min(...values),
  max: Math.max(...values),
});

/** What the collar meets on one blade between two distances behind the plunge (u, negative). */
export const behindOf = (blade: Blade, from: number, to: number): Needs['behind'] => {
  const { ricasso, tang } = blade;
  const pieces: Needs['behind'][] = [];
  if (to > -ricasso) {
    const { height, thickness, spine } = placeAt(blade, Math.max(from, -ricasso));
    pieces.push({ from: spine[1], to: spine[1] + height, thickness });
  }
  if (from < -ricasso) {
    pieces.push({ from: tang.drop, to: tang.drop + tang.height, thickness: tang.thickness });
  }
  return joined(pieces);
};

export const joined = (pieces: readonly Needs['behind'][]): Needs['behind'] => ({
  from: Math.min(...pieces.map((p) => p.from)),
  to: Math.max(...pieces.map((p) => p.to)),
  thickness: Math.max(...pieces.map((p) => p.thickness)),
});

/** Shifts of the base in the seat frame, one a stand, about the middle of their range. */
export const shiftsOf = (stands: readonly Stand[]): { middle: number; shifts: number[] } => {
  const { min, max } = rangeOf(stands.map(({ offset }) => offset));
  const middle = (min + max) / 2;
  return { middle, shifts: stands.map(({ offset }) => offset - middle) };
};

/** What the plan asks of the mechanics. `stands` has one entry for each pass of the sequence. */
export const needsOf = (
  design: Design,
  v: Values,
  plan: SpineRestPlan,
  stands: readonly Stand[],
): Needs => {
  const { shifts } = shiftsOf(stands);
  const shiftAt = (step: number): number => shifts[step - 1] ?? 0;
  const zero = stepAtPin(SIZE.zeroPin / 2, plan.lean);
  const collar = v.wing - v.plungeMargin;
  const places = plan.settings.flatMap(({ blades }) => blades.flatMap((b) => b.places));
  return {
    beltHalf: design.grinder.belt.width / 2,
    lean: plan.lean,
    shift: rangeOf(shifts),
    setoff: rangeOf(plan.settings.map(({ setoff }) => setoff)),
    onBase: rangeOf([
      ...plan.settings.map(({ setoff, step }) => setoff - shiftAt(step)),
      ...shifts.map((shift) => zero - shift),
    ]),
    edgeTop: Math.max(...places.map(({ seating }) => seating.edge[1])),
    pad: plan.pushHeight,
    otherPads: padHeights(
      plan,
      design.blades.map(({ name }) => name),
      v,
    ).slice(1),
    behind: joined(
      design.blades.map((blade) => behindOf(blade, -collar - GUIDE.collarWidth, -collar)),
    ),
    lastSetoff: plan.settings.at(-1)?.setoff ?? 0,
  };
};
