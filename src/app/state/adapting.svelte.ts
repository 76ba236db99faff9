import type { Adapted, Target } from '../../adapt/adapt.ts';
import { Asking } from './asking.svelte.ts';
import type { Hired } from './outside.ts';

/** What fitting a design to another grinder or other blades would mean, before anything is changed. */
export class Adapting extends Asking<Target, Adapted> {
  constructor(hired: Hired) {
    super(hired, (engine, of, target) => engine.adapt(of, target));
  }
}
