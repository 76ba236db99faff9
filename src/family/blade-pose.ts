import type { Frame } from '../geometry/frame.ts';

/** The blade in the fixture at one setting and place, standing in its contacts. */
export interface BladePose {
  readonly setting: string;
  readonly blade: string;
  readonly u: number;
  /** Takes blade coordinates (u, v, w) to the seat frame. */
  readonly frame: Frame;
}
