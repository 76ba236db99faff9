import type { Band } from '../../src/adapt/reach.ts';
import type { ReachBox } from '../../src/family/index.ts';
import { point, type Interval } from '../../src/geometry/interval.ts';

export const bandOf = (across: Interval, up: Interval): Band => ({ across, up });

/** A single blade: of the rests its height, thickness and angle. */
export const boxOf = (across: number, up: number, run: number, also = 0): ReachBox => ({
  across: point(across),
  up: point(up),
  run: point(run),
  also: point(also),
});

export const raise = (message: string): never => {
  throw new Error(message);
};
