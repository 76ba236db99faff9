import type { Blade, Side } from '../../blade/schema.ts';
import type { Certainty } from '../../core/certainty.ts';
import type { Grinder } from '../../grinder/schema.ts';
import type { Dial, SequencePass } from '../spine-rest/types.ts';
import type { Climb } from './at-lip.ts';
import type { Circle, EdgeSection } from './half.ts';
import type { Limits, Web } from './limits.ts';
import type { Contact } from './push.ts';
import type { Standing, WheelAtSeat } from './stand.ts';

/** One belt of the sequence, as in a design. */
export interface HollowPass extends Omit<SequencePass, 'steeper'> {
  /** How much shallower than the final hollow this belt stops, mm; none for the last. */
  readonly depthLeft?: number | undefined;
}

/** What the fixture, and the way it is used, add to blades and grinder; mm. */
export interface EdgeRestParameters {
  /** Id of the wheel that is ground on. */
  readonly wheel: string;
  /** Height of the seat above the machine's rest. */
  readonly stackHeight: number;
  /** A thin strip across the belt, or two pads beside it. */
  readonly lip: 'strip' | 'pads';
  readonly lipHeight: number;
  readonly lipThickness: number;
  /**
   * How far from the belt's middle the lip holds the edge: half the belt for a strip, the inner
   * ends of pads.
   */
  readonly lipReach: number;
  /** Least distance of the lip from the running belt, its flutter and splice taken off. */
  readonly runningClearance: number;
  /** Least thickness of metal a hollow may leave. */
  readonly leastWeb: number;
  /** How near the belt's heel-side edge comes to the plunge. */
  readonly plungeStop: number;
  /** Length of blade still on the belt at the end of the stroke. */
  readonly tipOverlap: number;
  /** Friction of belt on blade, a range. */
  readonly friction: readonly [from: number, to: number];
  /** Least force of the lip, and least force of the wheel, as shares of the push. */
  readonly reserve: number;
  readonly wheelShare: number;
  /** Height of the push above the seat; the middle of the common window when left out. */
  readonly pushHeight?: number;
  readonly screwPitch: number;
  readonly divisions: number;
  /** How truly a lip is set and kept. */
  readonly settingTolerance: number;
}

export interface EdgeRestInput {
  readonly blades: readonly Blade[];
  readonly grinder: Grinder;
  readonly sequence: readonly HollowPass[];
  readonly parameters: EdgeRestParameters;
}

/** Where the push must act, mm above the seat, and the forces at the plan's push height. */
export interface LipPush {
  /** Below this the wheel gets less than its share of the push. */
  readonly from: number;
  /** Above this the lip carries less than its reserve. */
  readonly to: number;
  /** Force of the lip as a share of the push, over first touch, full contact and friction. */
  readonly lipForceMin: number;
  readonly lipForceMax: number;
  /** Force on the seat as a share of the wheel's; negative lifts. */
  readonly seatForceMin: number;
}

/** The hollow at one place of one blade. */
export interface HollowPlace {
  readonly u: number;
  readonly height: number;
  readonly thickness: number;
  readonly edge: number;
  /** Section before this pass, near side to the wheel, and what the wheel takes off it. */
  readonly section: EdgeSection;
  readonly circle: Circle;
  readonly standing: Standing;
  readonly depth: number;
  /**
   * Middle of the hollow from the edge's foot along the face, and its limits from the edge's corner,
   * as calipers show them, mm.
   */
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
  /** Whether the lip holds the edge on both sides of the belt while this place is ground. */
  readonly guided: boolean;
  /** The same limits along the midplane, and whether the hollow runs out. */
  readonly limits: Limits;
  readonly web: Web;
}

/** A grind line to measure: the upper limit of the hollow. */
export interface ExpectedHollow {
  readonly place: 'heel' | 'middle' | 'tip';
  readonly u: number;
  readonly depth: number;
  readonly lower: number;
  readonly upper: number;
}

/** One blade at one setting. */
export interface HollowedBlade {
  readonly blade: string;
  readonly places: readonly HollowPlace[];
  readonly expected: readonly ExpectedHollow[];
  /** Metal removed on this side by this belt, mm3. */
  readonly volume: number;
  /** Least distance outside the finished hollow, scratches and setting tolerance taken off, mm. */
  readonly undercutMargin: number;
}

/** One row of what is found on the way, at the lip that stays. */
export interface HollowProgress {
  readonly depth: number;
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
  readonly tilt: number;
  readonly web: number;
}

/** One belt on one side. Lengths mm, at the bevel place of the first blade ground on this side. */
export interface EdgeRestSetting {
  readonly id: string;
  readonly step: number;
  readonly side: Side;
  readonly belt: string;
  readonly backing: string;
  readonly wheel: WheelAtSeat;
  /** The lip's face from the wheel's foremost point, towards the maker positive. */
  readonly lip: number;
  /** Midplane, and hollowed face, from the seat's normal, towards the wheel positive, degrees. */
  readonly tilt: number;
  readonly faceTilt: number;
  /** Depth to stop at below the face. Nothing stops the cut: it is measured. */
  readonly depth: number;
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
  readonly web: Web;
  /** Distance of the abrasive from the lip's face at the seat and at the lip's top. */
  readonly roomAtSeat: number;
  readonly roomAtTop: number;
  readonly climb: Climb;
  /** Middle of the hollow at the first touch, before it is any deeper. */
  readonly firstCentre: number;
  readonly progress: readonly HollowProgress[];
  readonly dial: Dial;
  readonly push: LipPush;
  /** Directions from the wheel's axis to where it bears. */
  readonly contact: Contact;
  /** Least turn of belt on the wheel beyond the contact, degrees. */
  readonly wrapMargin: number;
  readonly scratch: number;
  readonly blades: readonly HollowedBlade[];
}

/** The hollows of one side of one blade after the last belt. */
export interface HollowLine {
  readonly blade: string;
  readonly side: Side;
  readonly places: readonly {
    readonly u: number;
    readonly height: number;
    readonly thickness: number;
    readonly depth: number;
    readonly tilt: number;
    readonly lower: number;
    readonly upper: number;
    readonly web: number;
    /** Upper limit wanted, from the blade's own wish. */
    readonly wanted: number;
    readonly deviation: number;
    readonly certainty: Certainty;
    /** Whether the lip holds the edge on both sides of the belt while this place is ground. */
    readonly guided: boolean;
  }[];
  readonly greatestDeviation: number;
  /** The thinnest place of the finished blade between the limits of this side's hollow. */
  readonly web: Web & { readonly u: number };
  /** Length of blade that is guided, and the greatest sagitta of its edge over the lip, mm. */
  readonly guided: number;
  readonly sagitta: number;
}

export interface EdgeRestPlan {
  readonly wheel: string;
  /** Height of the push above the seat. */
  readonly pushHeight: number;
  readonly settings: readonly EdgeRestSetting[];
  readonly lines: readonly HollowLine[];
}
