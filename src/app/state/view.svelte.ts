import { sentenceIn } from '../entry/sentence.ts';
import { DISPLAYS, type Display } from '../entry/unit.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import type { Path } from '../../core/path.ts';
import { isStep, type StepId } from './steps.ts';

export type Theme = 'auto' | 'light' | 'dark';
export const THEMES: readonly Theme[] = ['auto', 'light', 'dark'];

/** Where preferences live; the browser's own, or nothing where it forbids. */
export interface Preferences {
  get(key: string): string | null;
  /** With null nothing is kept under the key any more. */
  set(key: string, value: string | null): void;
}

/** Preferences in a store of the browser, which may be forbidden. */
export const preferencesIn = (storage: () => Storage): Preferences => ({
  get: (key) => {
    try {
      return storage().getItem(`platenwright.${key}`);
    } catch {
      return null;
    }
  },
  set: (key, value) => {
    try {
      if (value === null) storage().removeItem(`platenwright.${key}`);
      else storage().setItem(`platenwright.${key}`, value);
    } catch {
      // A forgotten preference is no loss: a tab then starts from the browser's last design.
    }
  },
});

/** Where a check found its worst. */
export interface Spot {
  readonly check: string;
  readonly u: number | undefined;
  readonly points: readonly [Vec3, Vec3] | null;
}

/** Whether an address fragment holds a design rather than the name of a step. */
export const isLink = (fragment: string): boolean => /^#\d+\./.test(fragment);

/** How the design is looked at. Nothing here changes the design. */
export class View {
  display: Display = $state('mm');
  theme: Theme = $state('auto');
  step: StepId = $state('blade');
  /** The value in hand: its field and its dimension are marked. */
  focus: Path | null = $state(null);
  /** How far down the screen a slider is that is being moved, px; null while none is. */
  sliding: number | null = $state(null);
  blade: number = $state(0);
  setting: string | null = $state(null);
  /** Which of the settled poses over the stroke is in view. */
  pose: number = $state(0);
  /** The place of a check in view, with its two nearest points. */
  spot: Spot | null = $state.raw(null);
  readonly #preferences: Preferences;
  #rest: ReturnType<typeof setTimeout> | undefined;

  constructor(preferences: Preferences) {
    this.#preferences = preferences;
    const display = DISPLAYS.find((d) => d === preferences.get('display'));
    const theme = THEMES.find((t) => t === preferences.get('theme'));
    this.display = display ?? 'mm';
    this.theme = theme ?? 'auto';
  }

  show(display: Display): void {
    this.display = display;
    this.#preferences.set('display', display);
  }

  /** A sentence of the engine, with its lengths in the unit of the page. */
  said(sentence: string): string {
    return sentenceIn(this.display, sentence);
  }

  paper(theme: Theme): void {
    this.theme = theme;
    this.#preferences.set('theme', theme);
  }

  /** A slider is being moved, and then let go. What follows is seen for a moment longer. */
  slide(place: number): void {
    if (this.#rest !== undefined || this.sliding === null) this.sliding = place;
    clearTimeout(this.#rest);
    this.#rest = undefined;
  }

  letGo(): void {
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => (this.sliding = null), 2000);
  }

  /** Takes the step from an address fragment such as `#grinder`; others are left alone. */
  follow(fragment: string): void {
    const step = fragment.replace(/^#/, '');
    if (isStep(step)) this.step = step;
  }
}
