import type { Adapted, Target } from '../../adapt/adapt.ts';
import type { Result } from '../../core/result.ts';
import type { Design } from '../../document/schema.ts';
import type { Hired } from './outside.ts';
import { messageOf } from '../../core/message-of.ts';

interface Question {
  readonly of: Design;
  readonly target: Target;
}

/** What fitting a design to another grinder or other blades would mean, before anything is changed. */
export class Adapting {
  /** The grinder or blades in question; null when none are. */
  asked: Question | null = $state.raw(null);
  result: Result<Adapted> | null = $state.raw(null);
  crash: string | null = $state(null);
  readonly #hired: Hired;

  constructor(hired: Hired) {
    this.#hired = hired;
  }

  get busy(): boolean {
    return this.asked !== null && this.result === null && this.crash === null;
  }

  async ask(of: Design, target: Target): Promise<void> {
    if (this.busy) this.#hired.giveUp();
    const question = { of, target };
    this.asked = question;
    this.result = null;
    this.crash = null;
    try {
      const result = await this.#hired.engine().adapt(of, target);
      if (this.asked === question) this.result = result;
    } catch (error) {
      if (this.asked === question) this.crash = messageOf(error);
    }
  }

  /** Drops the question; nothing was changed. */
  drop(): void {
    if (this.busy) this.#hired.giveUp();
    this.asked = null;
    this.result = null;
    this.crash = null;
  }
}
