import { registry } from '../../jigs/registry.ts';
import { openAny } from '../adapt/open-any.ts';
import { createStore } from '../core/store.ts';
import { createWorkshop, type Fixture } from '../family/index.ts';
import { chain, ok, type Result } from '../core/result.ts';
import { parseJson } from '../document/json.ts';
import { linkFragment, openLink } from '../document/link.ts';
import { checkDesign, MAX_DESIGN_BYTES, openDesign, openGrinder } from '../document/open.ts';
import { saveDesign, saveGrinder } from '../document/save.ts';
import { documentSchema, type Design } from '../document/schema.ts';
import { checkFields } from '../schema/check.ts';
import { checkFixture, solveDesign, type Checked } from '../make/engine.ts';
import { builtOf, solvedOf } from './answers.ts';
import type { Built, Engine, FamilyCard, Packed } from './protocol.ts';

/** Typefaces of the PDFs as TrueType bytes. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** What the engine is given by the worker around it. */
export interface EngineOptions {
  readonly examples: readonly {
    readonly name: string;
    readonly bytes: () => Promise<Uint8Array>;
  }[];
  readonly fonts: () => Promise<Fonts>;
}

/** As the command line draws it up when it is told nothing else. */
const SIMULATING = { draws: 4000, seed: 1 };

/** Designs whose fixtures are kept: the one under edit and those a step back or forward. */
const KEPT = 4;

/**
 * Everything wrong with a design under edit, then its solution if there is one. Numbers, parts,
 * checks and picture of one design are asked for one by one: its fixture is kept between them,
 * and what checks build of its parts between one design and the next.
 */
const createSolver = (): ((design: Design) => Result<Fixture>) => {
  const workshop = createWorkshop();
  const fixtures = createStore<Result<Fixture>>(KEPT);
  return (design) =>
    fixtures(JSON.stringify(design), () =>
      chain(checkDesign(design, registry), (sound) => solveDesign(sound, registry, workshop)),
    );
};

const families = (): FamilyCard[] =>
  Object.values(registry.families).map(({ id, label, meaning, parameters }) => ({
    id,
    label,
    meaning,
    parameters,
  }));

/** A design whose fields are in range, though they may contradict each other. */
const restore = (bytes: Uint8Array): Result<Design> => {
  const opened = openDesign(bytes, registry);
  if (opened.ok) return opened;
  const fields = chain(parseJson(bytes, MAX_DESIGN_BYTES), (data) =>
    checkFields(documentSchema, data),
  );
  return fields.ok ? ok(fields.value) : opened;
};

/** Parts, checks, and what the ways of making the parts make badly. */
const withAdvice = (checked: Result<Checked>): Result<Built> =>
  chain(checked, (value) => ok(builtOf(value, checked.issues)));

/** Solids and drawings with the PDF writer, which is fetched only when it is asked for. */
const pack = async (
  design: Design,
  acceptFailing: boolean,
  progress: (share: number) => void,
  fonts: Fonts,
): Promise<Result<Packed>> => {
  const sound = checkDesign(design, registry);
  if (!sound.ok) return sound;
  const { makePackage } = await import('../make/package.ts');
  const { zipPackage } = await import('../export/package.ts');
  const made = await makePackage(sound.value, { registry, fonts, acceptFailing, progress });
  return chain(made, (files) => ok({ files, archive: zipPackage(files) }));
};

/** The one engine behind the page, its longer work fetched when it is asked for; the command line calls the same functions. */
export const createEngine = ({ examples, fonts }: EngineOptions): Engine => {
  const solve = createSolver();
  return {
    families: async () => families(),
    examples: async () => examples.map(({ name }) => name),
    example: async (index) => (await examples[index]?.bytes()) ?? new Uint8Array(),
    open: async (bytes) => openAny(bytes, registry),
    openLink: async (fragment) => openLink(fragment, registry),
    link: async (design) => linkFragment(design),
    openGrinder: async (bytes) => openGrinder(bytes),
    restore: async (bytes) => restore(bytes),
    text: async (design) => saveDesign(design),
    grinderText: async (grinder) => saveGrinder(grinder),
    solve: async (design) => chain(solve(design), (fixture) => ok(solvedOf(fixture))),
    build: async (design) =>
      chain(solve(design), (fixture) => withAdvice(checkFixture(fixture, design.making))),
    scene: async (design) => {
      const { sceneOf } = await import('./scene.ts');
      return chain(solve(design), (fixture) => sceneOf(design, fixture));
    },
    budget: async (design) =>
      chain(solve(design), (fixture) => fixture.budget?.(SIMULATING) ?? ok(null)),
    grind: async (design) => {
      const solved = solve(design);
      if (!solved.ok) return solved;
      return (await import('./ground.ts')).groundCards(design, solved.value);
    },
    suit: async (design) => {
      const sound = checkDesign(design, registry);
      if (!sound.ok) return sound;
      return (await import('../make/suit/suit.ts')).suitBlade(sound.value, registry);
    },
    reach: async (design) => {
      const { reachOf } = await import('../adapt/reach.ts');
      return chain(checkDesign(design, registry), (sound) => reachOf(sound, registry));
    },
    adapt: async (design, grinder) => {
      const { adapt } = await import('../adapt/adapt.ts');
      return chain(checkDesign(design, registry), (sound) => adapt(sound, { grinder }, registry));
    },
    openReadings: async (bytes) => (await import('../make/calibrate.ts')).openReadings(bytes),
    calibrate: async (design, readings) => {
      const { calibrateDesign, checkReadings } = await import('../make/calibrate.ts');
      return chain(checkDesign(design, registry), (sound) =>
        chain(checkReadings(readings), (checked) => calibrateDesign(sound, checked, registry)),
      );
    },
    outline: async (bytes) => (await import('../outline/read.ts')).readOutline(bytes),
    trace: async (blade, contour, choice) =>
      (await import('../outline/trace.ts')).traceOutline(blade, contour, choice),
    pack: async (design, acceptFailing, progress) =>
      pack(design, acceptFailing, progress, await fonts()),
  };
};
