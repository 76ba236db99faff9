import type { Design, EdgeRestPlan, text } from '../../src/family/index.ts';
import { DIVISIONS, PITCH } from '../shared/feed.ts';
import type { EdgeContext } from './context.ts';
import { LIP } from './sizes.ts';

type StepsOf = Parameters<typeof text.family.edgeRest.assembly>[0];

/** The numbers in the sentences of building and setting. */
export const stepsOf = (design: Design, c: EdgeContext, plan: EdgeRestPlan): StepsOf => {
  const { v, rig, x } = c;
  const lengthOf = (name: string): number =>
    rig.joints.find((joint) => joint.name === name)?.length ?? 0;
  const strips = v.guide === 'strips';
  const last = plan.settings.at(-1);
  return {
    strips,
    pads: v.lip === 'pads',
    mount: rig.mount.kind,
    mountThread: rig.mount.thread,
    mountScrew: lengthOf('mount-screw'),
    noseScrew: lengthOf('nose-screw'),
    packerScrew: lengthOf(strips ? 'guide-screw' : 'packer-screw'),
    bracketScrew: lengthOf('bracket-screw'),
    lugScrew: lengthOf('lug-screw'),
    lockScrew: lengthOf('lock-screw'),
    lipScrew: x.screwLength,
    lipThread: LIP.thread,
    feed: rig.feed.length,
    noseGap: v.noseGap,
    drop: last?.wheel.drop ?? NaN,
    pin: x.pin.diameter,
    pinLength: x.pin.length,
    gauge: x.gauge,
    collar: rig.l.collar.distance,
    guidePlay: v.guidePlay,
    yaw: rig.l.slide.yaw,
    perDivision: PITCH / DIVISIONS,
    perTenth: (last?.climb.perLip ?? NaN) / 10,
    padHeight: plan.pushHeight,
    lipHeight: v.lipHeight,
    down: design.grinder.belt.direction === 'down',
  };
};
