import {
  bladeMesh,
  onGrid,
  settledPose,
  shapeOf,
  strokeOf,
  type Blade,
  type BladePose,
  type SpineRestPlan,
} from '../../../src/family/index.ts';
import { byKey } from '../../shared/later.ts';
import type { Context } from '../../shared/parts/context.ts';
import { settleMesh, type Contacts } from './settle-mesh.ts';
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
export type SpineAt = (u: number) => Touchable;

/** What the seat and the step touch of each blade: the strip along its spine. */
export const spinesOf = (blades: readonly Blade[], c: Context): ReadonlyMap<string, SpineAt> =>
  new Map(
    blades.map((blade) => {
      const { l } = c;
      const whole = touchable(bladeMesh(blade, { chord: CHORD }).blade, l.levels.stepTop + 2);
      const half = Math.max(l.nose.half, l.slide.half);
      return [blade.name, byKey((u) => around(whole, u, half))];
    }),
  );

/** The places at the belt's middle over the stroke of a blade. */
const placesOf = (blade: Blade, c: Context, beltWidth: number): number[] => {
  const { from, to } = strokeOf(beltWidth, shapeOf(blade).length, c.v.plungeMargin, c.v.tipOverlap);
  return Array.from({ length: COUNT }, (_, i) => from + ((to - from) * i) / (COUNT - 1));
};

/**
 * The blade over its stroke at one setting, from the plunge stop to the tip: at every place it
 * stands at the tilt that the belt allows there, its spine settled on nose and against step.
 */
export const posesOf = (
  blade: Blade,
  spine: SpineAt,
  setting: PlanSetting,
  c: Context,
  beltWidth: number,
): BladePose[] =>
  placesOf(blade, c, beltWidth).flatMap((u): BladePose[] => {
    const settled = settledPose(setting, blade.name, u);
    if (!settled) return [];
    const contacts = contactsOf(c, setting.setoff);
    // Off the tip the belt still bears on the last place that it grinds.
    const last = setting.blades.find((b) => b.blade === blade.name)?.places.at(-1)?.u ?? u;
    const load = Math.min(0, last - u) * (setting.side === 'left' ? 1 : -1);
    const frame = settleMesh(spine(u), setting.side, u, settled.strokeTilt, contacts, load);
    return frame ? [{ setting: setting.id, blade: blade.name, u, frame: onGrid(frame) }] : [];
  });
