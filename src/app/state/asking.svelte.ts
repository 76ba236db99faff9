import { messageOf } from '../../core/message-of.ts';
import type { Result } from '../../core/result.ts';
import type { Design } from '../../document/schema.ts';
import type { Engine } from '../../worker/protocol.ts';
import type { Hired } from './outside.ts';

interface Question<Target> {
  readonly of: Design;
  readonly target: Target;
}

/** One question about a design and something beside it, asked by hand; nothing is changed. */
export class Asking<Target, Answer> {
  /** What is in question; null when nothing is. */
  asked: Question<Target> | null = $state.raw(null);
  result: Result<Answer> | null = $state.raw(null);
  crash: string | null = $state(null);
  /** The question that was brought into sight; whoever comes back later is not led to it again. */
  shown: Question<Target> | null = null;
  readonly #hired: Hired;
  readonly #work: (engine: Engine, of: Design, target: Target) => Promise<Result<Answer>>;

  constructor(
    hired: Hired,
    work: (engine: Engine, of: Design, target: Target) => Promise<Result<Answer>>,
  ) {
    this.#hired = hired;
    this.#work = work;
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
      const result = await this.#work(this.#hired.engine(), of, target);
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
