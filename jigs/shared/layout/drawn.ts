import type { Making } from '../../../src/family/index.ts';
import type { Range } from '../needs.ts';
import type { Values } from '../parameters.ts';
import type { Layout } from './layout.ts';
import type { Mount } from './mount.ts';
import type { Stations } from './stations.ts';

/** What plates are drawn and screws chosen from. */
export interface Drawn {
  readonly v: Values;
  readonly l: Layout;
  readonly s: Stations;
  readonly mount: Mount;
  readonly making: Making;
  /** Lean of the platen, degrees. */
  readonly lean: number;
  /** Lowest height over the seat at which a spine touches the step, mm. */
  readonly stepContact: number;
  /** Thickness of what the base is mounted on, mm. */
  readonly restThickness: number;
  /** Places of the step on the base that settings and zero need. */
  readonly needsOnBase: Range;
}
