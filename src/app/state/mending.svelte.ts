import type { Result } from '../../core/result.ts';
import type { Mended } from '../../adapt/mend-all.ts';
import { text } from '../../text/index.ts';
import type { Bench } from './bench.svelte.ts';
import type { Notices } from './notices.svelte.ts';
import type { Hired } from './outside.ts';
import { messageOf } from '../../core/message-of.ts';

const words = text.adapt.mend;

/** Setting all values that are named as mends: one step that undo takes back. */
export class Mending {
  busy: boolean = $state(false);
  readonly #hired: Hired;
  readonly #notices: Notices;

  constructor(hired: Hired, notices: Notices) {
    this.#hired = hired;
    this.#notices = notices;
  }

  async all(bench: Bench): Promise<void> {
    if (this.busy) return;
    const { design } = bench;
    this.busy = true;
    try {
      const mended = await this.#hired.engine().mendAll(design);
      // Who went on typing meanwhile keeps what was typed.
      if (bench.design === design) this.#take(bench, mended);
    } catch (error) {
      const why = messageOf(error);
      this.#notices.say('bad', text.app.answer.crashed(why));
    }
    this.busy = false;
  }

  #take(bench: Bench, mended: Result<Mended>): void {
    if (!mended.ok) {
      const left = mended.issues.filter(({ severity }) => severity === 'error');
      const [first] = left.length > 0 ? left : mended.issues;
      return this.#notices.say('bad', words.failed(`${first?.message ?? ''} ${first?.fix ?? ''}`));
    }
    const { design, differences, failed } = mended.value;
    const { nothing } = words;
    if (differences.length === 0)
      return this.#notices.say('bad', `${nothing.message} ${nothing.fix}`);
    bench.replace(design);
    const said = differences.map(({ label, from, to }) => words.step(label, from, to));
    // A later step is not what this would take back.
    const run = () => (bench.design === design ? bench.undo() : undefined);
    const lines = [words.done(said), ...(failed.length > 0 ? [words.still(failed.length)] : [])];
    const tone = failed.length > 0 ? 'bad' : 'good';
    this.#notices.say(tone, lines.join('\n'), { label: text.app.tools.undo, run });
  }
}
