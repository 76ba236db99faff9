import { describe, expect, it } from 'vitest';
import { save, type Held } from '../../src/app/state/keeper.ts';
import { memoryStore, type Store } from '../../src/app/state/store.ts';

const keep = (store: Store, held: Held, text: string) =>
  save(
    store,
    held,
    { name: 'Rest', text },
    1,
    () => 'other',
    (name) => `${name} (other tab)`,
  );

const texts = async (store: Store) =>
  Promise.all((await store.list()).map(async ({ id }) => (await store.read(id))?.text));

describe('keeping designs', () => {
  it('counts revisions', async () => {
    const store = memoryStore();
    const first = await keep(store, { id: 'a', revision: 0 }, 'one');
    expect(first).toEqual({ state: 'kept', held: { id: 'a', revision: 1 } });
    const second = await keep(store, first.held, 'two');
    expect(second.held.revision).toBe(2);
    expect(await texts(store)).toEqual(['two']);
  });

  it('loses neither tab when two write after reading the same revision', async () => {
    const store = memoryStore();
    const both = (await keep(store, { id: 'a', revision: 0 }, 'start')).held;
    await keep(store, both, 'from tab one');
    const two = await keep(store, both, 'from tab two');
    expect(two).toEqual({ state: 'forked', held: { id: 'other', revision: 1 } });
    expect(await texts(store)).toEqual(['from tab one', 'from tab two']);
    expect((await store.read('other'))?.name).toBe('Rest (other tab)');
  });

  it('does not bring back what another tab removed under the same entry unseen', async () => {
    const store = memoryStore();
    const held = (await keep(store, { id: 'a', revision: 0 }, 'start')).held;
    await store.remove('a');
    expect((await keep(store, held, 'mine')).state).toBe('forked');
  });

  it('says so when the browser refuses, and can save later from the same place', async () => {
    const store = memoryStore();
    const full: Store = { ...store, write: async () => 'refused' };
    const broken: Store = { ...store, write: () => Promise.reject(new Error('gone')) };
    const held = { id: 'a', revision: 0 };
    expect(await keep(full, held, 'one')).toEqual({ state: 'refused', held });
    expect(await keep(broken, held, 'one')).toEqual({ state: 'refused', held });
    expect((await keep(store, held, 'one')).state).toBe('kept');
  });
});
