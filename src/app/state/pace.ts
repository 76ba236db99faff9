/** How long a hand may rest before it is taken to have stopped, ms. */
const BLINK = 60;
/** Time that is taken for an answer before the first has come, ms. */
const FIRST = 160;
/** An answer is given this much more than the last one took before the next is asked for. */
const SPARE = 1.25;

/**
 * How soon to ask while a hand moves: as often as answers come. A design that is quickly checked then
 * follows the hand, and the check of a slow one is not given up for the next before its end.
 */
export class Pace {
  #last = FIRST;

  /** The last answer took so long, ms. */
  took(ms: number): void {
    this.#last = ms;
  }

  /** Asks when nothing moved for so long, ms. */
  get delay(): number {
    return Math.min(BLINK, this.#last);
  }

  /** And after so long in any case, ms. */
  get most(): number {
    return SPARE * this.#last;
  }
}
