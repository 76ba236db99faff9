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
  type Fixture,
  type Part,
  type Placement,
  type Result,
  virtualGrinding,
  type SheetTerms,
  type Simulating,
  type StripFound,
  type StripKit,
  type VirtualOrder,
  type SpineRestInput,
  type Solids,
  type SpineRestPlan,
  type Workshop,
} from '../../src/family/index.ts';
import { budgetQuestion } from './budget.ts';
import { rigAssembly } from '../shared/checks/rig-assembly.ts';
import { checkedBy, solidChecks } from '../shared/checks/solids.ts';
import { setUpsOf } from './checks/pairs.ts';
import type { Question } from './checks/question.ts';
import { rangeChecks } from './checks/ranges.ts';
import { unasked } from './checks/unasked.ts';
import { stopSetUps } from '../shared/checks/stop.ts';
import { travelChecks } from './checks/travel.ts';
import { cutsOf } from '../shared/cuts.ts';
import { byKey, later } from '../shared/later.ts';
import { measuredOf } from './measured/index.ts';
import { shiftsOf } from '../shared/needs-of.ts';
import type { Values } from './parameters.ts';
import type { Context } from '../shared/parts/context.ts';
import { partsOf } from './parts/index.ts';
import { padContact } from './place/hand.ts';
import type { Items } from '../shared/place/items.ts';
import { siteOf } from '../shared/section.ts';
import { placed, type Standing } from '../shared/place/place.ts';
import { bedOf, settledPoses } from './pose/poses.ts';
import { reachOf } from './reach.ts';
import { sectionOf } from './section.ts';
import { factsOf, knownOf, linesOf, settingsOf } from './settings.ts';
import type { Stand } from '../shared/site.ts';
import {
  onRoundedStep,
  placedOnBlade,
  stripFrom,
  stripItems,
  type Carried,
} from './strip/carried.ts';
import { settingsWith, stripKit } from './strip/kit.ts';
import { measuredWithStrip } from './strip/measured.ts';
import { stripParts } from './strip/parts.ts';
import { straightBody, stripWish } from './strip/wish.ts';
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
  /** The strip on the blade, where the step is rounded for one. */
  readonly strip?: Carried;
}

const words = text.family.spineRest;

/** Poses of every blade at every setting, found when first asked for. */
const posesBy = ({ workshop, design, input, plan, context, strip }: Solved): Question['poses'] => {
  if (strip)
    return (setting, name) => (name === strip.blade.name ? strip.found.poses(setting) : []);
  const bed = bedOf(context, design.grinder.belt.width);
  return workshop.keep('poses on a spine rest', JSON.stringify([input, bed]), () =>
    settledPoses(design.blades, plan.settings, bed, workshop.keep),
  );
};

/** Where everything stands at a setting; the first setting for a name that is none. */
const standingAt = (
  { design, plan, context, stands, strip }: Solved,
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
    hand: padContact(plan, setting, v.plate + l.push.pad, strip && stripFrom(strip)),
    blade: poses(setting.id, first.name)[0]?.frame ?? WORLD,
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
  onBlade: placedOnBlade(solved.items.blade),
});

/** Everything the checks of solids look at. */
export const solidsOf = (q: Question): Result<Solids> =>
  chain(all([setUpsOf(q), stopSetUps(q)]), (setUps) =>
    ok({ setUps: setUps.flat(), assemblies: [rigAssembly(q)], unasked }),
  );

/** All checks of a question, in the order a maker reads them. */
export const checksOf = (
  q: Question,
  solids: Solids,
  gaps: Gaps = 'all',
): Result<readonly CheckResult[]> => {
  const numbers = [...rangeChecks(q), ...travelChecks(q)];
  const making = fabricationChecks(q.parts, q.design.making.prints.nozzle, q.workshop);
  return chain(solidChecks(solids, q.workshop, gaps), (found) =>
    ok([...numbers, ...found, ...making]),
  );
};

/** Everything where it stands at a setting; with a strip the rounded step, and the strip there. */
const placesAt = (solved: Solved, poses: Question['poses'], id: string): readonly Placement[] => {
  const { items, plan, strip } = solved;
  const standing = standingAt(solved, poses, id);
  const all = [...items.machine, ...items.blade];
  if (strip === undefined) return placed(all, standing);
  const setting = plan.settings.find((s) => s.id === id) ?? plan.settings[0];
  const carried = setting ? stripItems(strip.found, setting.side) : [];
  return placed([...all, ...carried], standing).map(onRoundedStep);
};

/** What is asked of the virtual grind of one blade. */
const orderOf = (
  solved: Solved,
  question: () => Result<Question>,
  checks: Fixture['checks'],
  blade: Design['blades'][number],
): VirtualOrder => {
  const { design, v, input, plan, items, strip } = solved;
  const wish = stripWish(design, v, blade);
  const all = [...items.machine, ...items.blade];
  const exchanged = (found: StripFound): Result<StripKit> =>
    chain(question(), (q) =>
      stripKit(
        q,
        input,
        blade,
        found,
        wish,
        (other, stood) => (id) => placed(all, standingAt({ ...solved, plan: other }, stood, id)),
      ),
    );
  const own = (carried: Carried): Result<StripKit> =>
    chain(question(), ({ context }) =>
      chain(checks(), (found) =>
        chain(stripParts(context, carried), (parts) =>
          ok({ parts, settings: settingsWith(plan), checks: found }),
        ),
      ),
    );
  return {
    kind: 'spine-rest',
    blade,
    input,
    plan,
    body: straightBody(design, v),
    wish,
    kit: strip ? () => own(strip) : exchanged,
    ...(strip ? { carried: strip } : {}),
  };
};

/** The set-up sheet for a rounded step: nothing there is parallel, and the strip is measured. */
const stripSheet: SheetTerms = {
  ...words.sheet,
  measure: words.sheet.measure.map((line, i) => (i === 1 ? words.strip.measure : line)),
};

/** The fixture, and the question behind its checks for those who test the checks. */
export type SpineRestFixture = Fixture & { readonly question: () => Result<Question> };

/** A solved design as the fixture it is. */
export const fixtureOf = (solved: Solved): SpineRestFixture => {
  const { design, v, plan, context, stands, strip, workshop } = solved;
  const items = [...solved.items.machine, ...solved.items.blade];
  const poses = posesBy(solved);
  const tightAs = strip?.straight ?? plan;
  const parts = later(() =>
    chain(partsOf(context, items, strip), (made) =>
      ok(workshop.asBefore(withTight(made, tightOf(design, v, context, tightAs)))),
    ),
  );
  const place = byKey((id: string): readonly Placement[] => placesAt(solved, poses, id));
  const question = later(() =>
    chain(parts(), (made) => ok(questionOf(solved, made, place, poses))),
  );
  const { solids, checks } = checkedBy(question, solidsOf, checksOf);
  const steps = stepsOf(design, context, plan, strip);
  // What a test piece, a tolerance or another blade does is known of a straight step alone.
  const straight = {
    known: knownOf(v, plan),
    budget: (simulating: Simulating) =>
      chain(budgetQuestion(design, v, context.l, plan), (asked) =>
        simulatedBudget(asked, simulating),
      ),
    reach: reachOf({ design, v, plan, context, stands }),
  };
  return {
    settings: settingsOf(design, v, context.l, plan, strip),
    lines: linesOf(plan),
    facts: factsOf(context.l, plan, strip),
    parts,
    place,
    poses,
    question,
    checks,
    derived: ['fromZero', 'edgeSide'],
    alongBlade: { collar: 'tang', stripFrom: 'tip', stripTo: 'tip' },
    moves: { setoff: ['step', 'push', 'pad', 'hand', 'stick', 'handOnStick'] },
    solids,
    measured: later(() =>
      chain(question(), (q) => (strip ? measuredWithStrip(q, strip) : measuredOf(q))),
    ),
    cuts: cutsOf(v.guide),
    section: (id) => {
      const setting = plan.settings.find((s) => s.id === id) ?? plan.settings[0];
      if (!setting) return { title: '', lines: [], dimensions: [] };
      return sectionOf(context, plan, setting, siteOf(design.grinder, stands, setting.step), strip);
    },
    virtual: virtualGrinding(design.blades, (blade) => orderOf(solved, question, checks, blade)),
    ...(strip ? { reachless: words.strip.reachless } : straight),
    sheet: strip ? stripSheet : words.sheet,
    assembly: words.assembly(steps),
    supplies: words.supplies(steps),
    zeroing: words.zeroing(steps),
    cautions: words.cautions(steps, v.leastEdge, design.grinder.belt.direction === 'down'),
  };
};
