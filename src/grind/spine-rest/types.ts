import type { Blade, Side } from '../../blade/schema.ts';
import type { Grinder } from '../../grinder/schema.ts';
import type { GrindLine, SteeringPlace } from '../line.ts';
import type { Seating } from './settle.ts';

/** One belt of the sequence, as in a design. */
export interface SequencePass {
  /** Id of one of the grinder's belts. */
  readonly belt: string;
  /** Id of one of the grinder's backings. */
  readonly backing: string;
  /** Edge thickness to stop at, both sides together, mm. */
  readonly edge: number;
  /** Degrees steeper than the final bevel. */
  readonly steeper: number;
}

/** What the fixture, and the way it is used, add to blades and grinder; mm and degrees. */
export interface SpineRestParameters {
  /** Width of the nose along the stroke: a hollow spine stands on its ends. */
  readonly noseWidth: number;
  /** Height of the seat above the machine's rest. */
  readonly stackHeight: number;
  /** How near the belt's heel-side edge comes to the plunge; positive keeps off it. */
  readonly plungeStop: number;
  /**
   * Length of blade still on the belt at the end of the stroke: the belt's width when the tip
   * stays on the belt, a few mm when it is stroked off the tip.
   */
  readonly tipOverlap: number;
  /** Friction of belt on blade, a range. */
  readonly friction: readonly [from: number, to: number];
  /** Least force of the step, as a share of the push. */
  readonly reserve: number;
  /** How far the push stays below the edge at the bevel place at least, mm; 0 when left out. */
  readonly padMargin?: number;
  readonly screwPitch: number;
  /** Divisions of the dial. */
  readonly divisions: number;
  /** How truly a setting is met and kept, mm of setoff. */
  readonly settingTolerance: number;
  /**
   * `line`: the setoff whose grind lines deviate least over the whole family; `place`: the wish of
   * the first blade met exactly at its bevel place.
   */
  readonly aim: 'line' | 'place';
}

export interface SpineRestInput {
  readonly blades: readonly Blade[];
  readonly grinder: Grinder;
  readonly sequence: readonly SequencePass[];
  readonly parameters: SpineRestParameters;
}

/** How a setting is reached from the one before and from the first (the zero). */
export interface Dial {
  /** Position of the step from the bare platen's line at the height of the rest, mm. */
  readonly position: number;
  /** Positive opens, away from the belt. */
  readonly turnsFromZero: number;
  readonly turnsFromLast: number;
  /** Whole divisions to read after the whole turns from zero, 0 to divisions - 1. */
  readonly division: number;
  /** What the rounding to whole divisions leaves, mm. */
  readonly rounding: number;
  /** What the way from the last setting is made of, mm: position = setoff + belt + backing. */
  readonly setoffChange: number;
  readonly beltChange: number;
  readonly backingChange: number;
}

/**
 * Where the push must act for the step to carry load, at one place. Heights are taken along the
 * abrasive face from the seat: on a square platen the height above the seat.
 */
export interface PushWindow {
  /** Lowest height that leaves the reserve at every friction, mm. */
  readonly from: number;
  /** Height of the edge, which the pad must stay below, mm. */
  readonly to: number;
  /** Force of the step as a share of a push at the plan's share of the edge, over the friction range. */
  readonly stepForceMin: number;
  readonly stepForceMax: number;
  /** Force on the seat as a share of the push, over the friction range; negative lifts. */
  readonly seatForceMin: number;
}

/** Where the belt first touches at a setting, before it has ground anything. */
export interface FirstContact {
  readonly at: 'edge' | 'shoulder' | 'face';
  /** Distance from the edge along the midplane, mm. */
  readonly belowEdge: number;
  /** Lowest push that would seat the blade at this contact, mm along the face. */
  readonly pushFrom: number;
  /** Whether a push below the edge can do that. */
  readonly seated: boolean;
}

/** One place of one blade at one setting. */
export interface SettledPlace {
  readonly u: number;
  readonly height: number;
  readonly thickness: number;
  /** The section standing in its contacts with its own face reached. */
  readonly seating: Seating;
  /** Belt-side edge to stop at, from the midplane, mm. */
  readonly edge: number;
  /** Angle the belt really reaches here, and the metal it leaves at the edge, mm on this side. */
  readonly reachedAngle: number;
  readonly reachedEdge: number;
  readonly leftStanding: number;
  readonly bevelHeight: number;
  /** Tilt of the whole blade while this place is at the belt's middle, degrees. */
  readonly strokeTilt: number;
}

/** A bevel height to measure. */
export interface Expected {
  readonly place: 'heel' | 'middle' | 'tip';
  readonly u: number;
  readonly bevelHeight: number;
  readonly push: PushWindow;
}

/** One blade at one setting. */
export interface BladeAtSetting {
  readonly blade: string;
  readonly places: readonly SettledPlace[];
  readonly expected: readonly Expected[];
  /** Metal removed on this side by this belt, mm3. */
  readonly volume: number;
  /**
   * Least distance by which this pass stays outside the finished face, scratches and setting
   * tolerance taken off, mm; 0 for the last pass, which is the finished face.
   */
  readonly undercutMargin: number;
}

/** One belt on one side. */
export interface SpineRestSetting {
  readonly id: string;
  /** Place in the sequence, from 1. */
  readonly step: number;
  readonly side: Side;
  readonly belt: string;
  readonly backing: string;
  /** From abrasive face to step, along the seat, mm. */
  readonly setoff: number;
  /** At the bevel place of the first blade, degrees. */
  readonly angle: number;
  readonly bevelHeight: number;
  /** Edge of this side to stop at, from the scribed centreline, mm, at the bevel place. */
  readonly edgeSide: number;
  /** What the calipers then show across the edge, mm. */
  readonly edgeStop: number;
  readonly progress: readonly {
    readonly edgeSide: number;
    readonly edge: number;
    readonly angle: number;
    readonly bevelHeight: number;
    /** Bevel height gained for each mm off the edge on this side. */
    readonly gain: number;
  }[];
  readonly dial: Dial;
  readonly push: PushWindow;
  readonly firstContact: FirstContact;
  /** Least distance of the near spine corner from the belt over all places, mm along the seat. */
  readonly cornerDistance: number;
  /** Greatest height at which a spine touches the step, mm above the seat. */
  readonly stepContact: number;
  /** Lowest and highest contact of belt and bevel over all places, mm along the face from the seat. */
  readonly contact: readonly [low: number, high: number];
  /** Assumed depth of this belt's scratches, mm (estimate). */
  readonly scratch: number;
  readonly blades: readonly BladeAtSetting[];
}

/** The grind line of one side of one blade after the last belt. */
export interface SpineRestLine extends GrindLine<SteeringPlace> {
  /** Greatest deviation of the places that steer, mm. */
  readonly greatestDeviation: number;
}

export interface SpineRestPlan {
  readonly lean: number;
  /** How far the abrasive face stands back at the seat against the height of the rest, mm. */
  readonly stackShift: number;
  /** Height of the push at the bevel place of the first blade, along the face from the seat, mm. */
  readonly pushHeight: number;
  /** The same as a share of the edge's height there: the pad keeps it at every other place. */
  readonly pushShare: number;
  readonly settings: readonly SpineRestSetting[];
  readonly lines: readonly SpineRestLine[];
  /** At the bevel place of the first blade, last setting of each side: per 0.1 mm of setoff. */
  readonly sensitivity: readonly {
    readonly side: Side;
    readonly degrees: number;
    readonly bevelHeight: number;
  }[];
}
