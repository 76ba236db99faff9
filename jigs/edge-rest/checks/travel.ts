import type { CheckResult } from '../../../src/family/index.ts';
import { slotChecks } from '../../shared/checks/slots.ts';
import { guardCheck, stickCheck, supportChecks } from '../../shared/checks/support.ts';
import { words, type Question } from './question.ts';

const { labels, fix } = words;

/** Edge that must lie on the seat at either end of the stroke, mm. */
const LEAST_SUPPORT = 20;

const highestPlace = ({ plan }: Question): number =>
  Math.max(
    ...plan.settings.flatMap(({ blades }) =>
      blades.flatMap((b) => b.places.map(({ standing, height }) => standing.origin[1] + height)),
    ),
  );

/** Checks that measure the finished parts: slots, support on the seat, guard. */
export const travelChecks = (q: Question): CheckResult[] => {
  const { rig, x, stands } = q.context;
  return [
    ...slotChecks(rig, stands, q.parts, 'lip-slide', { ...labels, fix: fix.travel }),
    ...supportChecks({
      settings: q.plan.settings,
      blades: q.design.blades,
      poses: q.poses,
      half: x.half,
      least: LEAST_SUPPORT,
      labels,
      fix: fix.support,
      wider: 'stepWing',
    }),
    stickCheck(q.parts, q.v.handDistance),
    guardCheck(q.parts, -x.under, highestPlace(q), q.v.guardRise, {
      label: labels.guard,
      fix: fix.guard,
    }),
  ];
};
