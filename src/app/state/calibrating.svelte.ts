import { withValue, type Path } from '../../core/path.ts';
import type { Result } from '../../core/result.ts';
import type { Design } from '../../document/schema.ts';
import type { Calibrated } from '../../make/calibrate.ts';
import type { Readings } from '../../setup/readings/schema.ts';
import type { Hired } from './outside.ts';
import { messageOf } from '../../core/message-of.ts';

/** The readings of a test piece as they are entered, and what they say of one design. */
export class Calibrating {
  readings: Readings | null = $state.raw(null);
  /** Of which design and readings the result is. */
  answer: {
    readonly of: Design;
    readonly readings: Readings;
    readonly result: Result<Calibrated>;
  } | null = $state.raw(null);
  busy: boolean = $state(false);
  crash: string | null = $state(null);
  #turn = 0;
  readonly #hired: Hired;

  constructor(hired: Hired) {
    this.#hired = hired;
  }

  start(readings: Readings): void {
    this.readings = readings;
    this.answer = null;
  }

  set(path: Path, value: unknown): void {
    if (this.readings !== null) this.readings = withValue(this.readings, path, value);
  }

  /** Takes the readings of a file; what is wrong with them is given back. */
  async open(bytes: Uint8Array): Promise<Result<Readings>> {
    const opened = await this.#hired.engine().openReadings(bytes);
    if (opened.ok) {
      this.readings = opened.value;
      this.answer = null;
    }
    return opened;
  }

  /** The result, if it is of this design and the readings as they stand. */
  about(design: Design): Result<Calibrated> | null {
    const { answer } = this;
    return answer?.of === design && answer.readings === this.readings ? answer.result : null;
  }

  async ask(of: Design): Promise<void> {
    const { readings } = this;
    if (readings === null) return;
    this.#turn += 1;
    const turn = this.#turn;
    this.busy = true;
    this.crash = null;
    try {
      const result = await this.#hired.engine().calibrate(of, readings);
      if (turn === this.#turn) this.answer = { of, readings, result };
    } catch (error) {
      if (turn === this.#turn) this.crash = messageOf(error);
    }
    if (turn === this.#turn) this.busy = false;
  }

  /** Puts the readings away: once their offset is in the design they must not count again. */
  drop(): void {
    this.#turn += 1;
    this.readings = null;
    this.answer = null;
    this.busy = false;
  }
}
