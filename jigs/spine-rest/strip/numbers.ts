import {
  rangeCheck,
  text,
  type CheckResult,
  type StripFound,
  type StripWish,
} from '../../../src/family/index.ts';
import { slotChecks } from '../../shared/checks/slots.ts';
import { shiftsOf } from '../../shared/needs-of.ts';
import { words as checks, type Question } from '../checks/question.ts';
import { ROUNDED_STEP } from './rounded-step.ts';

type SideCure = StripFound['cure']['sides'][number];

const words = text.family.spineRest.strip;
const { labels, basis, fix } = words;

/** Metal of the step above the contact, and of the belt's contact above the strip's, mm. */
const STEP_MARGIN = 1;
const LEVER_MARGIN = 1;

type Asked = Omit<Parameters<typeof rangeCheck>[0], 'id' | 'label' | 'fix'>;

const check = (side: SideCure['side'], key: keyof typeof labels & keyof typeof fix, asked: Asked) =>
  rangeCheck({
    id: `strip/${key}/${side}`,
    label: labels.strip(labels[key], text.virtual.side[side]),
    fix: fix[key],
    ...asked,
  });

/** What one side's strip itself comes to, held to its limits. */
export const stripChecks = (
  { v, plan }: Question,
  { side, profile, measures }: SideCure,
  wish: StripWish,
): CheckResult[] => {
  const { contact, hollow, flank } = measures;
  // A push just high enough stands over the lever A of the belt by the reserve, so A is not less.
  const lowest = Math.min(
    ...plan.settings
      .filter((s) => s.side === side)
      .flatMap(({ blades }) => blades.flatMap(({ expected }) => expected))
      .map(({ push }) => push.from / (1 + v.pushReserve)),
  );
  return [
    check(side, 'least', {
      found: Math.min(...profile.map(({ thickness }) => thickness)) - wish.tape,
      atLeast: wish.least - 1e-6,
      basis: basis.wish,
    }),
    // A strip that is nowhere hollow fits any step: its sharpest hollow is then told as a metre.
    check(side, 'hollow', {
      found: Math.min(1000, hollow.radius),
      atLeast: wish.stepRadius,
      basis: checks.basis.geometry,
    }),
    check(side, 'flank', {
      found: flank.has,
      atLeast: flank.needs,
      basis: checks.basis.geometry,
    }),
    check(side, 'belt', { found: lowest - contact, atLeast: LEVER_MARGIN, basis: basis.lever }),
  ];
};

/** What a rest is asked anew that was planned for its straight step. */
const restChecks = (
  { v, plan }: Question,
  { side, with: off, measures: { corner, contact } }: SideCure,
  wish: StripWish,
  pad: number,
): CheckResult[] => {
  const pushes = plan.settings.filter((s) => s.side === side).map(({ push }) => push);
  return [
    check(side, 'line', { found: off, atMost: wish.allowed, basis: basis.ground }),
    check(side, 'corner', {
      found: corner - v.noseGap,
      atLeast: v.leastBearing,
      basis: basis.ground,
    }),
    check(side, 'top', {
      found: v.plate - contact,
      atLeast: STEP_MARGIN,
      basis: checks.basis.practice,
    }),
    check(side, 'pushLow', {
      found: pad - Math.max(...pushes.map(({ from }) => from)),
      atLeast: 0,
      basis: checks.basis.plan,
      kind: 'force',
    }),
    check(side, 'pushHigh', {
      found: Math.min(...pushes.map(({ to }) => to)) - pad,
      atLeast: v.padMargin,
      basis: checks.basis.setting,
      kind: 'force',
    }),
  ];
};

/**
 * Everything about the strips that is a number; `q` has the rounded step and its settings, `pad` is
 * the height of the pad that the rest has for this blade, mm.
 */
export const stripNumbers = (
  q: Question,
  { cure }: StripFound,
  wish: StripWish,
  pad: number,
): CheckResult[] => {
  const { plan, stands, context } = q;
  const { min, max } = context.needsOnBase;
  // Slots are cut about the middle of what the straight step needs: a place beyond either end
  // takes as much from both.
  const { shifts } = shiftsOf(stands);
  const places = plan.settings.map(({ setoff, step }) => setoff - (shifts[step - 1] ?? NaN));
  const beyond = Math.max(0, ...places.map((y) => Math.max(min - y, y - max)));
  const needsOnBase = { min: min - beyond, max: max + beyond };
  const travel = slotChecks({ ...context, needsOnBase }, stands, q.parts, ROUNDED_STEP, {
    ...checks.labels,
    fix: checks.fix.travel,
  });
  return [
    ...cure.sides.flatMap((side) => [
      ...restChecks(q, side, wish, pad),
      ...stripChecks(q, side, wish),
    ]),
    ...travel.map((check) => ({ ...check, id: `strip/${check.id}` })),
  ];
};
