import type { Issue } from '../../core/issue.ts';
import type { Result } from '../../core/result.ts';
import type { Design } from '../../document/schema.ts';
import { text } from '../../text/index.ts';
import { Bench } from './bench.svelte.ts';
import type { Held } from './keeper.ts';
import type { Notices } from './notices.svelte.ts';
import type { Outside } from './outside.ts';
import { notePast, recallPast } from './past.ts';
import { Shelf } from './shelf.svelte.ts';
import type { Kept } from './store.ts';
import type { Unmeasured } from './unmeasured.svelte.ts';
import { isLink } from './view.svelte.ts';

const bytesOf = (words: string): Uint8Array => new TextEncoder().encode(words);

/** What goes with the design on the bench. */
export interface Company {
  readonly notices: Notices;
  readonly unmeasured: Unmeasured;
  /** Called when another design has come. */
  readonly turned: () => void;
  /** Leads to what the design on the bench states otherwise than a kept one. */
  readonly compare: (id: string) => void;
}

/**
 * How designs come to the bench, from files, links, examples and the shelf, and how they are kept:
 * nothing that somebody made is lost on the way.
 */
export class Designs {
  bench: Bench | null = $state.raw(null);
  /** Names of the worked examples. */
  examples: readonly string[] = $state.raw([]);
  readonly shelf: Shelf;
  readonly #outside: Outside;
  readonly #with: Company;

  constructor(outside: Outside, company: Company) {
    this.#outside = outside;
    this.#with = company;
    this.shelf = new Shelf(outside.store, outside.lasting, {
      now: outside.now,
      newId: outside.newId,
      tell: outside.tell,
      forked: (name) => {
        company.notices.say('good', text.app.saving.forked(name));
        this.bench?.set('name', name);
        company.unmeasured.moveTo(this.shelf.held.id);
        this.#remember();
      },
    });
  }

  /**
   * Opens what a link holds, or the last design of this tab or browser, or the first worked example;
   * the bench stays empty where none of them can be opened.
   */
  async start(fragment: string): Promise<void> {
    const { engines, session, preferences } = this.#outside;
    this.examples = await engines.numbers.examples();
    await this.shelf.refresh();
    if (isLink(fragment) && (await this.openLink(fragment))) return;
    const last = session.get('last') ?? preferences.get('last');
    const entry = last === null ? undefined : await this.shelf.read(last);
    if (entry !== undefined && (await this.#takeKept(entry))) {
      if (this.bench) void recallPast(session, this.bench, engines.numbers);
      return;
    }
    await this.openExample(0);
  }

  /** The page may be gone in a moment. */
  leave(): void {
    void this.shelf.flush();
    if (this.bench) notePast(this.#outside.session, this.bench.design, this.bench.past);
  }

  /** Puts a kept design on the bench, going on with its entry. */
  async #takeKept(entry: Kept): Promise<boolean> {
    const opened = await this.#outside.engines.numbers.restore(bytesOf(entry.text));
    if (!opened.ok) return this.#refuse(entry.name, opened.issues);
    await this.#put(opened.value, { id: entry.id, revision: entry.revision });
    this.#remember();
    return true;
  }

  /** Starts a design of its own from a worked example. */
  async openExample(index: number): Promise<boolean> {
    const name = this.examples[index];
    if (name === undefined) return false;
    const opened = await this.#example(index);
    if (!opened.ok) return this.#refuse(name, opened.issues);
    await this.#put(opened.value, null);
    this.#remember();
    return true;
  }

  async #example(index: number): Promise<Result<Design>> {
    const { numbers } = this.#outside.engines;
    return numbers.restore(await numbers.example(index));
  }

  /** A worked example to look at, without putting it on the bench. */
  async readExample(index: number): Promise<Design | null> {
    const design = await this.#example(index);
    return design.ok ? design.value : null;
  }

  /** Puts a design file on the bench as a new entry, kept from the start: it is somebody's own. */
  async open(name: string, bytes: Uint8Array): Promise<boolean> {
    return this.#takeOn(name, await this.#outside.engines.numbers.open(bytes));
  }

  /** Puts a design that came from elsewhere on the bench, and keeps it unless it is kept already. */
  async #takeOn(name: string, opened: Result<Design>): Promise<boolean> {
    if (!opened.ok) return this.#refuse(name, opened.issues);
    const design = opened.value;
    await this.#keepAll();
    const kept = await this.shelf.like(design);
    await this.#put(design, kept);
    if (kept === null) this.shelf.claim(design);
    this.#remember();
    this.#with.notices.leftOut(opened.issues);
    this.#arrived(name);
    return true;
  }

  /** Says what is on the bench; where another of that name is kept, leads to what differs. */
  #arrived(called: string): void {
    const name = this.bench?.design.name;
    const { entries, held } = this.shelf;
    const other = entries.find((entry) => entry.name === name && entry.id !== held.id);
    const { opened, differs } = text.app.designs;
    this.#with.notices.say(
      'good',
      opened(called),
      other && { label: differs, run: () => void this.#with.compare(other.id) },
    );
  }

  /** Opens the design in a link's fragment; a damaged link gives a message and changes nothing. */
  async openLink(fragment: string): Promise<boolean> {
    const opened = await this.#outside.engines.numbers.openLink(fragment);
    return this.#takeOn(opened.ok ? opened.value.name : text.app.designs.link, opened);
  }

  /** A kept design to look at, without putting it on the bench. */
  async readKept(id: string): Promise<Design | null> {
    const entry = await this.shelf.read(id);
    const opened = entry && (await this.#outside.engines.numbers.restore(bytesOf(entry.text)));
    if (opened?.ok) return opened.value;
    if (opened) this.#refuse(entry.name, opened.issues);
    return null;
  }

  /** Puts a kept design on the bench, by its entry. */
  async take(id: string): Promise<void> {
    await this.shelf.flush();
    const entry = await this.shelf.read(id);
    if (entry && (await this.#takeKept(entry)))
      this.#with.notices.say('good', text.app.designs.opened(entry.name));
  }

  /** Goes on with a copy under an entry of its own; the original stays as it is. */
  async copy(): Promise<void> {
    if (this.bench === null) return;
    await this.#keepAll();
    const { design } = this.bench;
    this.shelf.hold(design, null);
    this.#with.unmeasured.moveTo(this.shelf.held.id);
    this.bench.set('name', text.app.designs.copyName(design.name));
    this.#remember();
  }

  #refuse(name: string, issues: readonly Issue[]): false {
    this.#with.notices.refuse(text.app.designs.refused(name), issues);
    return false;
  }

  /** Keeps all of the design on the board, what was typed a moment ago too. */
  async #keepAll(): Promise<void> {
    if (this.bench) this.shelf.changed(this.bench.design);
    await this.shelf.empty();
  }

  /** Puts a design on the board; what was typed on the one before while this came is kept first. */
  async #put(design: Design, held: Held | null): Promise<void> {
    await this.#keepAll();
    this.#show(design, held);
  }

  /** Shows a design, going on with the entry it came from or with one of its own. */
  #show(design: Design, held: Held | null): void {
    if (this.bench === null) this.bench = new Bench(design);
    else this.bench.take(design);
    this.shelf.hold(design, held);
    this.#with.unmeasured.turnTo(this.shelf.held.id);
    this.#with.turned();
  }

  /** Notes which entry this tab works on. */
  #remember(): void {
    this.#outside.session.set('last', this.shelf.held.id);
    this.#outside.preferences.set('last', this.shelf.held.id);
  }

  /** Another tab wrote an entry: follow it when nothing of ours is unwritten. */
  async heard(id: string): Promise<void> {
    await this.shelf.refresh();
    const { held } = this.shelf;
    const before = this.bench?.design;
    const entry = id === held.id ? await this.shelf.read(id) : undefined;
    if (entry === undefined || entry.revision <= held.revision) return;
    const opened = await this.#outside.engines.numbers.restore(bytesOf(entry.text));
    // What was changed here in the meantime stays, and goes into an entry of its own.
    if (!this.shelf.clean || this.shelf.held !== held || this.bench?.design !== before) return;
    if (opened.ok) this.#show(opened.value, { id, revision: entry.revision });
    else this.#refuse(entry.name, opened.issues);
  }
}
