import {
  all,
  chain,
  fabricationChecks,
  ok,
  simulatedBudget,
  text,
  WORLD,
  type BladePose,
  type CheckResult,
  type Design,
  type Fixture,
  type Part,
  type Placement,
  type Result,
  virtualGrinding,
  type StripWish,
  type SpineRestBody,
  type SpineRestInput,
  type Solids,
  type SpineRestPlan,
  type Workshop,
} from '../../src/family/index.ts';
import { budgetQuestion } from './budget.ts';
import { rigAssembly } from '../shared/checks/inside.ts';
import { solidChecks } from '../shared/checks/solids.ts';
import { setUpsOf } from './checks/pairs.ts';
import type { Question } from './checks/question.ts';
import { rangeChecks } from './checks/ranges.ts';
import { unasked } from './checks/unasked.ts';
import { stopSetUps } from '../shared/checks/stop.ts';
import { travelChecks } from './checks/travel.ts';
import { cutsOf } from '../shared/cuts.ts';
import { byName, later } from '../shared/later.ts';
import { measuredOf } from './measured/index.ts';
import { shiftsOf } from '../shared/needs-of.ts';
import type { Values } from './parameters.ts';
import type { Context } from '../shared/parts/context.ts';
import { partsOf } from './parts/index.ts';
import { padContact } from './place/hand.ts';
import type { Items } from '../shared/place/items.ts';
import { placed, type Standing } from '../shared/place/place.ts';
import { posesOf, spinesOf } from './pose/poses.ts';
import { printed } from '../shared/parts/context.ts';
import { reachOf } from './reach.ts';
import { sectionOf } from './section.ts';
import { factsOf, knownOf, linesOf, settingsOf } from './settings.ts';
import type { Stand } from '../shared/site.ts';
import { stripKit } from './strip/kit.ts';
import { stepsOf } from './steps.ts';
import { tightOf } from './tight.ts';
import { withTight } from '../shared/tight.ts';

/** A design that has been solved and laid out. */
export interface Solved {
  readonly workshop: Workshop;
  readonly design: Design;
  readonly v: Values;
  readonly input: SpineRestInput;
  readonly plan: SpineRestPlan;
  /** One a pass of the sequence. */
  readonly stands: readonly Stand[];
  readonly context: Context;
  readonly items: Items;
}

const words = text.family.spineRest;

/** Poses of every blade at every setting, found when first asked for. */
const posesBy = ({ design, plan, context }: Solved) => {
  const spines = later(() => spinesOf(design.blades, context));
  const { width } = design.grinder.belt;
  const of = byName((setting) =>
    byName((name): readonly BladePose[] => {
      const blade = design.blades.find((b) => b.name === name);
      const at = plan.settings.find(({ id }) => id === setting);
      const spine = spines().get(name);
      return blade && at && spine ? posesOf(blade, spine, at, context, width) : [];
    }),
  );
  return (setting: string, name: string): readonly BladePose[] => of(setting)(name);
};

/** Where everything stands at a setting; the first setting for a name that is none. */
const standingAt = (
  { design, plan, context, stands }: Solved,
  poses: Question['poses'],
  id: string,
): Standing => {
  const setting = plan.settings.find((s) => s.id === id) ?? plan.settings[0];
  const first = design.blades[0];
  if (!setting || !first) return { base: 0, step: 0, hand: 0, blade: WORLD };
  const { l, v } = context;
  return {
    base: shiftsOf(stands).shifts[setting.step - 1] ?? 0,
    step: setting.setoff - l.slide.front,
    hand: padContact(plan, setting, v.plate + l.push.pad),
    blade: poses(setting.id, first.name)[0]?.frame ?? WORLD,
  };
};

/** Nose and step as a blade meets them. */
const bodyOf = ({ design, v }: Solved): SpineRestBody => {
  const half = design.grinder.belt.width / 2;
  return {
    noseHalf: half + v.wing,
    noseFront: v.noseGap,
    step: { kind: 'wide', half: half + v.stepWing, yaw: 0 },
    stepTop: v.plate,
  };
};

/** Strip for a wandering line, mm: common practice, no source. The step for it is rounded. */
const STRIP = { height: 6, stepRadius: 8, tape: 0.2 } as const;
/** Lines of the nozzle in a printed wall, and what is kept beyond them, mm: as prints are checked. */
const WALL = { lines: 3, spare: 0.1 } as const;

/** What is asked of a strip: the blade's own wish for its line, the rest's own bearing. */
const stripWish = ({ v, context }: Solved, { line }: Design['blades'][number]): StripWish => {
  const { name, density } = printed(context);
  return {
    ...STRIP,
    least: WALL.lines * context.making.prints.nozzle + WALL.spare,
    allowed: line.allowed,
    centred: true,
    bearing: v.leastBearing,
    make: { kind: 'print', material: name, density },
  };
};

/** The questions of all checks, from the finished parts. */
const questionOf = (
  solved: Solved,
  parts: readonly Part[],
  place: Question['place'],
  poses: Question['poses'],
): Question => ({
  ...solved,
  parts,
  place,
  poses,
  onBlade: placed(solved.items.blade, {
    base: 0,
    step: 0,
    hand: 0,
    blade: WORLD,
  }),
});

/** Everything the checks of solids look at. */
export const solidsOf = (q: Question): Result<Solids> =>
  chain(all([setUpsOf(q), stopSetUps(q)]), (setUps) =>
    ok({ setUps: setUps.flat(), assemblies: [rigAssembly(q)], unasked }),
  );

/** All checks of a question, in the order a maker reads them. */
export const checksOf = (q: Question): Result<readonly CheckResult[]> => {
  const numbers = [...rangeChecks(q), ...travelChecks(q)];
  const making = fabricationChecks(q.parts, q.design.making.prints.nozzle);
  return chain(solidsOf(q), (solids) =>
    chain(solidChecks(solids, q.workshop), (found) => ok([...numbers, ...found, ...making])),
  );
};

/** The fixture, and the question behind its checks for those who test the checks. */
export type SpineRestFixture = Fixture & { readonly question: () => Result<Question> };

/** A solved design as the fixture it is. */
export const fixtureOf = (solved: Solved): SpineRestFixture => {
  const { design, v, plan, context, stands } = solved;
  const items = [...solved.items.machine, ...solved.items.blade];
  const poses = posesBy(solved);
  const parts = later(() =>
    chain(partsOf(context, items), (made) =>
      ok(withTight(made, tightOf(design, v, context, plan))),
    ),
  );
  const place = byName((id): readonly Placement[] => placed(items, standingAt(solved, poses, id)));
  const question = later(() =>
    chain(parts(), (made) => ok(questionOf(solved, made, place, poses))),
  );
  const steps = stepsOf(design, context, plan);
  return {
    settings: settingsOf(design, v, context.l, plan),
    known: knownOf(v, plan),
    budget: (simulating) =>
      chain(budgetQuestion(design, v, context.l, plan), (asked) =>
        simulatedBudget(asked, simulating),
      ),
    lines: linesOf(plan),
    facts: factsOf(v, context.l, plan),
    parts,
    place,
    poses,
    question,
    checks: later(() => chain(question(), checksOf)),
    moves: { setoff: ['step', 'push', 'pad', 'hand'] },
    solids: () => chain(question(), solidsOf),
    measured: later(() => chain(question(), measuredOf)),
    cuts: cutsOf(v.guide),
    section: (id) => {
      const setting = plan.settings.find((s) => s.id === id) ?? plan.settings[0];
      if (!setting) return { title: '', lines: [], dimensions: [] };
      const shift = shiftsOf(stands).shifts[setting.step - 1] ?? 0;
      return sectionOf(context, plan, setting, shift);
    },
    virtual: virtualGrinding(design.blades, (blade) => ({
      kind: 'spine-rest',
      blade,
      input: solved.input,
      plan,
      body: bodyOf(solved),
      wish: stripWish(solved, blade),
      kit: (found) =>
        chain(question(), (q) =>
          stripKit(
            q,
            blade,
            found,
            stripWish(solved, blade),
            (other, stood) => (id) =>
              placed(items, standingAt({ ...solved, plan: other }, stood, id)),
          ),
        ),
    })),
    reach: reachOf({ design, v, plan, context, stands }),
    sheet: words.sheet,
    assembly: words.assembly(steps),
    zeroing: words.zeroing(steps),
    cautions: words.cautions(steps, v.leastEdge, design.grinder.belt.direction === 'down'),
  };
};
