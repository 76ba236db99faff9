import {
  bladeMesh,
  cos,
  dot3,
  onGrid,
  radians,
  settledPose,
  shapeOf,
  strokeOf,
  type Blade,
  type BladePose,
  type Frame,
  type Shape,
  type Side,
  type SpineRestPlan,
  type Vec3,
  type Workshop,
} from '../../../src/family/index.ts';
import { byKey } from '../../shared/later.ts';
import { posesByName, type PosesByName } from '../../shared/pose/by-name.ts';
import type { Context } from '../../shared/parts/context.ts';
import { refined } from '../../shared/pose/refined.ts';
import { createRoom, type Room } from '../../shared/pose/placed-points.ts';
import {
  closeTo,
  roughlySettled,
  settleMesh,
  type Close,
  type Contacts,
  type Stance,
} from './settle-mesh.ts';
import { mirrored, settledOnce, type Settled } from '../../shared/pose/sides.ts';
import { around, touchable, type Touchable } from '../../shared/pose/touchable.ts';

type PlanSetting = SpineRestPlan['settings'][number];

/** Poses over a stroke, both ends included. */
const COUNT = 9;
/** Most that a blade turns from one pose to the next, degrees, unless they are this close, mm. */
const MOST_TURN = 5;
const CLOSEST = 0.5;
/** Steps along a spine in which a hollow is looked for, and the change of slope that is none. */
const STEPS = 100;
const LEVEL = 1e-6;
/** Chord error of the blades that are placed, mm, and how far beyond what is touched they end. */
const CHORD = 0.001;
const BESIDE = 1;
/** The same for a blade of which it is sought which of its points lie near: by far less than is near. */
const ROUGH_CHORD = 0.005;

/** Settings of both sides are alike within this, degrees and mm: points move by far less than is near. */
const ALIKE = 1e-3;

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

/** What seat and step can touch of a blade while a place is at the belt's middle, on its left side. */
interface Spine {
  readonly shape: Shape;
  readonly isHollow: boolean;
  /** The places at the belt's middle over the stroke. */
  readonly us: readonly number[];
  readonly whole: (u: number) => Touchable;
  /** Of that, what lies near them at the middle one of a side's settings. */
  readonly close: (u: number, side: Side) => Close | undefined;
  /** Where it was settled at a place already. */
  readonly settled: (u: number) => Settled;
  readonly room: Room;
}

/**
 * How the blade stands at one setting with the place u at the belt's middle, its left side to the belt:
 * its blank is the same on both sides, and its right side stands as a mirror shows it.
 */
const stanceAt = (blade: Blade, setting: PlanSetting, u: number): Required<Stance> | undefined => {
  const settled = settledPose(setting, blade.name, u);
  if (!settled) return undefined;
  // Off the tip the belt still bears on the last place that it grinds.
  const last = setting.blades.find((b) => b.blade === blade.name)?.places.at(-1)?.u ?? u;
  return { side: 'left', u, tilt: settled.strokeTilt, load: Math.min(0, last - u) };
};

/**
 * What the seat and the step touch of a blade drawn to a chord error, by places: kept while blade and
 * rest are the same.
 */
const stripOf = (blade: Blade, bed: Bed, chord: number, keep: Workshop['keep']): Spine['whole'] => {
  const depth = bed.stepTop + 2;
  const only = { along: 'spine', reach: depth + BESIDE } as const;
  const strip = keep('strip along a spine', JSON.stringify([blade, depth, chord]), () =>
    touchable(bladeMesh(blade, { chord, only }).blade, depth),
  );
  return keep('places of a spine', JSON.stringify([blade, bed, chord]), () =>
    byKey((u: number) => around(strip, u, [bed.noseHalf, bed.stepHalf])),
  );
};

/** What the seat and the step touch of a blade: the strip along its spine. */
const spineOf = (
  blade: Blade,
  bed: Bed,
  settings: readonly PlanSetting[],
  room: Room,
  keep: Workshop['keep'],
): Spine => {
  const whole = stripOf(blade, bed, CHORD, keep);
  const rough = stripOf(blade, bed, ROUGH_CHORD, keep);
  const middleOf = byKey((side: Side) => {
    const own = settings.filter((one) => one.side === side);
    return own[Math.floor(own.length / 2)];
  });
  // Where a blade roughly stands.
  const standing = byKey((side: Side) =>
    byKey((u: number): Frame | undefined => {
      const setting = middleOf(side);
      const stance = setting && stanceAt(blade, setting, u);
      if (setting === undefined || stance === undefined) return undefined;
      const left = side === 'right' ? middleOf('left') : undefined;
      const turned = left && stanceAt(blade, left, u);
      const apart = left && Math.abs(left.setoff - setting.setoff);
      if (turned && Math.abs(turned.tilt - stance.tilt) < ALIKE && (apart ?? 1) < ALIKE)
        return standing('left')(u);
      return roughlySettled(rough(u), stance, { ...bed, setoff: setting.setoff }, room);
    }),
  );
  const near = byKey((side: Side) =>
    byKey((u: number) => {
      const [setting, frame] = [middleOf(side), standing(side)(u)];
      if (setting === undefined || frame === undefined) return undefined;
      return closeTo(whole(u), frame, { ...bed, setoff: setting.setoff }, room);
    }),
  );
  const shape = shapeOf(blade);
  return {
    shape,
    isHollow: isHollow(shape),
    us: placesOf(shape, bed),
    whole,
    close: (u, side) => near(side)(u),
    settled: byKey(settledOnce),
    room,
  };
};

/**
 * Whether the spine is hollow anywhere: such a blade sinks between two poses that are led straight,
 * where one that bulges rises.
 */
const isHollow = ({ spine, length }: Shape): boolean => {
  const slopes = Array.from({ length: STEPS + 1 }, (_, i) => spine.slope((length * i) / STEPS));
  return slopes.some((slope, i) => slope < (slopes[i - 1] ?? slope) - LEVEL);
};

/** The places at the belt's middle over the stroke of a blade. */
const placesOf = ({ length }: Shape, { beltWidth, plungeMargin, tipOverlap }: Bed): number[] => {
  const { from, to } = strokeOf(beltWidth, length, plungeMargin, tipOverlap);
  return Array.from({ length: COUNT }, (_, i) => from + ((to - from) * i) / (COUNT - 1));
};

/**
 * The blade over its stroke at one setting, from the plunge stop to the tip: at every place it
 * stands at the tilt that the belt allows there, its spine settled on nose and against step.
 */
const posesOf = (
  blade: Blade,
  { shape, isHollow, us, whole, close, settled, room }: Spine,
  setting: PlanSetting,
  bed: Bed,
): BladePose[] => {
  const { setoff, side } = setting;
  const poseAt = byKey((u: number): BladePose | undefined => {
    const stance = stanceAt(blade, setting, u);
    if (stance === undefined) return undefined;
    const left = settled(u)([setoff, stance.tilt, stance.load], () =>
      settleMesh(whole(u), stance, { ...bed, setoff }, room, close(u, side)),
    );
    const frame = left && side === 'right' ? mirrored(left) : left;
    return frame && { setting: setting.id, blade: blade.name, u, frame: onGrid(frame) };
  });
  let lost = false;
  /** The poses after one, up to another: a blade that turns much on its spine is looked at between. */
  const upTo = (from: BladePose, to: BladePose): BladePose[] => {
    if (to.u - from.u < CLOSEST || dot3(from.frame.x, to.frame.x) >= cos(radians(MOST_TURN)))
      return [to];
    const middle = poseAt((from.u + to.u) / 2);
    lost ||= middle === undefined;
    return middle === undefined ? [to] : [...upTo(from, middle), ...upTo(middle, to)];
  };
  const ends = (u: number): Vec3[] =>
    [-bed.noseHalf, bed.noseHalf].map((x) => [u + x, shape.spine.value(u + x), 0]);
  // Of a stroke with a place at which the blade does not come to rest nothing can be said.
  if (us.some((u) => !poseAt(u) && stanceAt(blade, setting, u))) return [];
  const even = isHollow ? refined(us, poseAt, ends) : us.flatMap((u) => poseAt(u) ?? []);
  const poses = even.flatMap((to, i) => {
    const from = even[i - 1];
    return from === undefined ? [to] : upTo(from, to);
  });
  return lost ? [] : poses;
};

/** Poses of every blade at every setting, found when first asked for; none for unknown names. */
export const settledPoses = (
  blades: readonly Blade[],
  settings: readonly PlanSetting[],
  bed: Bed,
  keep: Workshop['keep'],
): PosesByName => {
  const room = createRoom();
  return posesByName(
    blades,
    settings,
    (blade) => spineOf(blade, bed, settings, room, keep),
    (blade, spine, setting) => posesOf(blade, spine, setting, bed),
  );
};
