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
import type { Context } from '../../shared/parts/context.ts';
import { closeTo, rests, settleMesh, type Contacts } from './settle-mesh.ts';
import { around, touchable, type Touchable } from '../../shared/pose/touchable.ts';

type PlanSetting = SpineRestPlan['settings'][number];

/** Poses over a stroke, both ends included. */
const COUNT = 9;
/** Chord error of the blades that are placed, mm. */
const CHORD = 0.001;

export const contactsOf = ({ l }: Context, setoff: number): Contacts => ({
  noseHalf: l.nose.half,
  stepHalf: l.slide.half,
  stepTop: l.levels.stepTop,
  setoff,
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
  c: Context,
  start?: Frame,
): Frame | undefined => {
  const settled = settledPose(setting, blade.name, u);
  if (!settled) return undefined;
  // Off the tip the belt still bears on the last place that it grinds.
  const last = setting.blades.find((b) => b.blade === blade.name)?.places.at(-1)?.u ?? u;
  const load = Math.min(0, last - u) * (setting.side === 'left' ? 1 : -1);
  const { side, setoff } = setting;
  return settleMesh(spine, side, u, settled.strokeTilt, contactsOf(c, setoff), load, start);
};

/** What the seat and the step touch of each blade: the strip along its spine. */
export const spinesOf = (
  blades: readonly Blade[],
  c: Context,
  settings: readonly PlanSetting[],
): ReadonlyMap<string, Spine> =>
  new Map(
    blades.map((blade): [string, Spine] => {
      const { l } = c;
      const strip = touchable(bladeMesh(blade, { chord: CHORD }).blade, l.levels.stepTop + 2);
      const halves = [l.nose.half, l.slide.half];
      const whole = byKey((u: number) => around(strip, u, halves));
      const near = byKey((side: Side) => {
        const own = settings.filter((one) => one.side === side);
        const middle = own[Math.floor(own.length / 2)];
        return byKey((u: number) => {
          const frame = middle && settledAt(blade, whole(u), middle, u, c);
          return frame && closeTo(whole(u), frame, contactsOf(c, middle.setoff));
        });
      });
      return [blade.name, { whole, close: (u, side) => near(side)(u) }];
    }),
  );

/** The places at the belt's middle over the stroke of a blade. */
const placesOf = (blade: Blade, c: Context, beltWidth: number): number[] => {
  const { from, to } = strokeOf(beltWidth, shapeOf(blade).length, c.v.plungeMargin, c.v.tipOverlap);
  return Array.from({ length: COUNT }, (_, i) => from + ((to - from) * i) / (COUNT - 1));
};

/**
 * The blade over its stroke at one setting, from the plunge stop to the tip: at every place it
 * stands at the tilt that the belt allows there, its spine settled on nose and against step. It is
 * settled on the few points near them, and on all where another point would be in the way.
 */
export const posesOf = (
  blade: Blade,
  spine: Spine,
  setting: PlanSetting,
  c: Context,
  beltWidth: number,
): BladePose[] =>
  placesOf(blade, c, beltWidth).flatMap((u): BladePose[] => {
    const [whole, close] = [spine.whole(u), spine.close(u, setting.side)];
    const settled = close && settledAt(blade, close, setting, u, c);
    const done = settled && rests(whole, settled, contactsOf(c, setting.setoff));
    const frame = done ? settled : settledAt(blade, whole, setting, u, c, settled);
    return frame ? [{ setting: setting.id, blade: blade.name, u, frame: onGrid(frame) }] : [];
  });
