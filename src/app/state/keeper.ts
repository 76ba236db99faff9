import type { Kept, Store } from './store.ts';

/** What is known about the entry that a page works on. */
export interface Held {
  readonly id: string;
  /** The last revision this page read or wrote; 0 before the first write. */
  readonly revision: number;
}

/** What became of a save. `forked` means: another page's work stays, ours has an entry of its own. */
export type Saved =
  | { readonly state: 'kept' | 'forked'; readonly held: Held }
  | { readonly state: 'refused'; readonly held: Held };

export interface Draft {
  readonly name: string;
  readonly text: string;
}

/**
 * Saves a draft without ever overwriting what this page has not seen: when another tab wrote
 * first, the draft goes into a new entry.
 */
export const save = async (
  store: Store,
  held: Held,
  draft: Draft,
  now: number,
  newId: () => string,
  forkName: (name: string) => string,
): Promise<Saved> => {
  const entry = (id: string, after: number, name = draft.name): Kept => ({
    id,
    name,
    revision: after + 1,
    at: now,
    text: draft.text,
  });
  try {
    const written = await store.write(entry(held.id, held.revision), held.revision);
    if (written === 'kept')
      return { state: 'kept', held: { id: held.id, revision: held.revision + 1 } };
    if (written === 'refused') return { state: 'refused', held };
    const id = newId();
    const forked = await store.write(entry(id, 0, forkName(draft.name)), 0);
    return forked === 'kept'
      ? { state: 'forked', held: { id, revision: 1 } }
      : { state: 'refused', held };
  } catch {
    return { state: 'refused', held };
  }
};
