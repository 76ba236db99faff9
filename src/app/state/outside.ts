import type { Engine } from '../../worker/protocol.ts';
import type { Store } from './store.ts';
import type { Preferences } from './view.svelte.ts';

/** An engine for one kind of long work, started when it is first asked. */
export interface Hired {
  readonly engine: () => Engine;
  /** Gives up what it is at; the next question starts it anew. */
  readonly giveUp: () => void;
}

/** Quick numbers are never held up by long work, and no long work by another. */
export interface Engines {
  readonly numbers: Engine;
  readonly hire: () => Hired;
}

/** What the page is given by its surroundings. */
export interface Outside {
  readonly engines: Engines;
  readonly store: Store;
  /** Whether the store outlives the page. */
  readonly lasting: boolean;
  readonly preferences: Preferences;
  /** What this tab worked on last: its own memory, not shared with other tabs. */
  readonly session: Preferences;
  readonly now: () => number;
  readonly newId: () => string;
  /** Tells other tabs that an entry was written; they tell us through `listen`. */
  readonly tell: (id: string) => void;
  readonly listen: (hear: (id: string) => void) => void;
}
