import type { Question as SpineQuestion } from '../../../jigs/spine-rest/checks/question.ts';
import { rangeChecks as spineRanges } from '../../../jigs/spine-rest/checks/ranges.ts';
import { travelChecks as spineTravel } from '../../../jigs/spine-rest/checks/travel.ts';
import { solve as solveSpine } from '../../../jigs/spine-rest/solve.ts';
import { stripChecks } from '../../../jigs/spine-rest/strip/numbers.ts';
import type { CheckResult } from '../../../src/family/index.ts';
import { valueOf } from '../../family/examples.ts';
import { describeSabotage, type Sabotage } from './describe.ts';
import { designOf, linesBy, settingsBy, short } from './plan.ts';
import { onRig } from './rig.ts';

const wholeSpine = short(valueOf(valueOf(solveSpine(designOf('spine-rest', 'paring'))).question()));
const spineRest: SpineQuestion = {
  ...wholeSpine,
  design: { ...wholeSpine.design, blades: wholeSpine.design.blades.slice(0, 1) },
  plan: {
    ...wholeSpine.plan,
    lines: wholeSpine.plan.lines.filter(({ blade }) => blade === wholeSpine.design.blades[0]?.name),
  },
};

const spineChecks = (q: SpineQuestion): CheckResult[] => [...spineRanges(q), ...spineTravel(q)];

const onSpine: readonly Sabotage<SpineQuestion>[] = [
  {
    id: 'range/gap/limit',
    change: (q, by) => ({ ...q, v: { ...q.v, noseGap: q.v.noseGap + by } }),
    also: {
      ids: ['range/gap/spine', 'range/bearing'],
      why: 'a gap so wide is wider than a thin spine, and takes what the spine bears on',
    },
  },
  {
    id: 'range/gap/spine',
    change: (q, by) => ({
      ...q,
      design: {
        ...q.design,
        blades: q.design.blades.map((blade) => ({
          ...blade,
          thickness: blade.thickness.map(({ u, t }) => ({ u, t: t + by })),
        })),
      },
    }),
  },
  {
    id: 'range/gap/running',
    change: (q, by) => ({ ...q, v: { ...q.v, noseGap: q.v.noseGap + by } }),
  },
  {
    id: 'range/bearing',
    change: (q, by) => settingsBy(q, (s) => ({ ...s, cornerDistance: s.cornerDistance + by })),
  },
  {
    id: 'range/platen/gap',
    change: (q, by) => ({ ...q, v: { ...q.v, plate: q.v.plate - by } }),
    also: {
      ids: ['range/platen/low', 'range/guard'],
      why: 'the guard stands on the plate',
    },
  },
  {
    id: 'range/platen/low',
    change: (q, by) =>
      settingsBy(q, (s) => ({ ...s, contact: [s.contact[0] + by, s.contact[1]] as const })),
  },
  {
    id: 'range/platen/high',
    change: (q, by) =>
      settingsBy(q, (s) => ({ ...s, contact: [s.contact[0], s.contact[1] - by] as const })),
  },
  {
    id: 'range/step/top',
    change: (q, by) => settingsBy(q, (s) => ({ ...s, stepContact: s.stepContact - by })),
  },
  {
    id: 'range/step/lower-edge',
    change: (q, by) =>
      settingsBy(q, (s) => ({
        ...s,
        blades: s.blades.map((b) => ({
          ...b,
          places: b.places.map((place) => ({
            ...place,
            seating: {
              ...place.seating,
              step: [place.seating.step[0], place.seating.step[1] + by] as const,
            },
          })),
        })),
      })),
  },
  {
    id: 'force/push/low',
    change: (q, by) =>
      settingsBy(q, (s) => ({ ...s, push: { ...s.push, from: s.push.from - by } })),
  },
  {
    id: 'force/push/high',
    change: (q, by) => settingsBy(q, (s) => ({ ...s, push: { ...s.push, to: s.push.to + by } })),
  },
  {
    id: 'force/step',
    change: (q, by) =>
      settingsBy(q, (s) => ({
        ...s,
        push: { ...s.push, stepForceMin: s.push.stepForceMin + by },
      })),
  },
  {
    id: 'range/edge',
    change: (q, by) => settingsBy(q, (s) => ({ ...s, edgeStop: s.edgeStop + by })),
  },
  {
    id: 'range/undercut',
    change: (q, by) =>
      settingsBy(q, (s) => ({
        ...s,
        blades: s.blades.map((b) => ({ ...b, undercutMargin: b.undercutMargin + by })),
      })),
  },
  ...['left', 'right'].map((side) => ({
    id: `range/line/0/${side}`,
    change: (q: SpineQuestion, by: number) =>
      linesBy(q, side, (line) => ({
        ...line,
        greatestDeviation: line.greatestDeviation + by,
      })),
  })),
  {
    id: 'range/yaw',
    change: (q, by) => {
      const { l } = q.context;
      const slide = { ...l.slide, yaw: l.slide.yaw + by };
      return { ...q, context: { ...q.context, l: { ...l, slide } } };
    },
  },
  ...onRig('step', spineTravel),
];

const rounded = valueOf(valueOf(solveSpine(designOf('spine-rest', 'tapered'))).question());

const ofStrip = (q: SpineQuestion): CheckResult[] => {
  const { strip } = q;
  return strip?.found.cure.sides.flatMap((side) => stripChecks(q, side, strip.wish)) ?? [];
};

type SideCure = NonNullable<SpineQuestion['strip']>['found']['cure']['sides'][number];

/** What the strip of one side comes to, changed. */
const sideBy = (
  q: SpineQuestion,
  side: string,
  change: (cure: SideCure) => SideCure,
): SpineQuestion => {
  if (!q.strip) return q;
  const { found } = q.strip;
  const sides = found.cure.sides.map((one) => (one.side === side ? change(one) : one));
  return { ...q, strip: { ...q.strip, found: { ...found, cure: { ...found.cure, sides } } } };
};

const measuredBy =
  (change: (m: SideCure['measures'], by: number, found: number) => Partial<SideCure['measures']>) =>
  (side: string): Sabotage<SpineQuestion>['change'] =>
  (q, by, found) =>
    sideBy(q, side, (one) => ({
      ...one,
      measures: { ...one.measures, ...change(one.measures, by, found) },
    }));

const onStrip: readonly Sabotage<SpineQuestion>[] = ['left', 'right'].flatMap((side) => [
  {
    id: `strip/least/${side}`,
    change: (q: SpineQuestion, by: number) =>
      sideBy(q, side, (one) => ({
        ...one,
        profile: one.profile.map((p) => ({ ...p, thickness: p.thickness + by })),
      })),
  },
  {
    id: `strip/hollow/${side}`,
    change: measuredBy(({ hollow }, by, found) => ({ hollow: { ...hollow, radius: found + by } }))(
      side,
    ),
  },
  {
    id: `strip/flank/${side}`,
    change: measuredBy(({ flank }, by) => ({ flank: { ...flank, has: flank.has + by } }))(side),
  },
  {
    id: `strip/belt/${side}`,
    change: measuredBy(({ contact }, by) => ({ contact: contact - by }))(side),
  },
]);

export const sabotageSpineRest = (): void => {
  describeSabotage('a spine rest', spineRest, spineChecks, onSpine);
  describeSabotage('a strip on the blade', rounded, ofStrip, onStrip);
};
