import { text } from '../../src/family/index.ts';
import type { Context } from './context.ts';
import { HEEL } from './layout/sizes.ts';

type StepsOf = Parameters<typeof text.family.carriage.assembly>[0];

/** The gap that the published limit for work rests allows, mm. */
const WIDEST_GAP = 3.1;

/** The numbers in the sentences of building and setting. */
export const stepsOf = (c: Context, pushHeight: number): StepsOf => {
  const { v, l, plan, mount, screws } = c;
  const [first, sensitivity] = [plan.settings[0], plan.sensitivity[0]];
  return {
    plates: l.plates,
    gussets: l.gusset.xs.length,
    bars: mount.kind === 'bars',
    mount: mount.thread,
    mountScrew: screws.mount.length,
    fenceScrew: screws.fence.length,
    footScrew: screws.foot.length,
    palmScrew: screws.palm,
    clampScrew: screws.clamp.length,
    jackScrew: screws.jack,
    angleScrew: screws.angle.length,
    tabPlay: v.tabPlay,
    heel: l.heel.length,
    tipRadius: HEEL.tipRadius,
    beltGap: v.beltGap,
    beltGapMost: WIDEST_GAP,
    lean: plan.lean,
    feelersApart: l.middleTop - l.soleTop - 10,
    edgeHeight: v.edgeHeight,
    jawGap: v.jawGap,
    fence: first?.fence ?? 0,
    firstAngle: first?.angle ?? 0,
    fencePerDegree: sensitivity?.fencePerDegree ?? 0,
    degreesPerDivision: sensitivity?.degreesPerDivision ?? 0,
    pushHeight,
    length: v.length,
  };
};
