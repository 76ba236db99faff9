import { cards } from '../../jigs/cards.ts';
import { chain, ok, type Result } from '../core/result.ts';
import { createStore } from '../core/store.ts';
import { checkDesign } from '../document/open.ts';
import type { Design } from '../document/schema.ts';
import type { Registry } from '../family/family.ts';
import { createWorkshop, type Fixture, type Workshop } from '../family/index.ts';
import { solveDesign, type Checked } from '../make/engine.ts';
import { builtOf, solvedOf } from './answers.ts';
import { checkByPieces, orderOf, type Preview } from './checking.ts';
import { practise } from './practice.ts';
import type { Built, Solved } from './protocol.ts';

/** Designs whose fixtures are kept: the one under edit and those a step back or forward. */
const KEPT = 4;
/** How long nothing is asked before a drag is practised, ms. */
const REST = 700;

/** Parts, checks, and what the ways of making the parts make badly. */
const withAdvice = (checked: Result<Checked>): Result<Built> =>
  chain(checked, (value) => ok(builtOf(value, checked.issues)));

/** Answers about one design after another, as a hand edits it. */
export interface Solver {
  readonly workshop: Workshop;
  readonly fixture: (design: Design) => Promise<Result<Fixture>>;
  readonly solve: (design: Design) => Promise<Result<Solved>>;
  /** The newest design only: null where another came before this one was answered. */
  readonly build: (
    design: Design,
    preview: (found: Preview) => void,
    proved: (built: Built) => void,
  ) => Promise<Result<Built> | null>;
}

/**
 * Everything wrong with a design under edit, then its solution if there is one. Numbers, parts,
 * checks and picture of one design are asked for one by one: its fixture is kept between them,
 * and what checks build of its parts between one design and the next. The family is fetched with
 * its first design.
 */
export const createSolver = (): Solver => {
  const workshop = createWorkshop();
  let asked = 0;
  const fixtures = createStore<Result<Fixture>>(KEPT);
  const registryFor = async ({ fixture: { family: id } }: Design): Promise<Registry> => {
    const family = await cards.families[id]?.fetch();
    return { families: family ? { [id]: family } : {} };
  };
  const fixture = async (design: Design): Promise<Result<Fixture>> => {
    const registry = await registryFor(design);
    return fixtures(JSON.stringify(design), () =>
      chain(checkDesign(design, cards), (sound) => solveDesign(sound, registry, workshop)),
    );
  };
  const practised = new Set<string>();
  /** What a family does is practised once, when nothing is asked for a while. */
  const restAfter = (design: Design, overtaken: () => boolean): void => {
    const { family } = design.fixture;
    const begin = async (): Promise<void> => {
      if (overtaken() || practised.has(family)) return;
      practised.add(family);
      const registry = await registryFor(design);
      await practise(design, (other, own) => solveDesign(other, registry, own), overtaken);
    };
    // What goes wrong here goes wrong where it is asked for, and is told there.
    setTimeout(() => void begin().catch(() => undefined), REST);
  };
  return {
    workshop,
    fixture,
    solve: async (design) => chain(await fixture(design), (solved) => ok(solvedOf(solved))),
    build: async (design, preview, proved) => {
      const turn = (asked += 1);
      const overtaken = () => turn !== asked;
      const solved = await fixture(design);
      if (overtaken()) return null;
      if (!solved.ok) return solved;
      const checked = await checkByPieces(solved.value, orderOf(design), workshop, {
        overtaken,
        preview,
        proved: (early) => {
          const built = withAdvice(early);
          if (built.ok) proved(built.value);
        },
      });
      if (checked) restAfter(design, overtaken);
      return checked && withAdvice(checked);
    },
  };
};
