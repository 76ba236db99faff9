import {
  all,
  chain,
  fabricationChecks,
  ok,
  simulatedBudget,
  text,
  WORLD,
  type CheckResult,
  type Gaps,
  type Design,
  virtualGrinding,
  type EdgeRestInput,
  type EdgeRestPlan,
  type Face,
  type Fixture,
  type Part,
  type Placement,
  type Result,
  type Solids,
  type Workshop,
} from '../../src/family/index.ts';
import { rigAssembly } from '../shared/checks/rig-assembly.ts';
import { checkedBy, solidChecks } from '../shared/checks/solids.ts';
import { stopSetUps } from '../shared/checks/stop.ts';
import { cutsOf } from '../shared/cuts.ts';
import { byKey, later } from '../shared/later.ts';
import { shiftsOf } from '../shared/needs-of.ts';
import type { Items } from '../shared/place/items.ts';
import { siteOf } from '../shared/section.ts';
import { placed, type Standing } from '../shared/place/place.ts';
import { budgetQuestion } from './budget.ts';
import { setUpsOf } from './checks/pairs.ts';
import { parameterPath, type Question } from './checks/question.ts';
import { rangeChecks } from './checks/ranges.ts';
import { unasked } from './checks/unasked.ts';
import { travelChecks } from './checks/travel.ts';
import type { EdgeContext } from './context.ts';
import { measuredOf } from './measured/index.ts';
import type { Values } from './parameters.ts';
import { partsOf } from './parts/index.ts';
import { padContact } from './place/hand.ts';
import { middleLip } from './place/items.ts';
import { bedOf, settledPoses } from './pose/poses.ts';
import { reachOf } from './reach.ts';
import { sectionOf } from './section.ts';
import { factsOf, knownOf, linesOf, settingsOf } from './settings.ts';
import { stepsOf } from './steps.ts';
import { tightOf } from './tight.ts';
import { withTight } from '../shared/tight.ts';

/** A design that has been solved and laid out. */
export interface Solved {
  readonly workshop: Workshop;
  readonly design: Design;
  readonly v: Values;
  readonly input: EdgeRestInput;
  readonly plan: EdgeRestPlan;
  readonly context: EdgeContext;
  readonly items: Items;
}

const words = text.family.edgeRest;

const AT_REST: Standing = { base: 0, step: 0, hand: 0, blade: WORLD };

/** Poses of every blade at every setting, found when first asked for. */
const posesBy = ({ workshop, design, input, plan, context }: Solved): Question['poses'] => {
  const bed = bedOf(context, design.grinder.belt.width);
  return workshop.keep('poses on an edge rest', JSON.stringify([input, bed]), () =>
    settledPoses(design.blades, plan.settings, bed, workshop.keep),
  );
};

/** Where everything stands at a setting; the first setting for a name that is none. */
const standingAt = (
  { design, plan, context }: Solved,
  poses: Question['poses'],
  id: string,
): Standing => {
  const setting = plan.settings.find((s) => s.id === id) ?? plan.settings[0];
  const first = design.blades[0];
  if (!setting || !first) return AT_REST;
  return {
    base: shiftsOf(context.stands).shifts[setting.step - 1] ?? 0,
    step: setting.lip - middleLip(context),
    hand: padContact(setting, plan.pushHeight),
    blade: poses(setting.id, first.name)[0]?.frame ?? WORLD,
  };
};

/** Faces of lip and seat that must lie on each other. */
const CONTACTS: readonly Face[] = [
  ['lip-strip', 'step'],
  ['lip-pad-1', 'step'],
  ['lip-pad-2', 'step'],
  ['lip-packing', 'step'],
  ['lip-packing-1', 'step'],
  ['lip-packing-2', 'step'],
  ['wear-strip', 'lip-packing'],
  ['wear-strip', 'lip-packing-1'],
  ['wear-strip', 'lip-packing-2'],
];

const { names, fix } = words.checks;

const STOP = {
  placement: 'wear-strip',
  name: names.seat,
  fix: fix.collar,
  parameter: parameterPath('stepWing'),
  tangLeft: 1,
} as const;

/** Everything the checks of solids look at. */
export const solidsOf = (q: Question): Result<Solids> =>
  chain(all([setUpsOf(q), stopSetUps(q, STOP)]), (setUps) =>
    ok({ setUps: setUps.flat(), assemblies: [rigAssembly(q, CONTACTS)], unasked }),
  );

/** All checks of a question, in the order a maker reads them. */
export const checksOf = (
  q: Question,
  solids: Solids,
  gaps: Gaps = 'all',
): Result<readonly CheckResult[]> =>
  chain(solidChecks(solids, q.workshop, gaps), (found) =>
    ok([
      ...rangeChecks(q),
      ...travelChecks(q),
      ...found,
      ...fabricationChecks(q.parts, q.design.making.prints.nozzle, q.workshop),
    ]),
  );

/** The fixture, and the question behind its checks for those who test the checks. */
export type EdgeRestFixture = Fixture & { readonly question: () => Result<Question> };

/** A solved design as the fixture it is. */
export const fixtureOf = (solved: Solved): EdgeRestFixture => {
  const { design, plan, context, items, workshop } = solved;
  const every = [...items.machine, ...items.blade];
  const poses = posesBy(solved);
  const parts = later(() =>
    chain(partsOf(context, every), (made) =>
      ok(workshop.asBefore(withTight(made, tightOf(design, context, plan)))),
    ),
  );
  const place = byKey((id: string): readonly Placement[] =>
    placed(every, standingAt(solved, poses, id)),
  );
  const asked = (made: readonly Part[]): Question => ({
    ...solved,
    parts: made,
    place,
    poses,
    onBlade: placed(items.blade, AT_REST),
  });
  const question = later(() => chain(parts(), (made) => ok(asked(made))));
  const { solids, checks } = checkedBy(question, solidsOf, checksOf);
  const steps = stepsOf(design, context, plan);
  return {
    settings: settingsOf(design, context, plan),
    known: knownOf(context, plan),
    budget: (simulating) =>
      chain(budgetQuestion(context, plan), (asked) => simulatedBudget(asked, simulating)),
    lines: linesOf(plan),
    facts: factsOf(context, plan),
    parts,
    place,
    poses,
    question,
    checks,
    derived: ['fromZero', 'tilt'],
    alongBlade: { collar: 'tang' },
    moves: { lip: ['step', 'seat', 'lip', 'push', 'pad', 'hand', 'stick', 'handOnStick'] },
    solids,
    measured: later(() => chain(question(), measuredOf)),
    cuts: cutsOf(context.v.guide),
    section: (id) => {
      const setting = plan.settings.find((s) => s.id === id) ?? plan.settings[0];
      if (!setting) return { title: '', lines: [], dimensions: [] };
      return sectionOf(
        context,
        plan,
        setting,
        siteOf(design.grinder, context.stands, setting.step),
      );
    },
    reach: reachOf({ design, plan, context }),
    virtual: virtualGrinding(solved.input.blades, (blade) => ({
      kind: 'edge-rest',
      blade,
      input: solved.input,
      plan,
    })),
    sheet: words.sheet,
    assembly: words.assembly(steps),
    supplies: words.supplies(steps),
    zeroing: words.zeroing(steps),
    cautions: words.cautions(steps),
  };
};
