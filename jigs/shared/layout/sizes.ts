/** Proportions of the fixture that no one sets, mm. Standard sizes come from the hardware tables. */

/** Angle of the feed, EN 10056-1 equal angle 30 x 30 x 4, and what stands along its screw. */
export const FEED = {
  leg: 30,
  wall: 4,
  root: 5,
  /** Axis of the screw over the face that the lug stands on: nuts clear the root of the angle. */
  axis: 15,
  bracketHalf: 25,
  knobDiameter: 40,
  knobThickness: 13,
  /** What the nut bears on inside the knob. */
  knobWeb: 7.5,
  /** Nut sunk into the back of the knob, ISO 4032; thin nut on its front, ISO 4035. */
  knobNut: 5.2,
  jamNut: 3.2,
  /** Nut and thin nut, locked against each other. */
  nutPair: 8.4,
  /** Least room between knob and bracket. */
  knobRoom: 2,
  screwEnd: 2,
} as const;

export const GUIDE = {
  /** Width of a keeper along y. */
  keeper: 20,
  /** From the blade to the guard's front. */
  padReach: 12,
  /** Depth of the push block's foot on the step. */
  footRoom: 32,
  footHeight: 13,
  /** Width of the stop collar along the blade. */
  collarWidth: 14,
} as const;

export const SIZE = {
  noseWasher: 18,
  /** Head or nut of a collar screw beside its plate, with its end. */
  collarHead: 8,
  /** From the axis of a collar screw to the end of its plate, at least. */
  collarEdge: 5.5,
  /** From the tang to the axis of a collar screw. */
  collarScrewRoom: 3.5,
  /** Lowest pad over the step's top. */
  lowestPad: 6,
  guidePin: 6,
  /** Hole of a guide pin before it is reamed. */
  pinHole: 5.8,
  /** How far a guide pin ends below the top of the step. */
  pinBelow: 0.5,
  zeroPin: 6,
  zeroPinLength: 60,
} as const;

/** The push block's guard wall, and the T-shaped tenon of its pad. */
export const PAD = {
  wall: 14,
  noseRadius: 3,
  neckHalf: 2.5,
  neckDepth: 3,
  /** Web of a pad that stands off the height of its groove. */
  web: 4,
  headHalf: 5.5,
  headDepth: 4,
} as const;

/** Clamp bar: width along y, and what its ends need beyond the screws. */
export const BAR = { width: 20, end: 8 } as const;
