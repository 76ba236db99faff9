import type { Blade, Side } from '../../blade/schema.ts';
import type { Grinder } from '../../grinder/schema.ts';
import type { GrindLine, SteeringPlace } from '../line.ts';
import type { SequencePass } from '../spine-rest/types.ts';
import type { Carriage } from './screw.ts';

/** What holds the blade on the upright, mm; along the blade behind its plunge. */
export interface Jaw {
  /** From the plunge to the near end of the jaw. */
  readonly gap: number;
  readonly width: number;
  /** How far the jaw stands proud of the blade's flank. */
  readonly thickness: number;
  /** How far the top of the jaw lies below the level of the edge. */
  readonly below: number;
}

/** What the carriage, and the way it is used, add to blades and grinder; mm and degrees. */
export interface CarriageParameters extends Carriage {
  /** Advance of the heel screw for a turn. */
  readonly screwPitch: number;
  /** Divisions of its knob. */
  readonly divisions: number;
  /** The upright's face ahead of the foot's centre, level. */
  readonly forward: number;
  /** Height of the edge above the base at the bevel place, level. */
  readonly edgeHeight: number;
  readonly jaw: Jaw;
  /** How near the belt's heel-side edge comes to the plunge; positive keeps off it. */
  readonly plungeStop: number;
  /** Length of blade still on the belt at the end of the stroke. */
  readonly tipOverlap: number;
  /** Further settings for a falling tip, the blade clamped again turned in its plane; 0 for none. */
  readonly tipSettings: number;
  /** Friction of belt on blade, a range. */
  readonly friction: readonly [from: number, to: number];
  /** Least force on the heel screw, as a share of the push. */
  readonly reserve: number;
  /** Height of the push above the base. */
  readonly pushHeight: number;
  /** How truly an angle and a fence are met and kept. */
  readonly angleTolerance: number;
  readonly fenceTolerance: number;
}

export interface CarriageInput {
  readonly blades: readonly Blade[];
  readonly grinder: Grinder;
  readonly sequence: readonly SequencePass[];
  readonly parameters: CarriageParameters;
}

/** The heel screw at one setting. */
export interface Heel {
  /** Extension square to the sole from the level carriage, mm. */
  readonly extension: number;
  /** Turns from the upright parallel to the abrasive face (the zero); positive tips further. */
  readonly turnsFromZero: number;
  readonly turnsFromLast: number;
  /** Whole divisions after the whole turns from zero, 0 to divisions - 1. */
  readonly division: number;
  /** What the rounding to whole divisions leaves, degrees. */
  readonly rounding: number;
  readonly degreesPerTurn: number;
}

/** The push on the carriage: how low it must act for the heel to stay down. */
export interface CarriagePush {
  /** Highest push, mm above the base, that leaves the reserve on the heel at every friction. */
  readonly to: number;
  /** Force on the heel screw as a share of the push, over the friction range. */
  readonly heelForceMin: number;
  readonly heelForceMax: number;
  /** Force of both rounds on the base as a share of the push at the worst friction. */
  readonly baseForceMin: number;
}

/** One place of one blade at one setting. */
export interface CarriagePlace {
  readonly u: number;
  readonly height: number;
  readonly thickness: number;
  /** What the plane leaves at the edge from the midplane on this side, mm. */
  readonly edge: number;
  /** What was asked for there. */
  readonly wantedEdge: number;
  /** Between midplane and ground face in the section square to the spine, degrees. */
  readonly angle: number;
  readonly bevelHeight: number;
}

export interface CarriageBlade {
  readonly blade: string;
  readonly places: readonly CarriagePlace[];
  readonly expected: readonly {
    readonly place: 'heel' | 'middle' | 'tip';
    readonly u: number;
    readonly bevelHeight: number;
  }[];
  /** Metal removed on this side by this setting, mm3. */
  readonly volume: number;
  /** Least distance outside the finished face, scratch and tolerances taken off, mm; 0 for the last. */
  readonly undercutMargin: number;
}

/** How a blade is clamped for a setting: 0 its straight edge, 1 and on the falls of its tip. */
export interface Clamping {
  readonly facet: number;
  readonly blade: string;
  /** The place of the edge that lies along the stroke at the edge height. */
  readonly u: number;
  /** Direction of the edge there against the straight spine line, degrees, negative falling. */
  readonly turn: number;
  /** Midplane ahead of the upright's face at that place, mm. */
  readonly midplane: number;
}

/** One belt on one side with the blade clamped one way. */
export interface CarriageSetting {
  readonly id: string;
  /** Place in the sequence, from 1. */
  readonly step: number;
  readonly side: Side;
  readonly belt: string;
  readonly backing: string;
  readonly facet: number;
  /** Between midplane and belt at the bevel place, degrees. */
  readonly angle: number;
  /** Between upright and abrasive face, and of the carriage against its base, degrees. */
  readonly faceAngle: number;
  readonly tilt: number;
  readonly heel: Heel;
  /** Of the finished edge's corner ahead of the foot's centre, level, mm. */
  readonly cornerForward: number;
  /** From the abrasive face to the foot's centre, and to its front, along the base, mm. */
  readonly footCentre: number;
  readonly fence: number;
  readonly fenceFromLast: number;
  readonly bevelHeight: number;
  /** Edge of this side to stop at, from the midplane, and what the calipers then show, mm. */
  readonly edgeSide: number;
  readonly edgeStop: number;
  readonly progress: readonly {
    /** Gap still open between foot and fence, mm. */
    readonly gap: number;
    readonly edgeSide: number;
    readonly edge: number;
    readonly angle: number;
    readonly bevelHeight: number;
  }[];
  readonly firstContact: 'edge' | 'shoulder' | 'face';
  /** Lowest and highest contact of belt and bevel above the base along the face, mm. */
  readonly contact: readonly [low: number, high: number];
  readonly push: CarriagePush;
  /** Distance of the jaw from the belt if it came over it, mm; negative would touch. */
  readonly jawOverBelt: number;
  /** Distance of the jaw beside the belt's edge at the plunge stop, mm. */
  readonly jawBeside: number;
  /** Assumed depth of this belt's scratches, mm (estimate). */
  readonly scratch: number;
  readonly clamping: readonly Clamping[];
  readonly blades: readonly CarriageBlade[];
}

/** The grind line of one side of one blade after the last belt. */
export interface CarriageLine extends GrindLine<SteeringPlace> {
  readonly greatestDeviation: number;
  /** The falling tip: how far the edge turns, degrees, and what is left there on this side, mm. */
  readonly tip: {
    readonly turn: number;
    /** Greatest metal left at places that steer, and at any place. */
    readonly leftSteering: number;
    readonly left: number;
  };
}

export interface CarriagePlan {
  readonly lean: number;
  readonly settings: readonly CarriageSetting[];
  readonly lines: readonly CarriageLine[];
  /** At the bevel place of the first blade, last setting of each side. */
  readonly sensitivity: readonly {
    readonly side: Side;
    /** Per 0.1 mm of fence: edge on this side and bevel height, mm. */
    readonly edgePerTenth: number;
    readonly heightPerTenth: number;
    /** Per division of the heel screw, fence untouched: degrees, edge and bevel height, mm. */
    readonly degreesPerDivision: number;
    readonly edgePerDivision: number;
    readonly heightPerDivision: number;
    /** Move of the fence for a degree. */
    readonly fencePerDegree: number;
  }[];
}
