import type { NumberParameter } from '../../core/parameter.ts';
import { digits } from './format.ts';
import { echo, readNumber, type Reading } from './read.ts';
import type { Display } from './unit.ts';

/** What a number being typed needs to know of its surroundings. */
export interface DraftOf {
  readonly parameter: () => NumberParameter;
  readonly value: () => number;
  readonly display: () => Display;
  readonly store: (value: number) => void;
  /** The value that stands was typed once more. */
  readonly again?: () => void;
  /** The only values that can be had, ascending. */
  readonly stops?: () => readonly number[] | undefined;
}

/** Which of some values is nearest to this one. */
export const nearest = (stops: readonly number[], value: number): number =>
  stops.reduce(
    (best, stop, i) =>
      Math.abs(stop - value) < Math.abs((stops[best] ?? Infinity) - value) ? i : best,
    0,
  );

/**
 * A number while it is typed. The stored value changes only when a typed text is understood and
 * in range; showing it in another unit changes nothing.
 */
export class NumberDraft {
  #typed: string | null = $state(null);
  refused: Extract<Reading, { ok: false }> | null = $state.raw(null);
  readonly #of: DraftOf;

  constructor(of: DraftOf) {
    this.#of = of;
  }

  get text(): string {
    const { parameter, value, display } = this.#of;
    return this.#typed ?? digits(value(), parameter().unit, display());
  }

  /** How the typed text is understood, where that is not what it says itself. */
  get echo(): string | null {
    return this.#typed === null
      ? null
      : echo(this.#typed, this.#of.parameter(), this.#of.display());
  }

  type(typed: string): void {
    this.#typed = typed;
    this.refused = null;
  }

  /** Stores what was typed; false when it is refused and stays for mending. */
  commit(): boolean {
    if (this.#typed === null) return true;
    const read = readNumber(this.#typed, this.#of.parameter(), this.#of.display());
    if (!read.ok) {
      this.refused = read;
      return false;
    }
    this.take(read.value);
    return true;
  }

  /** Stores a value that is known to hold. */
  take(value: number): void {
    this.cancel();
    if (value !== this.#of.value()) this.#of.store(value);
    else this.#of.again?.();
  }

  cancel(): void {
    this.#typed = null;
    this.refused = null;
  }

  /** A value from a slider: it holds by construction, and replaces what was being typed. */
  slide(value: number): void {
    this.cancel();
    this.#of.store(value);
  }

  /** One step of the parameter up or down within its range, or to the next stop. */
  nudge(steps: number): void {
    const p = this.#of.parameter();
    const now = this.#of.value();
    const stops = this.#of.stops?.();
    const stop = steps > 0 ? stops?.find((s) => s > now) : stops?.findLast((s) => s < now);
    const next = stops ? (stop ?? now) : Number((now + steps * p.step).toFixed(6));
    this.cancel();
    this.#of.store(Math.min(p.max, Math.max(p.min, next)));
  }
}
