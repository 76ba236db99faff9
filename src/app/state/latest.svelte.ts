import { ok, type Result } from '../../core/result.ts';
import type { Design } from '../../document/schema.ts';
import { messageOf } from '../../core/message-of.ts';

/** What is known about one design; `of` says which, so that it is never shown for another. */
export interface Answer<T> {
  readonly of: Design | null;
  readonly result: Result<T> | null;
  /** Set when the engine threw: a defect, not an answer. */
  readonly crash: string | null;
}

export interface Seen<T> {
  readonly value: T;
  /** It belongs to an earlier state and must be marked so. */
  readonly stale: boolean;
}

/** Answers a question about a design; `progress` may be told the share that is done, 0 to 1. */
type Progress = (share: number) => void;

/** Takes an answer that holds, while the work goes on to a fuller one. */
type Meanwhile<T> = (value: T) => void;

/** With null the work was given up for a newer question. */
type Work<T> = (
  design: Design,
  progress: Progress,
  meanwhile: Meanwhile<T>,
) => Promise<Result<T> | null>;

const nothing = { of: null, result: null, crash: null } as const;

/**
 * Asks one question about the newest design only. While an answer is on its way later designs
 * replace each other; with `interrupt` the work under way is given up at once. Work that gives
 * itself up for a newer question needs no interruption for one, only to be stopped.
 */
export class Latest<T> {
  answer: Answer<T> = $state.raw(nothing);
  busy: boolean = $state(false);
  /** Share of the work that is done, 0 to 1, where it tells; null until it does. */
  share: number | null = $state(null);
  /** Whether a question waits for the hand to rest. */
  due: boolean = $state(false);
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** What is being worked at, and what is next. */
  #now: Design | null = null;
  #wanted: Design | null = null;
  #turn = 0;
  readonly #work: Work<T>;
  readonly #interrupt: (() => void) | null;
  readonly #overtake: (() => void) | null;
  /** When the oldest question that still waits was asked. */
  #since: number | null = null;

  constructor(
    work: Work<T>,
    interrupt: (() => void) | null = null,
    overtake: (() => void) | null = interrupt,
  ) {
    this.#work = work;
    this.#interrupt = interrupt;
    this.#overtake = overtake;
  }

  /** The answer, if it is about this design. */
  about(design: Design): Answer<T> | null {
    return this.answer.of === design ? this.answer : null;
  }

  /** The value for this design, if there is one. */
  value(design: Design): T | null {
    const result = this.about(design)?.result;
    return result?.ok ? result.value : null;
  }

  /**
   * What may be drawn now: the value for this design, or while that is awaited the one before
   * it, marked as such. Nothing once this design is known to have none.
   */
  seen(design: Design): Seen<T> | null {
    const { of, result } = this.answer;
    if (!result?.ok) return null;
    if (of === design) return { value: result.value, stale: false };
    return { value: result.value, stale: true };
  }

  /** Whether an answer is on its way or about to be asked for. */
  get working(): boolean {
    return this.busy || this.due;
  }

  /** Asks when no other question came for `delay` ms, or others have come for `most` ms. */
  askSoon(design: Design, delay: number, most = Infinity): void {
    const since = this.#since ?? performance.now();
    this.forget();
    if (this.#answered(design)) return;
    this.due = true;
    this.#since = since;
    const left = Math.max(0, since + most - performance.now());
    this.#timer = setTimeout(() => this.ask(design), Math.min(delay, left));
  }

  /** Known, and not about to be replaced by the answer about another design. */
  #answered(design: Design): boolean {
    return this.answer.of === design && !this.busy;
  }

  /** Drops a question that still waits. */
  forget(): void {
    clearTimeout(this.#timer);
    this.due = false;
    this.#since = null;
  }

  ask(design: Design): void {
    this.forget();
    if (this.#answered(design) && this.answer.crash === null) return;
    if (this.busy && this.#now === design) {
      this.#wanted = null;
      return;
    }
    if (this.busy && this.#overtake === null) {
      this.#wanted = design;
      return;
    }
    if (this.busy) this.#overtake?.();
    void this.#run(design);
  }

  /** Gives up the work under way. */
  stop(): void {
    this.forget();
    this.#turn += 1;
    this.#wanted = null;
    if (this.busy) this.#interrupt?.();
    this.busy = false;
  }

  async #run(first: Design): Promise<void> {
    this.#turn += 1;
    const turn = this.#turn;
    this.busy = true;
    let next: Design | null = first;
    while (next !== null) {
      const of: Design = next;
      this.#now = of;
      this.#wanted = null;
      const answer = await this.#one(of, turn);
      if (turn !== this.#turn) return;
      if (answer !== null) this.answer = answer;
      next = this.#wanted;
    }
    this.busy = false;
  }

  async #one(of: Design, turn: number): Promise<Answer<T> | null> {
    this.share = null;
    const progress: Progress = (share) => {
      if (turn === this.#turn && this.#now === of) this.share = share;
    };
    const meanwhile: Meanwhile<T> = (value) => {
      if (turn === this.#turn && this.#now === of)
        this.answer = { of, result: ok(value), crash: null };
    };
    try {
      const result = await this.#work(of, progress, meanwhile);
      return result && { of, result, crash: null };
    } catch (error) {
      return { of, result: null, crash: messageOf(error) };
    }
  }
}
