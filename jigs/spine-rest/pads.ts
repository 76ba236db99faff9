import type { SpineRestPlan } from '../../src/family/index.ts';
import { SIZE } from '../shared/layout/sizes.ts';
import type { Values } from './parameters.ts';

type Places = SpineRestPlan['settings'][number]['blades'][number]['places'];

/** Whether a place of a blade may be pushed by a pad so high: its edge stands a margin above it. */
export const isBehind = ({ seating }: Places[number], height: number, margin: number): boolean =>
  // Heights of pads are whole tenths.
  seating.edge[1] >= height + margin - 0.1;

/** The places of a blade in each setting that grinds it: one side of a blade may be left alone. */
const placesOf = ({ settings }: SpineRestPlan, blade: string): Places[] =>
  settings.flatMap(({ blades }) =>
    blades.filter((one) => one.blade === blade).map(({ places }) => places),
  );

/** Highest edge of a blade over the seat, mm, in the setting where it stands lowest. */
const edgeOf = (plan: SpineRestPlan, blade: string): number =>
  Math.min(
    ...placesOf(plan, blade).map((places) =>
      Math.max(...places.map(({ seating }) => seating.edge[1])),
    ),
  );

/** The pushes near the heel of a blade that hold it in every setting, mm over the seat. */
const windowOf = ({ settings }: SpineRestPlan, blade: string) => {
  const pushes = settings.flatMap(({ blades }) =>
    blades
      .filter((one) => one.blade === blade)
      .flatMap(({ expected }) => expected.filter(({ place }) => place === 'heel'))
      .map(({ push }) => push),
  );
  return {
    from: Math.max(...pushes.map(({ from }) => from)),
    to: Math.min(...pushes.map(({ to }) => to)),
  };
};

const tenth = (value: number): number => Math.round(10 * value) / 10;
/** Down to the tenth, so that what a pad keeps from an edge is not rounded away. */
const tenthDown = (value: number): number => Math.floor(10 * value + 1e-9) / 10;

/** Height over the seat of the pad that each blade is pushed with where it is high, mm. */
export const mainPads = (
  plan: SpineRestPlan,
  blades: readonly string[],
  v: Values,
): { readonly blade: string; readonly height: number }[] => {
  const share = plan.pushHeight / edgeOf(plan, blades[0] ?? '');
  return blades.map((blade, i) => {
    if (i === 0) return { blade, height: tenthDown(plan.pushHeight) };
    const { from, to } = windowOf(plan, blade);
    const wanted = Math.max(share * edgeOf(plan, blade), from + 0.1);
    return { blade, height: tenthDown(Math.min(wanted, to - v.padMargin)) };
  });
};

/** Heights closer than this share one pad, mm. */
const SAME = 1;
/** From one pad to the next lower one, towards the tip, and how many of these there are at most. */
const LADDER = 0.8;
const RUNGS = 3;

/**
 * Heights of all pads over the seat, mm, the first blade's own first: one for each blade that
 * needs its own, then lower ones for where the blades fall away towards their tips, down to what
 * the step leaves room for.
 */
export const padHeights = (plan: SpineRestPlan, blades: readonly string[], v: Values): number[] => {
  const heights: number[] = [];
  for (const { height } of mainPads(plan, blades, v))
    if (heights.every((h) => Math.abs(h - height) > SAME)) heights.push(height);
  const least = v.plate + SIZE.lowestPad;
  const lowest = Math.min(...heights);
  const rungs = Array.from({ length: RUNGS }, (_, i) => tenth(lowest * LADDER ** (i + 1)));
  return [...heights, ...rungs.filter((height) => height >= least)];
};

/**
 * The places up to which each pad has a blade behind it, mm from the plunge, from the highest pad
 * to the lowest: where the edge comes within the margin of it, in the setting where that is first.
 */
export const padReaches = (
  plan: SpineRestPlan,
  blade: string,
  heights: readonly number[],
  margin: number,
): { readonly pad: number; readonly height: number; readonly to: number }[] => {
  const reach = (height: number): number => {
    const ends = placesOf(plan, blade).map((places) => {
      const low = places.findIndex((place) => !isBehind(place, height, margin));
      return (low < 0 ? places.at(-1) : places[low - 1])?.u ?? 0;
    });
    return Math.min(...ends);
  };
  return heights
    .map((height, i) => ({ pad: i + 1, height, to: reach(height) }))
    .sort((a, b) => b.height - a.height)
    .filter(({ to }, i, all) => to > (all[i - 1]?.to ?? 0));
};
