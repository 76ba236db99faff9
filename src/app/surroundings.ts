import { connect } from '../worker/client.ts';
import { indexedStore } from './state/indexed.ts';
import type { Hired, Outside } from './state/outside.ts';
import { memoryStore } from './state/store.ts';
import { preferencesIn } from './state/view.svelte.ts';

const CHANNEL = 'platenwright.designs';

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
    preferences: preferencesIn(() => localStorage),
    session: preferencesIn(() => sessionStorage),
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
