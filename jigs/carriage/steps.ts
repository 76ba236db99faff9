import { cos, radians, sin, text } from '../../src/family/index.ts';
import { WIDEST_TOLD } from '../shared/checks/ranges.ts';
import type { Context } from './context.ts';
import { HEEL } from './layout/sizes.ts';
import type { Washered } from './screws.ts';

type StepsOf = Parameters<typeof text.family.carriage.assembly>[0];

/**
 * What one division of the heel screw does to the finished bevel at the same edge, mm: of
 * b = (w - e) / tan a the share that goes with the angle, b / (sin a cos a).
 */
const heightPerDivision = ({ plan }: Context): number => {
  const last = plan.settings.at(-1)?.progress.at(-1);
  const by = plan.sensitivity[0]?.degreesPerDivision;
  if (last === undefined || by === undefined) return NaN;
  const a = radians(last.angle);
  return (last.bevelHeight * radians(by)) / (sin(a) * cos(a));
};

/** A screw as the sentences tell it. */
const fastened = ({ length, rings }: Washered): StepsOf['footScrew'] => ({
  length,
  washers: rings,
});

/** The numbers in the sentences of building and setting. */
export const stepsOf = (c: Context, pushHeight: number): StepsOf => {
  const { v, l, plan, mount, screws } = c;
  const [first, sensitivity] = [plan.settings[0], plan.sensitivity[0]];
  return {
    plates: l.plates,
    gussets: l.gusset.xs.length,
    bars: mount.kind === 'bars',
    mount: mount.thread,
    mountScrew: fastened(screws.mount),
    fenceScrew: fastened(screws.fence),
    footScrew: fastened(screws.foot),
    palmScrew: screws.palm,
    clampScrew: fastened(screws.clamp),
    jackScrew: screws.jack,
    angleScrew: fastened(screws.angle),
    tabPlay: v.tabPlay,
    heel: l.heel.length,
    tipRadius: HEEL.tipRadius,
    beltGap: v.beltGap,
    beltGapMost: WIDEST_TOLD,
    lean: plan.lean,
    feelersApart: l.middleTop - l.soleTop - 10,
    edgeHeight: v.edgeHeight,
    jawGap: v.jawGap,
    fence: first?.fence ?? 0,
    firstAngle: first?.angle ?? 0,
    degreesPerDivision: sensitivity?.degreesPerDivision ?? 0,
    heightPerDivision: heightPerDivision(c),
    fenceGauge: plan.settings.at(-1)?.fence ?? NaN,
    pushHeight,
    length: v.length,
  };
};
