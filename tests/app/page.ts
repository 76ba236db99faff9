import { mount, unmount } from 'svelte';
import { parameters } from '../../jigs/spine-rest/parameters.ts';
import App from '../../src/app/App.svelte';
import type { Outside } from '../../src/app/state/outside.ts';
import { memoryStore, type Store } from '../../src/app/state/store.ts';
import { fail } from '../../src/core/result.ts';
import { linkFragment, openLink } from '../../src/document/link.ts';
import { checkDesign, openDesign, openGrinder } from '../../src/document/open.ts';
import { saveDesign, saveGrinder } from '../../src/document/save.ts';
import type { Engine } from '../../src/worker/protocol.ts';
import { exampleBytes } from './sample.ts';

const families = { 'spine-rest': { parameters } };

/** An engine that opens and checks documents but solves nothing: enough to enter values. */
export const entryEngine = (): Engine => ({
  families: async () => [
    {
      id: 'spine-rest',
      label: 'Spine rest',
      meaning: 'For entering values.',
      emblem: 'step',
      parameters,
    },
  ],
  examples: async () => ['Hunting'],
  example: async () => exampleBytes('hunting-115'),
  open: async (bytes) => openDesign(bytes, { families }),
  openGrinder: async (bytes) => openGrinder(bytes),
  restore: async (bytes) => openDesign(bytes, { families }),
  link: async (design) => linkFragment(design),
  openLink: async (fragment) => openLink(fragment, { families }),
  text: async (design) => saveDesign(design),
  grinderText: async (grinder) => saveGrinder(grinder),
  solve: async (design) => {
    const checked = checkDesign(design, { families });
    return checked.ok ? fail() : checked;
  },
  build: async () => fail(),
  scene: async () => fail(),
  budget: async () => fail(),
  reach: async () => fail(),
  grind: async () => fail(),
  suit: async () => fail(),
  range: async () => fail(),
  adapt: async () => fail(),
  compare: async () => fail(),
  mendAll: async () => fail(),
  openReadings: async () => fail(),
  calibrate: async () => fail(),
  outline: async () => fail(),
  trace: async () => fail(),
  pack: async () => fail(),
});

const preferences = () => {
  const held = new Map<string, string>();
  return {
    get: (key: string) => held.get(key) ?? null,
    set: (key: string, value: string | null) =>
      void (value === null ? held.delete(key) : held.set(key, value)),
  };
};

export const outsideWith = (store: Store = memoryStore(), shared = preferences()): Outside => {
  const engine = entryEngine();
  let ids = 0;
  return {
    engines: { numbers: engine, hire: () => ({ engine: () => engine, giveUp: () => undefined }) },
    store,
    lasting: true,
    preferences: shared,
    session: preferences(),
    now: () => 0,
    newId: () => `entry-${++ids}-${Math.random()}`,
    tell: () => undefined,
    listen: () => undefined,
  };
};

/** Opens the app in the test's document; resolves when a design is on the bench. */
export const openPage = async (outside: Outside): Promise<() => Promise<void>> => {
  const app = mount(App, { target: document.body, props: { outside } });
  const ready = () => document.querySelector('main:not([aria-busy=true])') !== null;
  // Long enough for a machine with other work to read the step's panel.
  const until = Date.now() + 30_000;
  while (!ready() && Date.now() < until) await new Promise((resolve) => setTimeout(resolve, 5));
  return () => unmount(app);
};
