import type { Design, EdgeRestPlan, text } from '../../src/family/index.ts';
import { buildOf } from '../shared/build-of.ts';
import { DIVISIONS, PITCH } from '../shared/feed.ts';
import type { EdgeContext } from './context.ts';
import { LIP } from './sizes.ts';

type StepsOf = Parameters<typeof text.family.edgeRest.assembly>[0];

/** The numbers in the sentences of building and setting. */
export const stepsOf = (design: Design, c: EdgeContext, plan: EdgeRestPlan): StepsOf => {
  const { v, rig, x } = c;
  const last = plan.settings.at(-1);
  return {
    ...buildOf(rig),
    pads: v.lip === 'pads',
    lipScrew: x.screwLength,
    lipThread: LIP.thread,
    noseGap: v.noseGap,
    drop: last?.wheel.drop ?? NaN,
    pin: x.pin.diameter,
    pinLength: x.pin.length,
    gauge: x.gauge,
    collar: rig.l.collar.distance,
    yaw: rig.l.slide.yaw,
    perDivision: PITCH / DIVISIONS,
    perTenth: (last?.climb.perLip ?? NaN) / 10,
    padHeight: plan.pushHeight,
    lipHeight: v.lipHeight,
    down: design.grinder.belt.direction === 'down',
  };
};
