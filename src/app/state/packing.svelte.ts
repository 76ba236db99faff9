import { proxy } from 'comlink';
import type { Issue } from '../../core/issue.ts';
import type { Design } from '../../document/schema.ts';
import type { Packed } from '../../worker/protocol.ts';
import type { Hired } from './outside.ts';
import { messageOf } from '../../core/message-of.ts';

/** The package of one design: being made, made, or refused. */
export class Packing {
  /** Share that is done while it is being made. */
  share: number | null = $state(null);
  made: { readonly of: Design; readonly packed: Packed } | null = $state.raw(null);
  refused: readonly Issue[] | null = $state.raw(null);
  crash: string | null = $state(null);
  #turn = 0;
  readonly #hired: Hired;

  constructor(hired: Hired) {
    this.#hired = hired;
  }

  /** The package, if it is that of this very design. */
  about(design: Design): Packed | null {
    return this.made?.of === design ? this.made.packed : null;
  }

  async make(design: Design, acceptFailing: boolean): Promise<void> {
    this.#turn += 1;
    const turn = this.#turn;
    this.share = 0;
    this.refused = null;
    this.crash = null;
    const progress = (share: number): void => {
      if (turn === this.#turn && this.share !== null) this.share = share;
    };
    try {
      const result = await this.#hired.engine().pack(design, acceptFailing, proxy(progress));
      if (turn !== this.#turn) return;
      if (result.ok) this.made = { of: design, packed: result.value };
      else this.refused = result.issues;
    } catch (error) {
      if (turn === this.#turn) this.crash = messageOf(error);
    }
    if (turn === this.#turn) this.share = null;
  }

  stop(): void {
    this.#turn += 1;
    this.share = null;
    this.#hired.giveUp();
  }
}
