import type { Question as CarrierQuestion } from '../../../jigs/backing-carrier/checks/question.ts';
import { rangeChecks as carrierRanges } from '../../../jigs/backing-carrier/checks/ranges.ts';
import { solve as solveCarrier } from '../../../jigs/backing-carrier/index.ts';
import { radians } from '../../../src/core/units.ts';
import { valueOf } from '../../family/examples.ts';
import { faster } from './change.ts';
import { describeSabotage, turnedUntil, type Sabotage } from './describe.ts';
import { designOf } from './plan.ts';

const carrier = valueOf(valueOf(solveCarrier(designOf('backing-carrier', 'leather'))).question());

const onCarrier: readonly Sabotage<CarrierQuestion>[] = [
  {
    id: 'range/contact/low',
    change: (q, by) => ({ ...q, v: { ...q.v, contact: q.v.contact + by } }),
  },
  {
    id: 'range/contact/high',
    change: (q, by) => ({ ...q, v: { ...q.v, contact: q.v.contact - by } }),
  },
  { id: 'range/width', change: (q, by) => ({ ...q, l: { ...q.l, width: q.l.width - 2 * by } }) },
  { id: 'range/take-up', change: (q, by) => ({ ...q, path: q.path + by }) },
  {
    // A softer sheet is pressed in deeper.
    id: 'range/roll',
    change: (q, by, found) =>
      turnedUntil(
        carrierRanges,
        { id: 'range/roll', found: found + by },
        (log) => ({ ...q, v: { ...q.v, modulus: q.v.modulus * Math.exp(log) } }),
        [-5, 5],
      ),
  },
  {
    id: 'range/rest-travel',
    change: (q, by) => ({
      ...q,
      l: { ...q.l, support: q.l.support + by * Math.cos(radians(q.design.grinder.lean)) },
    }),
  },
  { id: 'range/speed', change: (q, by) => ({ ...q, design: faster(q.design, by) }) },
];

export const sabotageCarrier = (): void => {
  describeSabotage('a backing carrier', carrier, carrierRanges, onCarrier);
};
