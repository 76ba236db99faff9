import type { Comparison } from '../../adapt/compare.ts';
import type { Design } from '../../document/schema.ts';
import { Asking } from './asking.svelte.ts';
import type { Hired } from './outside.ts';

/** What the design on the board states otherwise than a kept one, and what that means. */
export class Comparing extends Asking<Design, Comparison> {
  constructor(hired: Hired) {
    super(hired, (engine, of, other) => engine.compare(other, of));
  }
}
