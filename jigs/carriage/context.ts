import type {
  CarriageInput,
  CarriagePlan,
  Design,
  Grinder,
  Making,
} from '../../src/family/index.ts';
import type { Mount } from '../shared/layout/mount.ts';
import type { Stand } from '../shared/site.ts';
import type { Grip } from './layout/grip.ts';
import type { Layout } from './layout/layout.ts';
import type { Values } from './parameters.ts';
import type { Screws } from './screws.ts';

/** Everything that parts and placements are drawn from. */
export interface Context {
  readonly design: Design;
  readonly grinder: Grinder;
  readonly making: Making;
  readonly v: Values;
  readonly l: Layout;
  readonly input: CarriageInput;
  readonly plan: CarriagePlan;
  readonly grips: readonly Grip[];
  /** One a pass of the sequence. */
  readonly stands: readonly Stand[];
  readonly mount: Mount;
  readonly restThickness: number;
  readonly screws: Screws;
}
