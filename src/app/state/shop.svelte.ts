import { proxy } from 'comlink';
import { createContext } from 'svelte';
import type { Blade } from '../../blade/schema.ts';
import type { Issue } from '../../core/issue.ts';
import type { Result } from '../../core/result.ts';
import type { Design } from '../../document/schema.ts';
import type { ReachTable } from '../../adapt/reach.ts';
import type { Suit } from '../../make/suit/suit.ts';
import type { Budget } from '../../setup/budget/budget.ts';
import { text } from '../../text/index.ts';
import type { FamilyCard } from '../../family/family.ts';
import type { Preview } from '../../worker/checking.ts';
import type { Built, GroundCard, Scene, Solved } from '../../worker/protocol.ts';
import { Adapting } from './adapting.svelte.ts';
import { Bench } from './bench.svelte.ts';
import { Unmeasured } from './unmeasured.svelte.ts';
import { Calibrating } from './calibrating.svelte.ts';
import { Comparing } from './comparing.svelte.ts';
import { Finding } from './finding.svelte.ts';
import { Importing } from './importing.svelte.ts';
import type { Held } from './keeper.ts';
import { Latest } from './latest.svelte.ts';
import { Mending } from './mending.svelte.ts';
import { Notices } from './notices.svelte.ts';
import type { Outside } from './outside.ts';
import { notePast, recallPast } from './past.ts';
import { Pace } from './pace.ts';
import { Packing } from './packing.svelte.ts';
import type { Path } from '../../core/path.ts';
import { withOutline } from './outlined.ts';
import { Ranging } from './ranging.svelte.ts';
import { Shelf } from './shelf.svelte.ts';
import { signsOf } from './signs.ts';
import { stepOf, type StepId } from './steps.ts';
import type { Kept } from './store.ts';
import { isLink, View } from './view.svelte.ts';

const bytesOf = (words: string): Uint8Array => new TextEncoder().encode(words);

/** Everything the panels share. */
export class Shop {
  readonly view: View;
  readonly notices = new Notices();
  readonly shelf: Shelf;
  readonly solving: Latest<Solved>;
  readonly building: Latest<Built>;
  /** What checks that are under way have found so far. */
  readonly finding = new Finding();
  /** The solids, asked for only while they are looked at. */
  readonly staging: Latest<Scene>;
  /** The tolerance budget, asked for only when it is wanted. */
  readonly budgeting: Latest<Budget | null>;
  /** The blades as the belt leaves them, asked for only when it is wanted. */
  readonly grinding: Latest<readonly GroundCard[] | null>;
  /** Which fixture suits the blades, asked for only when it is wanted. */
  readonly suiting: Latest<Suit>;
  /** What the fixture can still grind, asked for only when it is wanted. */
  readonly reaching: Latest<ReachTable>;
  /** How far single numbers may move. */
  readonly ranging: Ranging;
  /** How soon checks are asked for while a number is dragged. */
  readonly pace = new Pace();
  readonly packing: Packing;
  readonly adapting: Adapting;
  readonly comparing: Comparing;
  readonly mending: Mending;
  /** Values that describe a grinder which was taken off. */
  readonly unmeasured: Unmeasured;
  /** Readings of a test piece. */
  readonly calibrating: Calibrating;
  /** A blade outline from a file, being looked at. */
  readonly importing: Importing;
  bench: Bench | null = $state.raw(null);
  families: readonly FamilyCard[] = $state.raw([]);
  /** Names of the worked examples. */
  examples: readonly string[] = $state.raw([]);
  failure: string | null = $state(null);
  readonly outside: Outside;

  constructor(outside: Outside) {
    this.outside = outside;
    const { engines } = outside;
    this.view = new View(outside.preferences);
    this.unmeasured = new Unmeasured(
      () => this.bench?.design,
      () => this.families,
      outside.preferences,
    );
    this.solving = new Latest((design) => engines.numbers.solve(design));
    const [checker, modeller] = [engines.hire(), engines.hire()];
    // The checker gives up by itself for a newer design, and keeps what it has made of its parts.
    this.building = new Latest(
      (design, progress, meanwhile) => {
        const since = performance.now();
        const proved = (built: Built): void => {
          this.pace.took(performance.now() - since);
          meanwhile(built);
        };
        const told = this.#told(design, progress);
        return checker.engine().build(design, proxy(told), proxy(proved));
      },
      checker.giveUp,
      () => undefined,
    );
    // A picture is soon drawn: the next one waits for it.
    this.staging = new Latest((design) => modeller.engine().scene(design), modeller.giveUp, null);
    const reckoner = engines.hire();
    this.budgeting = new Latest((design) => reckoner.engine().budget(design), reckoner.giveUp);
    this.grinding = new Latest(
      (design, progress) => reckoner.engine().grind(design, proxy(progress)),
      reckoner.giveUp,
    );
    this.suiting = new Latest((design) => reckoner.engine().suit(design), reckoner.giveUp);
    this.reaching = new Latest((design) => reckoner.engine().reach(design), reckoner.giveUp);
    this.ranging = new Ranging(engines.hire());
    this.packing = new Packing(engines.hire());
    this.adapting = new Adapting(engines.hire());
    this.comparing = new Comparing(engines.hire(), this.notices);
    this.mending = new Mending(engines.hire(), this.notices);
    this.calibrating = new Calibrating(engines.hire());
    this.importing = new Importing(engines.hire());
    this.shelf = new Shelf(outside.store, outside.lasting, {
      now: outside.now,
      newId: outside.newId,
      tell: outside.tell,
      forked: (name) => {
        this.notices.say('good', text.app.saving.forked(name));
        this.bench?.set('name', name);
        this.unmeasured.moveTo(this.shelf.held.id);
        this.remember();
      },
    });
  }

  /** Opens the last design of this tab or browser, or the first worked example. */
  async start(fragment: string): Promise<void> {
    try {
      const { numbers } = this.outside.engines;
      [this.families, this.examples] = await Promise.all([numbers.families(), numbers.examples()]);
      await this.shelf.refresh();
      if (isLink(fragment) && (await this.openLink(fragment))) return;
      const last = this.outside.session.get('last') ?? this.outside.preferences.get('last');
      const entry = last === null ? undefined : await this.shelf.read(last);
      if (entry !== undefined && (await this.takeKept(entry))) {
        if (this.bench) void recallPast(this.outside.session, this.bench, numbers);
        return;
      }
      await this.openExample(0);
      if (this.bench === null) this.failure ??= text.app.startFailed;
    } catch {
      this.failure = text.app.startFailed;
    }
  }

  /** The page may be gone in a moment. */
  leave(): void {
    void this.shelf.flush();
    if (this.bench) notePast(this.outside.session, this.bench.design, this.bench.past);
  }

  /** Puts a kept design on the bench, going on with its entry. */
  async takeKept(entry: Kept): Promise<boolean> {
    const opened = await this.outside.engines.numbers.restore(bytesOf(entry.text));
    if (!opened.ok) return this.refuse(entry.name, opened.issues);
    await this.put(opened.value, { id: entry.id, revision: entry.revision });
    this.remember();
    return true;
  }

  /** Starts a design of its own from a worked example. */
  async openExample(index: number): Promise<boolean> {
    const name = this.examples[index];
    if (name === undefined) return false;
    const opened = await this.#example(index);
    if (!opened.ok) return this.refuse(name, opened.issues);
    await this.put(opened.value, null);
    this.remember();
    return true;
  }

  async #example(index: number): Promise<Result<Design>> {
    const { numbers } = this.outside.engines;
    return numbers.restore(await numbers.example(index));
  }

  /** A worked example to look at, without putting it on the bench. */
  async readExample(index: number): Promise<Design | null> {
    const design = await this.#example(index);
    return design.ok ? design.value : null;
  }

  /** Puts a design file on the bench as a new entry, kept from the start: it is somebody's own. */
  async open(name: string, bytes: Uint8Array): Promise<boolean> {
    return this.#takeOn(name, await this.outside.engines.numbers.open(bytes));
  }

  /** Puts a design that came from elsewhere on the bench, and keeps it unless it is kept already. */
  async #takeOn(name: string, opened: Result<Design>): Promise<boolean> {
    if (!opened.ok) return this.refuse(name, opened.issues);
    const design = opened.value;
    await this.#keepAll();
    const kept = await this.shelf.like(design);
    await this.put(design, kept);
    if (kept === null) this.shelf.claim(design);
    this.remember();
    this.notices.leftOut(opened.issues);
    this.#arrived(name);
    return true;
  }

  /** Says what is on the bench; where another of that name is kept, leads to what differs. */
  #arrived(called: string): void {
    const name = this.bench?.design.name;
    const { entries, held } = this.shelf;
    const other = entries.find((entry) => entry.name === name && entry.id !== held.id);
    const { opened, differs } = text.app.designs;
    this.notices.say(
      'good',
      opened(called),
      other && { label: differs, run: () => void this.compareKept(other.id) },
    );
  }

  /** Opens the design in a link's fragment; a damaged link gives a message and changes nothing. */
  async openLink(fragment: string): Promise<boolean> {
    const opened = await this.outside.engines.numbers.openLink(fragment);
    return this.#takeOn(opened.ok ? opened.value.name : text.app.designs.link, opened);
  }

  /** Index of the blade in view. */
  get blade(): number {
    return Math.min(this.view.blade, (this.bench?.design.blades.length ?? 1) - 1);
  }

  /** Reads a blade outline from a DXF or SVG file, for the blade in view. */
  async readOutline(name: string, bytes: Uint8Array): Promise<void> {
    const blade = this.bench?.design.blades[this.blade];
    if (blade === undefined) return;
    this.view.step = 'blade';
    await this.importing.read(name, bytes, blade);
  }

  /** Gives the blade in view another outline, from the file that is being looked at. */
  takeOutline(outlined: Blade): void {
    const { bench, importing, examples } = this;
    bench?.replace(withOutline(bench.design, this.blade, outlined, importing.name, examples));
  }

  /**
   * Opens a file that was dropped or picked: a design, a grinder for the design in hand, or a
   * drawing that carries no design and so is the outline of a blade.
   */
  async openFile(file: File): Promise<void> {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const { numbers } = this.outside.engines;
    const grinder = await numbers.openGrinder(bytes);
    if (grinder.ok && this.bench !== null) {
      this.view.step = 'grinder';
      void this.adapting.ask(this.bench.design, { grinder: grinder.value });
    } else if (/\.(?:dxf|svg)$/i.test(file.name) && !(await numbers.open(bytes)).ok) {
      await this.readOutline(file.name, bytes);
    } else await this.open(file.name, bytes);
  }

  /** A kept design to look at, without putting it on the bench. */
  async #readKept(id: string): Promise<Design | null> {
    const entry = await this.shelf.read(id);
    const opened = entry && (await this.outside.engines.numbers.restore(bytesOf(entry.text)));
    if (opened?.ok) return opened.value;
    if (opened) this.refuse(entry.name, opened.issues);
    return null;
  }

  /** Asks what the design on the bench needs to grind the blades of a worked example. */
  async askExampleBlades(index: number): Promise<void> {
    const blades = await this.readExample(index);
    if (blades && this.bench) void this.adapting.ask(this.bench.design, { blades });
  }

  /** The same of a kept design. */
  async askKeptBlades(id: string): Promise<void> {
    const blades = await this.#readKept(id);
    if (blades && this.bench) void this.adapting.ask(this.bench.design, { blades });
  }

  /** Asks what the design on the bench states otherwise than a kept one. */
  async compareKept(id: string): Promise<void> {
    const other = await this.#readKept(id);
    if (other === null || this.bench === null) return;
    this.view.step = 'designs';
    void this.comparing.ask(this.bench.design, other);
  }

  /** Puts a kept design on the bench, by its entry. */
  async take(id: string): Promise<void> {
    await this.shelf.flush();
    const entry = await this.shelf.read(id);
    if (entry && (await this.takeKept(entry)))
      this.notices.say('good', text.app.designs.opened(entry.name));
  }

  /** Goes on with a copy under an entry of its own; the original stays as it is. */
  async copy(): Promise<void> {
    if (this.bench === null) return;
    await this.#keepAll();
    const { design } = this.bench;
    this.shelf.hold(design, null);
    this.unmeasured.moveTo(this.shelf.held.id);
    this.bench.set('name', text.app.designs.copyName(design.name));
    this.remember();
  }

  private refuse(name: string, issues: readonly Issue[]): false {
    this.notices.refuse(text.app.designs.refused(name), issues);
    return false;
  }

  /** Keeps all of the design on the board, what was typed a moment ago too. */
  async #keepAll(): Promise<void> {
    if (this.bench) this.shelf.changed(this.bench.design);
    await this.shelf.empty();
  }

  /** Puts a design on the board; what was typed on the one before while this came is kept first. */
  private async put(design: Design, held: Held | null): Promise<void> {
    await this.#keepAll();
    this.show(design, held);
  }

  /** Shows a design, going on with the entry it came from or with one of its own. */
  private show(design: Design, held: Held | null): void {
    if (this.bench === null) this.bench = new Bench(design);
    else this.bench.take(design);
    this.view.blade = 0;
    this.view.setting = null;
    this.shelf.hold(design, held);
    this.unmeasured.turnTo(this.shelf.held.id);
    this.calibrating.drop();
    this.importing.drop();
  }

  /** Notes which entry this tab works on. */
  remember(): void {
    this.outside.session.set('last', this.shelf.held.id);
    this.outside.preferences.set('last', this.shelf.held.id);
  }

  /** Another tab wrote an entry: follow it when nothing of ours is unwritten. */
  async heard(id: string): Promise<void> {
    await this.shelf.refresh();
    const { held } = this.shelf;
    const before = this.bench?.design;
    const entry = id === held.id ? await this.shelf.read(id) : undefined;
    if (entry === undefined || entry.revision <= held.revision) return;
    const opened = await this.outside.engines.numbers.restore(bytesOf(entry.text));
    // What was changed here in the meantime stays, and goes into an entry of its own.
    if (!this.shelf.clean || this.shelf.held !== held || this.bench?.design !== before) return;
    if (opened.ok) this.show(opened.value, { id, revision: entry.revision });
    else this.refuse(entry.name, opened.issues);
  }

  /** Takes what the checker tells on its way, for as long as its design is on the bench. */
  #told(design: Design, progress: (share: number) => void) {
    return (preview: Preview): void => {
      if (this.bench?.design !== design) return;
      progress(preview.share);
      this.finding.tell(design, preview);
    };
  }

  /** Every issue known of the design as it stands. */
  get issues(): readonly Issue[] {
    if (this.bench === null) return [];
    const solved = this.solving.about(this.bench.design)?.result?.issues ?? [];
    return [...this.unmeasured.issues, ...solved];
  }

  issuesAt(path: Path): readonly Issue[] {
    return this.issues.filter((issue) => issue.path === path);
  }

  issuesOn(step: StepId): readonly Issue[] {
    return this.issues.filter((issue) => stepOf(issue.path) === step);
  }

  get signs() {
    return signsOf(this);
  }
}

export const [useShop, provideShop] = createContext<Shop>();

/** The bench; panels are drawn only when there is one. */
export const useBench = (): Bench => {
  const { bench } = useShop();
  if (bench === null) throw new Error('a panel was drawn before there was a design');
  return bench;
};
