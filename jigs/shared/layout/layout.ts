import {
  atan2,
  capScrew,
  clearanceHole,
  degrees,
  radians,
  tan,
} from '../../../src/family/index.ts';
import { middle, span, type Needs } from '../needs.ts';
import type { Values } from '../parameters.ts';
import { halfUp } from './half.ts';
import { FEED, GUIDE, SIZE } from './sizes.ts';
import { keeperLockLength, THREAD } from './threads.ts';
import { stopDistance } from './stop-distance.ts';

/**
 * Every derived dimension of the fixture, mm, in the seat frame with the base at its mean place
 * and the step at the middle of its travel: x along the stroke, y from the abrasive face, z up
 * from the seat. Parts, placements and checks all read these numbers and derive no others.
 */
export type Layout = ReturnType<typeof layoutOf>;

const EDGE = 8;

/** A place along y that lies a whole number of half millimetres behind the nose's front. */
const behind = ({ noseGap }: Values, y: number): number => noseGap + halfUp(y - noseGap);

const levelsOf = ({ plate, base }: Values) => ({
  plate,
  base,
  /** Top of the base, under nose and packer. */
  baseTop: -plate,
  baseBottom: -plate - base,
  /** Top of the step. */
  stepTop: plate,
  /** From the rest's top to the seat. */
  stack: plate + base,
});

/** What stays between a swinging blade and the nose's screws, mm: what is checked, and a tenth. */
const SWING_ROOM = 0.6;

const noseOf = (v: Values, needs: Needs) => {
  const half = needs.beltHalf + v.wing;
  const stepHalf = needs.beltHalf + v.stepWing;
  /** Travel of the nose on the base to either side of its mean place. */
  const travel = halfUp(span(needs.shift) / 2 + v.travelReserve);
  const least = Math.max(30, Math.ceil(2 * (travel + SIZE.noseWasher / 2 + 3)));
  // Washers that a swinging blade would meet stand farther back.
  const washers = v.noseGap + least / 2 - SIZE.noseWasher / 2 + needs.shift.min;
  const back = Math.max(0, halfUp((needs.swing ?? 0) + SWING_ROOM - washers));
  const depth = least + back;
  return {
    half,
    front: v.noseGap,
    back: v.noseGap + depth,
    depth,
    travel,
    screwX: (half + stepHalf) / 2,
    screwY: v.noseGap + back + least / 2,
  };
};

/**
 * Where the guide starts: behind the packer's front and, with strips, behind the foot of the push
 * block wherever step and base stand. The pad's tip never lies behind the step.
 */
const guideStart = (v: Values, needs: Needs, packerFront: number): number => {
  const foot = needs.setoff.max + GUIDE.padReach + GUIDE.footRoom - needs.shift.min + 1;
  return v.guide === 'strips' ? behind(v, Math.max(packerFront, foot)) : packerFront;
};

/** What the middle of the step's travel is moved by at most, to the next half millimetre, mm. */
export const MIDDLE_SHIFT = 0.25;

const slideOf = (v: Values, needs: Needs, packerFront: number) => {
  const half = needs.beltHalf + v.stepWing;
  const travel = halfUp(span(needs.onBase) / 2 + v.travelReserve + MIDDLE_SHIFT);
  const start = guideStart(v, needs, packerFront);
  const front = behind(v, middle(needs.onBase) - MIDDLE_SHIFT);
  const pins: readonly [number, number] = [start + 9, start + 9 + v.guideLength];
  const strips = { front: start, back: start + v.guideLength };
  const back =
    v.guide === 'strips'
      ? strips.back + 2 + travel + FEED.leg
      : pins[1] + travel + SIZE.guidePin / 2 + EDGE;
  return {
    half,
    front,
    back,
    /** To either side of the middle. */
    travel,
    pins,
    strips: { ...strips, inner: half + v.guidePlay / 2 },
    keepers: [strips.front + GUIDE.keeper / 2, strips.back - GUIDE.keeper / 2] as const,
    slotWidth: SIZE.guidePin + v.guidePlay,
    lockX: half - 10,
    /** Between the pins, in front of the lug's foot whatever the travel. */
    lockY: Math.min(middle({ min: pins[0], max: pins[1] }), back - FEED.leg - 11 - travel),
    /** Yaw that the play allows, degrees: play over length. */
    yaw: degrees(atan2(v.guidePlay, v.guideLength)),
  };
};

const feedOf = (slideHalf: number, slideBack: number, travel: number, plate: number) => {
  const bracketBack = slideBack + travel + 1 + FEED.leg;
  const lugHalf = Math.min(20, slideHalf - 2);
  /** From the front face of the bracket's leg to the lug's rear face, step fully forward. */
  const reach = bracketBack - FEED.wall - (slideBack - travel);
  /** Length of the feed screw, step fully forward: the sum of what stands along it. */
  const needed =
    FEED.knobNut +
    FEED.knobWeb +
    FEED.jamNut +
    FEED.knobRoom +
    FEED.wall +
    reach +
    FEED.wall +
    FEED.nutPair +
    FEED.screwEnd;
  return {
    axisZ: plate + FEED.axis,
    lugHalf,
    lugScrewX: lugHalf - 8,
    lugScrewY: slideBack - FEED.leg / 2,
    bracketHalf: FEED.bracketHalf,
    bracketScrewX: FEED.bracketHalf - 10,
    bracketScrewY: bracketBack - FEED.leg / 2,
    bracketBack,
    screwNeeded: needed,
  };
};

const baseOf = (v: Values, needs: Needs, noseHalf: number, back: number) => {
  const { stack } = levelsOf(v);
  const lean = tan(radians(needs.lean));
  return {
    half: noseHalf - 2,
    front: behind(v, v.noseGap + 4 + stack * Math.max(0, lean) - needs.shift.min),
    back,
  };
};

/** Where the pad, guard and handle of the push block stand; z from the step's top. */
const pushOf = (v: Values, needs: Needs, slideHalf: number) => {
  const pads = [needs.pad, ...(needs.otherPads ?? [])].map(
    (height) => Math.round(10 * (height - v.plate)) / 10,
  );
  const pad = pads[0] ?? 0;
  // The handle passes over whatever locks the step.
  const { headHeight } = capScrew(THREAD.main);
  const footHeight =
    v.guide === 'strips' ? keeperLockLength(v.plate) + headHeight + 2 : GUIDE.footHeight;
  const grip = Math.max(45, v.handDistance + 3 - GUIDE.padReach);
  const needed = halfUp(Math.max(pad + 6, footHeight + 22));
  const guard = halfUp(Math.max(needed, needs.edgeTop + v.guardRise - v.plate));
  // A guard hardly higher than the handle is the front of one flat top.
  const handle = guard - needed < 10 ? guard : needed;
  return {
    half: slideHalf,
    padHalf: 12,
    /** From the pad's tip to the guard's front face. */
    padReach: GUIDE.padReach,
    /** Groove of the pads; the first pad stands level with it. */
    pad,
    pads,
    foot: GUIDE.footRoom as number,
    footHeight,
    handle,
    grip,
    depth: grip + 25,
    guard,
  };
};

/** The two plates of the stop collar, v along the blade's height from the spine line. */
const collarOf = (v: Values, needs: Needs, noseHalf: number, web: number) => {
  const { from, to, thickness } = needs.behind;
  const lower = Math.min(from, 0) - SIZE.collarScrewRoom;
  const upper = to + SIZE.collarScrewRoom;
  const edge = Math.max(SIZE.collarEdge, clearanceHole(THREAD.collar, 'normal').diameter / 2 + web);
  return {
    /** From the plunge to the face that meets the nose. */
    distance: stopDistance({
      half: noseHalf,
      u: needs.beltHalf + v.plungeMargin,
      deep: v.plate,
      inner: thickness / 2,
      outer: thickness / 2 + v.plate,
      stop: needs.stop,
    }),
    width: GUIDE.collarWidth,
    thickness: v.plate,
    lower,
    upper,
    bottom: lower - edge,
    top: lower - edge + halfUp(upper - lower + 2 * edge),
    gripped: thickness,
  };
};

/** `web`: what must be left between a hole and the end of a plate, mm. */
export const layoutOf = (v: Values, needs: Needs, web: number) => {
  const levels = levelsOf(v);
  const nose = noseOf(v, needs);
  const packerFront = behind(v, nose.back + nose.travel + 0.5);
  const slide = slideOf(v, needs, packerFront);
  const feed = feedOf(slide.half, slide.back, slide.travel, v.plate);
  const base = baseOf(v, needs, nose.half, feed.bracketBack);
  return {
    levels,
    nose,
    slide,
    feed,
    base,
    packer: { front: packerFront, back: base.back, half: base.half },
    push: pushOf(v, needs, slide.half),
    collar: collarOf(v, needs, nose.half, web),
    gauge: {
      width: Math.round(100 * needs.lastSetoff) / 100,
      height: v.plate - 1,
      length: 2 * needs.beltHalf,
    },
    pin: { diameter: SIZE.zeroPin, length: SIZE.zeroPinLength },
  };
};
