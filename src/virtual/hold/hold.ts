import type { Pose } from '../pose.ts';

/** Where a blade came to rest with one place before the belt's middle. */
export interface Reached {
  readonly pose: Pose;
  /** The place along the blade, u, that stopped the cut there. */
  readonly stoppedAt: number;
  /** What of the blade it stands on; unknown where the fixture does not tell. */
  readonly stands?: Stands;
}

/** What of a blade's faces a pose takes its place from: nothing else of them counts. */
export interface Stands {
  /** Places between which the near face's spine was looked at. */
  readonly from: number;
  readonly to: number;
  /** Rows of the far face that were looked at, the last of them; -1 for none. */
  readonly row: number;
}

/**
 * A fixture holding a blade whose side is being ground: the pose in which the cut stops while place
 * m of the blade is before the belt's middle. Undefined where the blade cannot stand.
 */
export type Hold = (m: number) => Reached | undefined;

/** The two faces of the blade as a hold sees them: towards the belt and away from it. */
export interface Faces {
  readonly near: Float64Array;
  readonly far: Float64Array;
}
