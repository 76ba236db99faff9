import type { Comparison } from '../../adapt/compare.ts';
import type { Difference } from '../../adapt/differences.ts';
import { withArea } from '../../adapt/with-area.ts';
import type { Design } from '../../document/schema.ts';
import { text } from '../../text/index.ts';
import { Asking } from './asking.svelte.ts';
import type { Bench } from './bench.svelte.ts';
import type { Notices } from './notices.svelte.ts';
import type { Hired } from './outside.ts';

/** What the design on the board states otherwise than a kept one, and what that means. */
export class Comparing extends Asking<Design, Comparison> {
  readonly #hired: Hired;
  readonly #notices: Notices;

  constructor(hired: Hired, notices: Notices) {
    super(hired, (engine, of, other) => engine.compare(other, of));
    this.#hired = hired;
    this.#notices = notices;
  }

  /** One part of the design on the board becomes what it is in the kept one; what is left is told. */
  async takeOver(bench: Bench, { area, areaLabel }: Difference): Promise<void> {
    if (this.asked === null) return;
    const { of, target } = this.asked;
    const taken = new TextEncoder().encode(JSON.stringify(withArea(of, target, area)));
    const opened = await this.#hired.engine().restore(taken);
    if (bench.design !== of) return;
    if (!opened.ok) this.#notices.refuse(text.app.designs.notTaken(areaLabel), opened.issues);
    else {
      bench.replace(opened.value);
      void this.ask(bench.design, target);
    }
  }
}
