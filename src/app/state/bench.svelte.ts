import type { Design } from '../../document/schema.ts';
import { begin, edit, redo, settle, undo, type History } from './history.ts';
import { valueAt, withValue, type Path } from '../../core/path.ts';

/** The design on the bench: one immutable document, its past and its future. */
export class Bench {
  #history: History<Design>;

  constructor(design: Design) {
    this.#history = $state.raw(begin(design));
  }

  get design(): Design {
    return this.#history.present;
  }

  get past(): readonly Design[] {
    return this.#history.past;
  }

  get canUndo(): boolean {
    return this.#history.past.length > 0;
  }

  get canRedo(): boolean {
    return this.#history.future.length > 0;
  }

  at(path: Path): unknown {
    return valueAt(this.design, path);
  }

  /** Sets one value; edits under the same gesture name are one step until it is settled. */
  set(path: Path, value: unknown, gesture: string | null = null): void {
    this.replace(withValue(this.design, path, value), gesture);
  }

  replace(design: Design, gesture: string | null = null): void {
    this.#history = edit(this.#history, design, gesture);
  }

  settle(): void {
    this.#history = settle(this.#history);
  }

  undo(): void {
    this.#history = undo(this.#history);
  }

  redo(): void {
    this.#history = redo(this.#history);
  }

  /** Another design with a past of its own. */
  take(design: Design): void {
    this.#history = begin(design);
  }

  /** Gives a design that has no past the one it had before the page was left. */
  recall(design: Design, past: readonly Design[]): void {
    if (this.design === design && !this.canUndo) this.#history = { ...this.#history, past };
  }
}
