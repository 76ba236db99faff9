import type { Path } from '../../core/path.ts';
import type { Issue } from '../../core/issue.ts';
import type { Design } from '../../document/schema.ts';
import type { NumberRange } from '../../make/free-range/numbers.ts';
import type { Hired } from './outside.ts';
import { messageOf } from '../../core/message-of.ts';

/** How far numbers of one design may move: found one by one, forgotten with the design. */
export class Ranging {
  /** The number whose range is being looked for. */
  looking: Path | null = $state(null);
  issues: readonly Issue[] = $state.raw([]);
  crash: string | null = $state(null);
  #found: { readonly of: Design; readonly ranges: readonly NumberRange[] } | null =
    $state.raw(null);
  #turn = 0;
  readonly #hired: Hired;

  constructor(hired: Hired) {
    this.#hired = hired;
  }

  /** What was found of this very design, the last first. */
  about(design: Design): readonly NumberRange[] {
    return this.#found?.of === design ? this.#found.ranges : [];
  }

  async ask(of: Design, path: Path): Promise<void> {
    this.stop();
    const turn = this.#turn;
    this.looking = path;
    this.issues = [];
    this.crash = null;
    try {
      const result = await this.#hired.engine().range(of, path);
      if (turn !== this.#turn) return;
      this.issues = result.ok ? [] : result.issues;
      if (result.ok) {
        const others = this.about(of).filter((range) => range.path !== path);
        this.#found = { of, ranges: [result.value, ...others] };
      }
    } catch (error) {
      if (turn === this.#turn) this.crash = messageOf(error);
    }
    if (turn === this.#turn) this.looking = null;
  }

  /** Gives up the work under way. */
  stop(): void {
    this.#turn += 1;
    if (this.looking !== null) this.#hired.giveUp();
    this.looking = null;
  }
}
