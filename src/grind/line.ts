import type { Side } from '../blade/schema.ts';
import type { Certainty } from '../core/certainty.ts';

/** A finished bevel at one place of a blade, mm and degrees. */
export interface BevelPlace {
  readonly u: number;
  readonly height: number;
  readonly thickness: number;
  readonly angle: number;
  readonly bevelHeight: number;
  readonly wanted: number;
  readonly deviation: number;
  /** Metal at the edge beyond what was asked for; negative where too much is gone. */
  readonly leftStanding: number;
  readonly certainty: Certainty;
}

/** The grind line of one side of one blade after the last belt. */
export interface GrindLine<P extends BevelPlace = BevelPlace> {
  readonly blade: string;
  readonly side: Side;
  readonly places: readonly P[];
}

/** A place, and whether it has a say in the settings; the last of a tip has not. */
export interface SteeringPlace extends BevelPlace {
  readonly steers: boolean;
}
