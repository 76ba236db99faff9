import type { Question as EdgeQuestion } from '../../../jigs/edge-rest/checks/question.ts';
import { rangeChecks as edgeRanges } from '../../../jigs/edge-rest/checks/ranges.ts';
import { travelChecks as edgeTravel } from '../../../jigs/edge-rest/checks/travel.ts';
import { solve as solveEdge } from '../../../jigs/edge-rest/solve.ts';
import type { CheckResult } from '../../../src/family/index.ts';
import { valueOf } from '../../family/examples.ts';
import { describeSabotage, type Sabotage } from './describe.ts';
import { designOf, linesBy, settingsBy, short } from './plan.ts';
import { onRig } from './rig.ts';

const questionOf = (name: string): EdgeQuestion =>
  short(valueOf(valueOf(solveEdge(designOf('edge-rest', name))).question()));

const edgeRest = questionOf('herb');
const bothSides = questionOf('slicer');

const edgeChecks = (q: EdgeQuestion): CheckResult[] => [...edgeRanges(q), ...edgeTravel(q)];

/** What is measured of one side of the first blade. */
const onSide = (side: 'left' | 'right'): Sabotage<EdgeQuestion>[] => [
  {
    id: `range/web/0/${side}`,
    change: (q, by) =>
      linesBy(q, side, (line) => ({
        ...line,
        web: { ...line.web, thickness: line.web.thickness + by },
      })),
  },
  {
    id: `range/lower/0/${side}`,
    change: (q, by) =>
      linesBy(q, side, (line) => ({
        ...line,
        places: line.places.map((place) => ({ ...place, lower: place.lower + by })),
      })),
  },
  {
    id: `range/guided/0/${side}`,
    change: (q, by) => linesBy(q, side, (line) => ({ ...line, guided: line.guided + by })),
  },
  {
    id: `range/line/0/${side}`,
    change: (q, by) =>
      linesBy(q, side, (line) => ({ ...line, greatestDeviation: line.greatestDeviation + by })),
  },
];

const onEdge: readonly Sabotage<EdgeQuestion>[] = [
  {
    id: 'range/gap/seat',
    change: (q, by) => settingsBy(q, (s) => ({ ...s, roomAtTop: s.roomAtTop + by })),
  },
  { id: 'range/gap/nose', change: (q, by) => ({ ...q, v: { ...q.v, noseGap: q.v.noseGap + by } }) },
  {
    id: 'range/lip/room',
    change: (q, by) => settingsBy(q, (s) => ({ ...s, roomAtTop: s.roomAtTop + by })),
  },
  {
    id: 'range/lip/corner',
    change: (q, by) => ({ ...q, v: { ...q.v, lipHeight: q.v.lipHeight + by } }),
  },
  ...onSide('left'),
  {
    id: 'force/push/low',
    change: (q, by) => ({ ...q, plan: { ...q.plan, pushHeight: q.plan.pushHeight + by } }),
  },
  {
    id: 'force/push/high',
    change: (q, by) => ({ ...q, plan: { ...q.plan, pushHeight: q.plan.pushHeight - by } }),
  },
  {
    id: 'force/lip',
    change: (q, by) =>
      settingsBy(q, (s) => ({
        ...s,
        push: { ...s.push, lipForceMin: s.push.lipForceMin + by },
      })),
  },
  {
    id: 'force/seat',
    change: (q, by) =>
      settingsBy(q, (s) => ({
        ...s,
        push: { ...s.push, seatForceMin: s.push.seatForceMin + by },
      })),
  },
  {
    id: 'range/wrap',
    change: (q, by) => settingsBy(q, (s) => ({ ...s, wrapMargin: s.wrapMargin + by })),
  },
  {
    id: 'range/undercut',
    change: (q, by) =>
      settingsBy(q, (s) => ({
        ...s,
        blades: s.blades.map((b) => ({ ...b, undercutMargin: b.undercutMargin + by })),
      })),
  },
  {
    id: 'range/yaw',
    change: (q, by) => {
      const { rig } = q.context;
      const slide = { ...rig.l.slide, yaw: rig.l.slide.yaw + by };
      return { ...q, context: { ...q.context, rig: { ...rig, l: { ...rig.l, slide } } } };
    },
  },
  ...onRig('lip-slide', edgeTravel),
];

export const sabotageEdgeRest = (): void => {
  describeSabotage('an edge rest', edgeRest, edgeChecks, onEdge);
  // The herb knife is ground on its left alone.
  const onRight = (q: EdgeQuestion): CheckResult[] =>
    edgeChecks(q).filter(({ id }) => id.endsWith('/0/right'));
  describeSabotage('the right side on an edge rest', bothSides, onRight, onSide('right'));
};
