import { proxy } from 'comlink';
import { createContext } from 'svelte';
import type { Blade } from '../../blade/schema.ts';
import type { Issue } from '../../core/issue.ts';
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
import { Designs } from './designs.svelte.ts';
import { Finding } from './finding.svelte.ts';
import { Importing } from './importing.svelte.ts';
import { Latest } from './latest.svelte.ts';
import { Mending } from './mending.svelte.ts';
import { Notices } from './notices.svelte.ts';
import type { Outside } from './outside.ts';
import { Pace } from './pace.ts';
import { Packing } from './packing.svelte.ts';
import type { Path } from '../../core/path.ts';
import { withOutline } from './outlined.ts';
import { Ranging } from './ranging.svelte.ts';
import { signsOf } from './signs.ts';
import { stepOf, type StepId } from './steps.ts';
import { View } from './view.svelte.ts';

/** Everything the panels share. */
export class Shop {
  readonly view: View;
  readonly notices = new Notices();
  readonly designs: Designs;
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
  families: readonly FamilyCard[] = $state.raw([]);
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
    this.designs = new Designs(outside, {
      notices: this.notices,
      unmeasured: this.unmeasured,
      turned: () => {
        this.view.blade = 0;
        this.view.setting = null;
        this.calibrating.drop();
        this.importing.drop();
      },
      compare: (id) => void this.compareKept(id),
    });
  }

  /** Opens a design to begin with; says where none could be opened. */
  async start(fragment: string): Promise<void> {
    try {
      this.families = await this.outside.engines.numbers.families();
      await this.designs.start(fragment);
      if (this.bench === null) this.failure ??= text.app.startFailed;
    } catch {
      this.failure = text.app.startFailed;
    }
  }

  /** The design that is worked on; none until the first has come. */
  get bench(): Bench | null {
    return this.designs.bench;
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
    const { bench, importing, designs } = this;
    bench?.replace(
      withOutline(bench.design, this.blade, outlined, importing.name, designs.examples),
    );
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
    } else await this.designs.open(file.name, bytes);
  }

  /** Asks what the design on the bench needs to grind the blades of a worked example. */
  async askExampleBlades(index: number): Promise<void> {
    const blades = await this.designs.readExample(index);
    if (blades && this.bench) void this.adapting.ask(this.bench.design, { blades });
  }

  /** The same of a kept design. */
  async askKeptBlades(id: string): Promise<void> {
    const blades = await this.designs.readKept(id);
    if (blades && this.bench) void this.adapting.ask(this.bench.design, { blades });
  }

  /** Asks what the design on the bench states otherwise than a kept one. */
  async compareKept(id: string): Promise<void> {
    const other = await this.designs.readKept(id);
    if (other === null || this.bench === null) return;
    this.view.step = 'designs';
    void this.comparing.ask(this.bench.design, other);
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
