import { partChecks } from '../../../jigs/carriage/checks/finished.ts';
import type { Question as CarriageQuestion } from '../../../jigs/carriage/checks/question.ts';
import { rangeChecks as carriageRanges } from '../../../jigs/carriage/checks/ranges.ts';
import { solve as solveCarriage } from '../../../jigs/carriage/solve.ts';
import { radians } from '../../../src/core/units.ts';
import { valueOf } from '../../family/examples.ts';
import { corners, faster, slotsBy, withPart } from './change.ts';
import { describeSabotage, type Sabotage } from './describe.ts';
import { designOf, linesBy, settingsBy, short } from './plan.ts';

const wholeCarriage = valueOf(
  valueOf(solveCarriage(designOf('carriage', 'sheepsfoot'))).question(),
);
const carriage: CarriageQuestion = {
  ...wholeCarriage,
  c: { ...wholeCarriage.c, ...short({ plan: wholeCarriage.c.plan }) },
};

/** A carriage's context changed. */
const inContext = (
  q: CarriageQuestion,
  change: Partial<CarriageQuestion['c']>,
): CarriageQuestion => ({ ...q, c: { ...q.c, ...change } });

type CarriageSetting = CarriageQuestion['c']['plan']['settings'][number];
type CarriageLine = CarriageQuestion['c']['plan']['lines'][number];

const carriageSettings = (
  q: CarriageQuestion,
  change: (setting: CarriageSetting) => CarriageSetting,
): CarriageQuestion => inContext(q, settingsBy({ plan: q.c.plan }, change));

const carriageLines = (
  q: CarriageQuestion,
  side: string,
  change: (line: CarriageLine) => CarriageLine,
): CarriageQuestion => inContext(q, linesBy({ plan: q.c.plan }, side, change));

const pushBy = (
  q: CarriageQuestion,
  key: 'heelForceMin' | 'baseForceMin',
  by: number,
): CarriageQuestion =>
  carriageSettings(q, (s) => ({ ...s, push: { ...s.push, [key]: s.push[key] + by } }));

const gapBy = (q: CarriageQuestion, by: number): CarriageQuestion =>
  inContext(q, { v: { ...q.c.v, beltGap: q.c.v.beltGap + by } });

const onCarriage: readonly Sabotage<CarriageQuestion>[] = [
  { id: 'range/gap/limit', change: gapBy },
  { id: 'range/gap/running', change: gapBy },
  {
    id: 'range/platen/low',
    change: (q, by) =>
      carriageSettings(q, (s) => ({ ...s, contact: [s.contact[0] + by, s.contact[1]] as const })),
  },
  {
    id: 'range/platen/high',
    change: (q, by) =>
      carriageSettings(q, (s) => ({ ...s, contact: [s.contact[0], s.contact[1] - by] as const })),
  },
  { id: 'force/heel', change: (q, by) => pushBy(q, 'heelForceMin', by) },
  { id: 'force/push', change: (q, by) => ({ ...q, pushHeight: q.pushHeight - by }) },
  { id: 'force/base', change: (q, by) => pushBy(q, 'baseForceMin', by) },
  {
    id: 'range/edge',
    change: (q, by) => carriageSettings(q, (s) => ({ ...s, edgeStop: s.edgeStop + by })),
  },
  {
    id: 'range/undercut',
    change: (q, by) =>
      carriageSettings(q, (s) => ({
        ...s,
        blades: s.blades.map((b) => ({ ...b, undercutMargin: b.undercutMargin + by })),
      })),
  },
  ...['left', 'right'].flatMap((side): Sabotage<CarriageQuestion>[] => [
    {
      id: `range/line/0/${side}`,
      change: (q, by) =>
        carriageLines(q, side, (line) => ({
          ...line,
          greatestDeviation: line.greatestDeviation + by,
        })),
    },
    {
      id: `range/tip/0/${side}`,
      change: (q, by) =>
        carriageLines(q, side, (line) => ({
          ...line,
          tip: { ...line.tip, leftSteering: line.tip.leftSteering + by },
        })),
    },
    {
      id: `range/thin/0/${side}`,
      change: (q, by, found) =>
        carriageLines(q, side, (line) => ({
          ...line,
          places: line.places.map((place, i) =>
            i === 0 ? { ...place, leftStanding: -(found + by) } : place,
          ),
        })),
    },
  ]),
  {
    id: 'range/grip',
    change: (q, by) =>
      inContext(q, { grips: q.c.grips.map((grip) => ({ ...grip, from: grip.from - by })) }),
  },
  {
    id: 'range/jaw',
    change: (q, by) => carriageSettings(q, (s) => ({ ...s, jawBeside: s.jawBeside + by })),
  },
  {
    id: 'range/belt-on-foot',
    change: (q, by) =>
      inContext(q, { l: { ...q.c.l, foot: { ...q.c.l.foot, half: q.c.l.foot.half + by } } }),
  },
  {
    id: 'range/speed',
    change: (q, by) => inContext(q, { grinder: faster(q.c.design, by).grinder }),
  },
  {
    // The upright turned in its slots: the carriage itself stands as it did.
    id: 'finished/square',
    change: (q, by) => upright(q, by),
    jumps: 'the face is what stands foremost: of a leaning one a corner alone',
    also: { ids: ['finished/angle'], why: 'a face out of square is not at its angle either' },
  },
  {
    // Plan and parts no longer agree: what is read is not what is built.
    id: 'finished/angle',
    change: (q, by) => carriageSettings(q, (s) => ({ ...s, tilt: s.tilt + by })),
  },
  {
    id: 'finished/fence-travel',
    change: (q, by) => ({ ...q, parts: withPart(q.parts, 'fence', slotsBy('', 2 * by)) }),
  },
  {
    id: 'finished/heel-thread',
    change: (q, by) => ({
      ...q,
      parts: withPart(q.parts, 'heel-screw', (part) => {
        const end = Math.max(...part.layers.map(({ to }) => to));
        return {
          ...part,
          layers: part.layers.map((layer) =>
            layer.to === end ? { ...layer, to: layer.to + by } : layer,
          ),
        };
      }),
    }),
  },
  {
    id: 'finished/support',
    change: (q, by) => ({
      ...q,
      parts: withPart(
        q.parts,
        'base',
        corners((x, y) => [x + Math.sign(x) * by, y]),
      ),
    }),
  },
];

/** The upright leaning by so many degrees in the carriage: turned about the stroke. */
const upright = (q: CarriageQuestion, by: number): CarriageQuestion => {
  const [c, s] = [Math.cos(radians(by)), Math.sin(radians(by))];
  const turned = ([x, y, z]: readonly [number, number, number]): [number, number, number] => [
    x,
    y * c - z * s,
    y * s + z * c,
  ];
  return {
    ...q,
    items: q.items.map((item) =>
      item.name === 'upright'
        ? {
            ...item,
            frame: {
              origin: turned(item.frame.origin),
              x: turned(item.frame.x),
              y: turned(item.frame.y),
              z: turned(item.frame.z),
            },
          }
        : item,
    ),
  };
};

export const sabotageCarriage = (): void => {
  describeSabotage(
    'a carriage',
    carriage,
    (q) => [...carriageRanges(q), ...partChecks(q)],
    onCarriage,
  );
};
