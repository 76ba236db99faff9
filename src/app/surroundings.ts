import { connect } from '../worker/client.ts';
import { indexedStore } from './state/indexed.ts';
import type { Hired, Outside } from './state/shop.svelte.ts';
import { memoryStore } from './state/store.ts';
import { browserPreferences, type Preferences } from './state/view.svelte.ts';

const CHANNEL = 'platenwright.designs';

const session: Preferences = {
  get: (key) => {
    try {
      return sessionStorage.getItem(`platenwright.${key}`);
    } catch {
      return null;
    }
  },
  set: (key, value) => {
    try {
      sessionStorage.setItem(`platenwright.${key}`, value);
    } catch {
      // The tab then starts from the browser's last design.
    }
  },
};

/** A worker that starts with the first question and may be replaced at any time. */
const hire = (): Hired => {
  let at: ReturnType<typeof connect> | null = null;
  return {
    engine: () => (at ??= connect()).engine,
    giveUp: () => {
      at?.stop();
      at = null;
    },
  };
};

/** The real browser: its database, its clock, its workers. */
export const surroundings = async (): Promise<Outside> => {
  // The worker starts while the database opens.
  const numbers = connect();
  const kept = await indexedStore().catch(() => null);
  const channel = new BroadcastChannel(CHANNEL);
  return {
    engines: {
      numbers: numbers.engine,
      hire,
    },
    store: kept ?? memoryStore(),
    lasting: kept !== null,
    preferences: browserPreferences,
    session,
    now: () => Date.now(),
    newId: () => crypto.randomUUID(),
    tell: (id) => channel.postMessage(id),
    listen: (hear) => {
      channel.onmessage = (event: MessageEvent<unknown>) => {
        if (typeof event.data === 'string') hear(event.data);
      };
    },
  };
};
