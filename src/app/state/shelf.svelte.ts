import type { Design } from '../../document/schema.ts';
import { text } from '../../text/index.ts';
import { save, type Held } from './keeper.ts';
import type { Kept, KeptInfo, Store } from './store.ts';

export type Keeping = 'kept' | 'pending' | 'refused' | 'memory';

/** The file text under which a design is kept; `openDesign` takes it back. */
export const keptText = (design: Design): string => JSON.stringify(design, null, 2);

export interface Surroundings {
  readonly now: () => number;
  readonly newId: () => string;
  /** Tells other tabs that an entry was written or removed. */
  readonly tell: (id: string) => void;
  /** Called when the draft had to go into an entry of its own. */
  readonly forked: (name: string) => void;
}

/** The designs kept in this browser, and the one that is being worked on. */
export class Shelf {
  entries: readonly KeptInfo[] = $state.raw([]);
  keeping: Keeping = $state('kept');
  held: Held = $state.raw({ id: '', revision: 0 });
  #kept: Design | null = null;
  #draft: Design | null = null;
  #writing: Promise<void> = Promise.resolve();
  readonly #store: Store;
  readonly #lasting: boolean;
  readonly #around: Surroundings;

  constructor(store: Store, lasting: boolean, around: Surroundings) {
    this.#store = store;
    this.#lasting = lasting;
    this.#around = around;
    this.held = { id: around.newId(), revision: 0 };
    this.keeping = lasting ? 'kept' : 'memory';
  }

  /** Starts keeping this design under an entry of its own, or goes on with the one it came from. */
  hold(design: Design, held: Held | null): void {
    this.held = held ?? { id: this.#around.newId(), revision: 0 };
    this.#kept = design;
    this.#draft = null;
  }

  /** Has a design written though nothing changed since it came: it came from elsewhere. */
  claim(design: Design): void {
    this.#kept = null;
    this.changed(design);
  }

  /** Notes that the design changed; `flush` writes it. */
  changed(design: Design): void {
    // What was kept is written again where something else waits or is being written: it was undone.
    if (design === this.#kept && this.clean) return;
    this.#draft = design;
    if (this.#lasting) this.keeping = 'pending';
  }

  /** Whether the design is a worked example as it came: nothing of it needs to be kept. */
  get fresh(): boolean {
    return this.keeping === 'kept' && this.held.revision === 0;
  }

  /** Whether every change of this page is written. */
  get clean(): boolean {
    return this.#draft === null;
  }

  /** Writes what is not written yet; calls queue up behind each other. */
  flush(): Promise<void> {
    this.#writing = this.#writing.then(() => this.#write());
    return this.#writing;
  }

  /** Writes until nothing is left: what changes while it writes, too. What is refused is left. */
  async empty(): Promise<void> {
    for (let before: Design | null = null; this.#draft !== before;) {
      before = this.#draft;
      await this.flush();
    }
  }

  async #write(): Promise<void> {
    const design = this.#draft;
    if (design === null) return;
    const draft = { name: design.name, text: keptText(design) };
    const { now, newId, tell, forked } = this.#around;
    const before = this.held;
    const saved = await save(this.#store, before, draft, now(), newId, text.app.saving.forkName);
    // Meanwhile another design may have been put on the bench.
    if (this.held !== before) return;
    this.held = saved.held;
    if (saved.state === 'refused') {
      this.keeping = 'refused';
      return;
    }
    this.#kept = design;
    if (this.#draft === design) this.#draft = null;
    if (this.#lasting) this.keeping = this.#draft === null ? 'kept' : 'pending';
    tell(saved.held.id);
    if (saved.state === 'forked') forked(text.app.saving.forkName(design.name));
    await this.refresh();
  }

  /** The entry that holds just this design; null where none does. */
  async like(design: Design): Promise<Held | null> {
    for (const { id, name } of this.entries) {
      const entry = name === design.name ? await this.read(id) : undefined;
      if (entry?.text === keptText(design)) return { id, revision: entry.revision };
    }
    return null;
  }

  async refresh(): Promise<void> {
    const entries = await this.#store.list();
    this.entries = [...entries].sort((a, b) => b.at - a.at);
  }

  read(id: string): Promise<Kept | undefined> {
    return this.#store.read(id);
  }

  async remove(id: string): Promise<Kept | undefined> {
    const entry = await this.#store.read(id);
    await this.#store.remove(id);
    this.#around.tell(id);
    await this.refresh();
    return entry;
  }

  /** Puts a removed entry back as it was. */
  async putBack(entry: Kept): Promise<void> {
    await this.#store.write({ ...entry, revision: 1 }, 0);
    this.#around.tell(entry.id);
    await this.refresh();
  }
}
