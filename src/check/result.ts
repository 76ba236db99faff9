import type { Vec3 } from '../geometry/vector.ts';

/**
 * How far apart bodies are still measured: 'all' that could matter to anybody, or only 'near' what
 * is asked of them, which takes a tenth of the time. What has passed and failed is the same.
 */
export type Gaps = 'all' | 'near';

/**
 * One check with its numbers. A check that could not be computed is `passed: false` with
 * `found: null`: nothing passes because a part was missing.
 */
export interface CheckResult {
  /** Stable key: "clearance/nose/belt". */
  readonly id: string;
  readonly label: string;
  readonly kind: 'clearance' | 'contact' | 'range' | 'fabrication' | 'force' | 'hand';
  readonly passed: boolean;
  readonly unit: 'mm' | 'deg' | 'N' | 'ratio' | 'm/s';
  /** The value found; null when it could not be computed. */
  readonly found: number | null;
  /** The limits it is held to; either may be absent. */
  readonly atLeast?: number;
  readonly atMost?: number;
  /** Where the limit comes from. */
  readonly basis: string;
  /** The worst pose in words: setting, blade, place, side. */
  readonly pose?: { readonly setting: string; readonly blade?: string; readonly u?: number };
  /** The two nearest points, seat frame. */
  readonly points?: readonly [Vec3, Vec3];
  /** Of bodies that run into each other: the volume that both fill in the pose named, mm3. */
  readonly shared?: number;
  readonly message: string;
  /** What would mend it; the parameter's path when one number does. */
  readonly fix: string;
  readonly parameter?: string;
}
