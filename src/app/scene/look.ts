import type { Vec3 } from '../../geometry/vector.ts';

/** What is to be seen. */
export interface Look {
  readonly setting: string;
  readonly blade: string;
  /** Which of the settled poses over the stroke. */
  readonly pose: number;
  /** 0 together, 1 far apart. */
  readonly apart: number;
  /** Share of the width that is cut away, from the left; 0 cuts nothing. */
  readonly cut: number;
  /** Names of what is hidden. */
  readonly hidden: readonly string[];
  /** Two nearest points of a check, seat frame. */
  readonly points: readonly [Vec3, Vec3] | null;
}
