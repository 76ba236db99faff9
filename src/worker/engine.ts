import { cards } from '../../jigs/cards.ts';
import { chain, ok, type Result } from '../core/result.ts';
import { parseJson } from '../document/json.ts';
import { checkDesign, MAX_DESIGN_BYTES, openDesign, openGrinder } from '../document/open.ts';
import { saveDesign, saveGrinder } from '../document/save.ts';
import { documentSchema, type Design } from '../document/schema.ts';
import { aidsLast } from '../family/family.ts';
import type { Fixture } from '../family/index.ts';
import type { PackageOptions } from '../make/package.ts';
import { checkFields } from '../schema/check.ts';
import type { Engine, Packed } from './protocol.ts';
import type { Solver } from './solver.ts';

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

/** Every family at once, for work that compares them or goes on to another. */
const wholeRegistry = async () => (await import('../../jigs/registry.ts')).registry;

/** A design whose fields are in range, though they may contradict each other. */
const restore = (bytes: Uint8Array): Result<Design> => {
  const opened = openDesign(bytes, cards);
  if (opened.ok) return opened;
  const fields = chain(parseJson(bytes, MAX_DESIGN_BYTES), (data) =>
    checkFields(documentSchema, data),
  );
  return fields.ok ? ok(fields.value) : opened;
};

/**
 * Drawings and files with the PDF writer, which is fetched only when it is asked for; what was
 * solved and checked before is not done again.
 */
const pack = async (
  design: Design,
  fixture: Fixture,
  options: PackageOptions,
): Promise<Result<Packed>> => {
  const { packageOf } = await import('../make/package.ts');
  const { zipPackage } = await import('../export/package.ts');
  const { family } = design.fixture;
  const made = await packageOf(design, fixture, cards.families[family]?.label ?? family, options);
  return chain(made, (files) => ok({ files, archive: zipPackage(files) }));
};

/**
 * The one engine behind the page; the command line calls the same functions. A page that opens
 * needs its design alone: the way to solve it is fetched with the first question about it, and
 * longer work when it is asked for.
 */
export const createEngine = ({ examples, fonts }: EngineOptions): Engine => {
  let started: Promise<Solver> | undefined;
  const solver = (): Promise<Solver> =>
    (started ??= import('./solver.ts').then(
      ({ createSolver }) => createSolver(),
      (error: unknown) => {
        started = undefined;
        throw error;
      },
    ));
  const fixture = async (design: Design) => (await solver()).fixture(design);
  return {
    families: async () => {
      // Whoever asks for the families will ask for numbers next.
      void solver().catch(() => undefined);
      // A way to fetch cannot be sent to the page.
      return Object.values(cards.families)
        .sort(aidsLast)
        .map(({ id, label, meaning, emblem, parameters }) => ({
          id,
          label,
          meaning,
          emblem,
          parameters,
        }));
    },
    examples: async () => examples.map(({ name }) => name),
    example: async (index) => (await examples[index]?.bytes()) ?? new Uint8Array(),
    open: async (bytes) => (await import('../adapt/open-any.ts')).openAny(bytes, cards),
    openLink: async (fragment) => (await import('../document/link.ts')).openLink(fragment, cards),
    link: async (design) => (await import('../document/link.ts')).linkFragment(design),
    openGrinder: async (bytes) => openGrinder(bytes),
    restore: async (bytes) => restore(bytes),
    text: async (design) => saveDesign(design),
    grinderText: async (grinder) => saveGrinder(grinder),
    solve: async (design) => (await solver()).solve(design),
    build: async (design, preview, proved) => (await solver()).build(design, preview, proved),
    scene: async (design) => {
      const { sceneOf } = await import('./scene.ts');
      const { workshop } = await solver();
      return chain(await fixture(design), (solved) => sceneOf(design, solved, workshop));
    },
    budget: async (design) =>
      chain(await fixture(design), (solved) => solved.budget?.(SIMULATING) ?? ok(null)),
    grind: async (design, progress) => {
      const solved = await fixture(design);
      if (!solved.ok) return solved;
      return (await import('./ground.ts')).groundCards(design, solved.value, progress);
    },
    suit: async (design) => {
      const sound = checkDesign(design, cards);
      if (!sound.ok) return sound;
      const { suitDesign } = await import('../make/suit/suit.ts');
      return suitDesign(sound.value, await wholeRegistry());
    },
    reach: async (design) => {
      const { reachOf } = await import('../adapt/reach.ts');
      const registry = await wholeRegistry();
      return chain(checkDesign(design, cards), (sound) => reachOf(sound, registry));
    },
    range: async (design, path) => {
      const { numberRange } = await import('../make/free-range/numbers.ts');
      const registry = await wholeRegistry();
      return chain(checkDesign(design, cards), (sound) => numberRange(sound, path, registry));
    },
    adapt: async (design, target) => {
      const { adapt } = await import('../adapt/adapt.ts');
      const registry = await wholeRegistry();
      return chain(checkDesign(design, cards), (sound) => adapt(sound, target, registry));
    },
    compare: async (from, to) => {
      const { compare } = await import('../adapt/compare.ts');
      return ok(compare(from, to, await wholeRegistry()));
    },
    mendAll: async (design) => {
      const { mendAll } = await import('../adapt/mend-all.ts');
      return mendAll(design, await wholeRegistry());
    },
    openReadings: async (bytes) => (await import('../make/calibrate.ts')).openReadings(bytes),
    calibrate: async (design, readings) => {
      const { calibrateDesign, checkReadings } = await import('../make/calibrate.ts');
      const registry = await wholeRegistry();
      return chain(checkDesign(design, cards), (sound) =>
        chain(checkReadings(readings), (checked) => calibrateDesign(sound, checked, registry)),
      );
    },
    outline: async (bytes) => (await import('../outline/read.ts')).readOutline(bytes),
    trace: async (blade, contour, choice) =>
      (await import('../outline/trace.ts')).traceOutline(blade, contour, choice),
    pack: async (design, acceptFailing, progress) => {
      const sound = checkDesign(design, cards);
      if (!sound.ok) return sound;
      const solved = await fixture(design);
      if (!solved.ok) return solved;
      return pack(sound.value, solved.value, { acceptFailing, progress, fonts: await fonts() });
    },
  };
};
