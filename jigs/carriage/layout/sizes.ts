import { DIVISIONS, PITCH } from '../../shared/feed.ts';
import { FEED } from '../../shared/layout/sizes.ts';

/** Proportions of the carriage that no one sets, mm. Standard sizes come from the hardware tables. */

/** Round bar under the front of the sole, and the strip between them. */
export const FOOT = {
  radius: 6,
  stripHalf: 8,
  screwEnd: 12,
  besideTab: 13.5,
  drill: 9,
  /** From a foot screw's middle to the upright: half its head (M5, 8.5: ISO 4762) and room. */
  headRoom: 4.75,
} as const;

/** Heel screw M6 x 1 (ISO 261, coarse), its rounded end, and the knob on it. */
export const HEEL = {
  tipRadius: 3,
  pitch: PITCH,
  divisions: DIVISIONS,
  knobWeb: FEED.knobWeb,
  /** Thread left over at the farthest setting, and air under the knob there. */
  spare: 2,
  air: 1.5,
  /** Steps of the rounded end, degrees. */
  step: 3,
} as const;

/** Jaw from the lower side of what it grips: screw, jack screw, its lower end; how far it grips. */
export const JAW = { screw: 6, jack: 22, end: 29.5, grip: 14, edge: 6, leastGrip: 8 } as const;

export const GUSSET = {
  inner: 16,
  outerFromJaw: 24,
  tab: 14,
  tabFrom: 9,
  toe: 8,
  short: 0.3,
  /** Least metal between two slots, in thicknesses of the sheet. */
  web: 0.7,
} as const;

export const SOLE = { band: 38, tailHalf: 24, palmFrom: 10, palmLength: 30, palmHalf: 24 } as const;

export const FENCE = { overStroke: 22, end: 10, edge: 9.5 } as const;

export const BASE = {
  pin: 6,
  pinHole: 5.8,
  pinLength: 20,
  pinEdge: 6,
  behindHeel: 12,
  heelTrack: 7,
} as const;

/** Room that hand and wrist take behind the push block. */
export const HAND = { half: 45, depth: 70, low: -5, high: 70 } as const;

export const BAR = { width: 20, end: 10 } as const;

/** EN 10056-1 equal angles: leg, wall, root radius, mm (from memory). */
export const ANGLES: readonly {
  readonly leg: number;
  readonly wall: number;
  readonly root: number;
}[] = [
  { leg: 40, wall: 4, root: 6 },
  { leg: 45, wall: 4.5, root: 7 },
  { leg: 50, wall: 5, root: 7 },
  { leg: 60, wall: 6, root: 8 },
  { leg: 70, wall: 7, root: 9 },
  { leg: 80, wall: 8, root: 10 },
  { leg: 100, wall: 10, root: 12 },
];
