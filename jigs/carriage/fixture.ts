import {
  chain,
  virtualGrinding,
  fabricationChecks,
  ok,
  simulatedBudget,
  text,
  type CheckResult,
  type Gaps,
  type Fixture,
  type Result,
  type Solids,
  type Workshop,
} from '../../src/family/index.ts';
import { later } from '../shared/later.ts';
import { budgetQuestion } from './budget.ts';
import { checkedBy, solidChecks } from '../shared/checks/solids.ts';
import { assembliesOf } from './checks/inside.ts';
import { setUpsOf } from './checks/pairs.ts';
import type { Question } from './checks/question.ts';
import { rangeChecks } from './checks/ranges.ts';
import { unasked } from './checks/unasked.ts';
import { partChecks } from './checks/finished.ts';
import type { Context } from './context.ts';
import { measuredOf } from './measured.ts';
import { partsOf } from './parts/index.ts';
import { itemsOf } from './place/items.ts';
import { carriageFrame, placed } from './place/stand.ts';
import { posesOf } from './poses.ts';
import { reachOf } from './reach.ts';
import { sectionOf } from './section.ts';
import { factsOf, knownOf, linesOf, settingsOf } from './settings.ts';
import { stepsOf } from './steps.ts';
import { tightOf } from './tight.ts';
import { withTight } from '../shared/tight.ts';

const words = text.family.carriage;

/** Height of the push block's middle over the base with the carriage most tilted, mm. */
const pushHeightOf = ({ l, plan }: Context): number => {
  const most = [...plan.settings].sort((a, b) => b.tilt - a.tilt)[0];
  const frame = carriageFrame(most?.tilt ?? 0, 0, 0);
  const z = (l.palm.bottom + l.soleBottom) / 2;
  return frame.origin[2] + l.palm.back * frame.y[2] + z * frame.z[2];
};

/** Everything the checks of solids look at. */
export const solidsOf = (q: Question): Result<Solids> =>
  chain(setUpsOf(q), (setUps) => ok({ setUps, assemblies: assembliesOf(q), unasked }));

/** All checks of a question, in the order a maker reads them. */
export const checksOf = (
  q: Question,
  solids: Solids,
  gaps: Gaps = 'all',
): Result<readonly CheckResult[]> =>
  chain(solidChecks(solids, q.workshop, gaps), (found) =>
    ok([
      ...rangeChecks(q),
      ...partChecks(q),
      ...found,
      ...fabricationChecks(q.parts, q.c.making.prints.nozzle, q.workshop),
    ]),
  );

/** The fixture, and the question behind its checks for those who test the checks. */
export type CarriageFixture = Fixture & { readonly question: () => Result<Question> };

/** A design that has been solved and laid out, as the fixture it is. */
export const fixtureOf = (c: Context, workshop: Workshop): Result<CarriageFixture> =>
  chain(itemsOf(c), (items) => {
    const { plan, design, v } = c;
    const settingOf = (id: string) => plan.settings.find((s) => s.id === id) ?? plan.settings[0];
    const pushHeight = pushHeightOf(c);
    const steps = stepsOf(c, pushHeight);
    const parts = later(() =>
      chain(partsOf(c, items), (made) => ok(workshop.asBefore(withTight(made, tightOf(c))))),
    );
    const question = later(() =>
      chain(parts(), (made) => ok({ c, workshop, parts: made, items, pushHeight })),
    );
    const { solids, checks } = checkedBy(question, solidsOf, checksOf);
    return ok({
      settings: settingsOf(c),
      lines: linesOf(plan),
      facts: factsOf(c, pushHeight),
      known: knownOf(c),
      budget: (simulating) =>
        chain(budgetQuestion(c), (asked) => simulatedBudget(asked, simulating)),
      parts,
      place: (id) => {
        const setting = settingOf(id);
        return setting ? placed(c, items, setting) : [];
      },
      poses: (id, name) => {
        const [setting, blade] = [settingOf(id), design.blades.find((b) => b.name === name)];
        return setting && blade ? posesOf(c, setting, blade) : [];
      },
      question,
      checks,
      derived: ['fenceFromFront', 'tilt', 'edgeSide'],
      alongBlade: { jaw: 'tang' },
      moves: {
        fence: ['fence', 'carriage', 'foot', 'heel', 'jaw', 'hand', 'blade', 'tang'],
      },
      solids,
      measured: later(() => chain(parts(), (made) => measuredOf(c, made, items))),
      cuts: [{ through: 'heel-screw', across: 'x' }],
      section: (id) => {
        const setting = settingOf(id);
        return setting ? sectionOf(c, setting) : { title: '', lines: [], dimensions: [] };
      },
      reach: reachOf(c),
      virtual: virtualGrinding(c.input.blades, (blade) => ({
        kind: 'carriage',
        blade,
        input: c.input,
        plan,
      })),
      sheet: words.sheet,
      assembly: words.assembly(steps),
      supplies: words.supplies(steps),
      zeroing: words.zeroing(steps),
      cautions: words.cautions(steps, v.leastEdge, design.grinder.belt.direction === 'down'),
    });
  });
