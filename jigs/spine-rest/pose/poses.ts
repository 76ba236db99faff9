import {
  bladeMesh,
  onGrid,
  settledPose,
  shapeOf,
  strokeOf,
  type Blade,
  type BladePose,
  type Frame,
  type Side,
  type SpineRestPlan,
} from '../../../src/family/index.ts';
import { byKey } from '../../shared/later.ts';
import { posesByName, type PosesByName } from '../../shared/pose/by-name.ts';
import type { Context } from '../../shared/parts/context.ts';
import { closeTo, rests, settleMesh, type Contacts } from './settle-mesh.ts';
import { around, touchable, type Touchable } from '../../shared/pose/touchable.ts';

type PlanSetting = SpineRestPlan['settings'][number];

/** Poses over a stroke, both ends included. */
const COUNT = 9;
/** Chord error of the blades that are placed, mm. */
const CHORD = 0.001;

/** What a rest is to the blades on it: all that their poses take from its layout. */
export interface Bed extends Omit<Contacts, 'setoff'> {
  readonly plungeMargin: number;
  readonly tipOverlap: number;
  readonly beltWidth: number;
}

export const bedOf = ({ l, v }: Context, beltWidth: number): Bed => ({
  noseHalf: l.nose.half,
  stepHalf: l.slide.half,
  stepTop: l.levels.stepTop,
  plungeMargin: v.plungeMargin,
  tipOverlap: v.tipOverlap,
  beltWidth,
});

/** What seat and step can touch of a blade while a place is at the belt's middle. */
export interface Spine {
  readonly whole: (u: number) => Touchable;
  /** Of that, what lies near them at the middle one of a side's settings. */
  readonly close: (u: number, side: Side) => Touchable | undefined;
}

/** The blade settled at one setting with the place u at the belt's middle. */
const settledAt = (
  blade: Blade,
  spine: Touchable,
  setting: PlanSetting,
  u: number,
  bed: Bed,
  start?: Frame,
): Frame | undefined => {
  const settled = settledPose(setting, blade.name, u);
  if (!settled) return undefined;
  // Off the tip the belt still bears on the last place that it grinds.
  const last = setting.blades.find((b) => b.blade === blade.name)?.places.at(-1)?.u ?? u;
  const load = Math.min(0, last - u) * (setting.side === 'left' ? 1 : -1);
  const { side, setoff } = setting;
  return settleMesh(spine, side, u, settled.strokeTilt, { ...bed, setoff }, load, start);
};

/** What the seat and the step touch of a blade: the strip along its spine. */
const spineOf = (blade: Blade, bed: Bed, settings: readonly PlanSetting[]): Spine => {
  const strip = touchable(bladeMesh(blade, { chord: CHORD }).blade, bed.stepTop + 2);
  const whole = byKey((u: number) => around(strip, u, [bed.noseHalf, bed.stepHalf]));
  const near = byKey((side: Side) => {
    const own = settings.filter((one) => one.side === side);
    const middle = own[Math.floor(own.length / 2)];
    return byKey((u: number) => {
      const frame = middle && settledAt(blade, whole(u), middle, u, bed);
      return frame && closeTo(whole(u), frame, { ...bed, setoff: middle.setoff });
    });
  });
  return { whole, close: (u, side) => near(side)(u) };
};

/** The places at the belt's middle over the stroke of a blade. */
const placesOf = (blade: Blade, { beltWidth, plungeMargin, tipOverlap }: Bed): number[] => {
  const { from, to } = strokeOf(beltWidth, shapeOf(blade).length, plungeMargin, tipOverlap);
  return Array.from({ length: COUNT }, (_, i) => from + ((to - from) * i) / (COUNT - 1));
};

/**
 * The blade over its stroke at one setting, from the plunge stop to the tip: at every place it
 * stands at the tilt that the belt allows there, its spine settled on nose and against step. It is
 * settled on the few points near them, and on all where another point would be in the way.
 */
const posesOf = (blade: Blade, spine: Spine, setting: PlanSetting, bed: Bed): BladePose[] =>
  placesOf(blade, bed).flatMap((u): BladePose[] => {
    const [whole, close] = [spine.whole(u), spine.close(u, setting.side)];
    const settled = close && settledAt(blade, close, setting, u, bed);
    const done = settled && rests(whole, settled, { ...bed, setoff: setting.setoff });
    const frame = done ? settled : settledAt(blade, whole, setting, u, bed, settled);
    return frame ? [{ setting: setting.id, blade: blade.name, u, frame: onGrid(frame) }] : [];
  });

/** Poses of every blade at every setting, found when first asked for; none for unknown names. */
export const settledPoses = (
  blades: readonly Blade[],
  settings: readonly PlanSetting[],
  bed: Bed,
): PosesByName =>
  posesByName(
    blades,
    settings,
    (blade) => spineOf(blade, bed, settings),
    (blade, spine, setting) => posesOf(blade, spine, setting, bed),
  );
