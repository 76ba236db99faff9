import { stepAtPin, text, type Design, type SpineRestPlan } from '../../src/family/index.ts';
import { SIZE } from '../shared/layout/sizes.ts';
import type { Context } from '../shared/parts/context.ts';
import { padReaches } from './pads.ts';
import { feelerGap } from './rules.ts';
import { seatOf, type Carried } from './strip/carried.ts';
import { DIVISIONS, PITCH } from '../shared/feed.ts';

type StepsOf = Parameters<typeof text.family.spineRest.assembly>[0];

/** The gap that the published limit for work rests allows, mm. */
const WIDEST_GAP = 3.1;

/** The numbers in the sentences of building and setting. */
export const stepsOf = (
  design: Design,
  c: Context,
  plan: SpineRestPlan,
  strip?: Carried,
): StepsOf => {
  const { v, l, mount, joints, feed } = c;
  const lengthOf = (name: string): number =>
    joints.find((joint) => joint.name === name)?.length ?? 0;
  const strips = v.guide === 'strips';
  const thinnest = Math.min(...design.blades.flatMap((b) => b.thickness.map(({ t }) => t)));
  return {
    strips,
    mount: mount.kind,
    mountThread: mount.thread,
    mountScrew: lengthOf('mount-screw'),
    noseScrew: lengthOf('nose-screw'),
    packerScrew: lengthOf(strips ? 'guide-screw' : 'packer-screw'),
    bracketScrew: lengthOf('bracket-screw'),
    lugScrew: lengthOf('lug-screw'),
    lockScrew: lengthOf('lock-screw'),
    feed: feed.length,
    noseGap: feelerGap(design, v),
    noseGapMost: Math.min(WIDEST_GAP, thinnest),
    pin: SIZE.zeroPin,
    pinLength: SIZE.zeroPinLength,
    pinZero: stepAtPin(SIZE.zeroPin / 2, c.lean),
    collar: l.collar.distance,
    guidePlay: v.guidePlay,
    yaw: l.slide.yaw,
    lean: c.lean,
    perDivision: PITCH / DIVISIONS,
    heightPerTenth: plan.sensitivity[0]?.bevelHeight ?? NaN,
    gauge: l.gauge.width,
    padHeight: v.plate + l.push.pad,
    ...(strip ? { lineStrip: seatOf(strip) } : {}),
    pads: design.blades.map(({ name }) => ({
      blade: name,
      reaches: padReaches(
        plan,
        name,
        l.push.pads.map((height) => height + v.plate),
        v.padMargin,
      ),
    })),
  };
};
