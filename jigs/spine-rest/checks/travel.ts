import type { CheckResult } from '../../../src/family/index.ts';
import { slotChecks } from '../../shared/checks/slots.ts';
import { guardCheck, stickCheck, supportChecks } from '../../shared/checks/support.ts';
import { greatestOver } from '../over-places.ts';
import { ROUNDED_STEP } from '../strip/rounded-step.ts';
import { words, type Question } from './question.ts';

const { labels, fix } = words;

/** Spine that must lie on the nose at either end of the stroke, mm. */
const LEAST_SUPPORT = 30;

const highestEdge = ({ plan }: Question): number =>
  greatestOver(plan.settings, ({ seating }) => seating.edge[1]);

/** Checks that measure the finished parts: slots, support on the nose, guard. */
export const travelChecks = (q: Question): CheckResult[] => [
  ...slotChecks(q.context, q.stands, q.parts, q.strip ? ROUNDED_STEP : 'step', {
    ...labels,
    fix: fix.travel,
  }),
  ...supportChecks({
    settings: q.plan.settings,
    blades: q.design.blades,
    poses: q.poses,
    half: q.context.l.nose.half,
    least: LEAST_SUPPORT,
    labels,
    fix: fix.support,
    wider: 'wing',
  }),
  stickCheck(q.parts, q.v.handDistance),
  guardCheck(q.parts, q.v.plate, highestEdge(q), q.v.guardRise, {
    label: labels.guard,
    fix: fix.guard,
  }),
];
