import { offLine, rangeCheck, text, type CheckResult } from '../../../src/family/index.ts';
import {
  edgeCheck,
  flatLineCheck,
  onPlaten,
  PLATEN_MARGIN,
  speedCheck,
  undercutCheck,
  WIDEST_GAP,
  worst,
  yawCheck,
} from '../../shared/checks/ranges.ts';
import { isGround } from '../../shared/grinding.ts';
import { leastOver } from '../over-places.ts';
import { mainPads } from '../pads.ts';
import { runningGrowth } from '../../shared/rules.ts';
import { noseLean } from '../rules.ts';
import { stripChecks } from '../strip/numbers.ts';
import { parameterPath, words, type Question } from './question.ts';

/** Metal of the step that must stand above the spine, mm; how far its lower edge may be broken. */
const STEP_MARGIN = 1;
const STEP_BREAK = 0.1;
const { labels, basis, fix } = words;
const sides = text.family.spineRest.setting.side;

/** The gap between nose and belt: its limits, and what is behind the belt there. */
const gapChecks = ({ design, v, plan }: Question): CheckResult[] => {
  const spines = design.blades.flatMap((blade) => blade.thickness.map(({ t }) => t));
  const parameter = parameterPath('noseGap');
  return [
    rangeCheck({
      id: 'range/gap/limit',
      label: labels.gapMost,
      found: v.noseGap,
      atMost: WIDEST_GAP,
      basis: basis.wheelRest,
      fix: fix.gap,
      parameter,
    }),
    rangeCheck({
      id: 'range/gap/spine',
      label: labels.gapSpine,
      found: Math.min(...spines) - v.noseGap,
      atLeast: 0.1,
      basis: basis.geometry,
      fix: fix.gapSpine,
      parameter,
    }),
    rangeCheck({
      id: 'range/gap/running',
      label: labels.gapLeast,
      found: v.noseGap - runningGrowth(design) - noseLean(design, v),
      atLeast: v.runningClearance,
      basis: basis.setting,
      fix: fix.gapLeast,
      parameter,
    }),
    worst(
      {
        id: 'range/bearing',
        label: labels.bearing,
        atLeast: v.leastBearing,
        basis: basis.setting,
        fix: fix.bearing,
        parameter,
      },
      plan.settings,
      ({ cornerDistance }) => cornerDistance - v.noseGap,
    ),
  ];
};

/** How much flat platen lies below and above a stretch of the abrasive face, mm. */
const platenChecks = ({ design, v, plan, context, stands }: Question): CheckResult[] => {
  const { grinder } = design;
  const { platen } = grinder;
  if (platen.kind === 'none') return [];
  const at = (step: number, alongFace: number): number =>
    onPlaten(grinder, stands[step - 1], context.l.levels.stack, alongFace);
  const low = platen.bottom + platen.edgeRadius;
  const high = platen.top - platen.edgeRadius;
  const terms = { atLeast: PLATEN_MARGIN, basis: basis.practice };
  return [
    worst(
      { ...terms, id: 'range/platen/gap', label: labels.gapPlatenLow, fix: fix.platen },
      plan.settings,
      ({ step }) => at(step, -v.plate) - low,
    ),
    worst(
      { ...terms, id: 'range/platen/low', label: labels.contactLow, fix: fix.contact },
      plan.settings,
      ({ step, contact }) => at(step, contact[0]) - low,
    ),
    worst(
      { ...terms, id: 'range/platen/high', label: labels.contactHigh, fix: fix.contact },
      plan.settings,
      ({ step, contact }) => high - at(step, contact[1]),
    ),
  ];
};

/** Height of the step against where the spine touches it. */
const stepChecks = ({ v, plan }: Question): CheckResult[] => {
  const contacts = plan.settings.map((s) => ({
    id: s.id,
    low: leastOver([s], ({ seating }) => seating.step[1]),
  }));
  return [
    worst(
      {
        id: 'range/step/top',
        label: labels.stepTop,
        atLeast: STEP_MARGIN,
        basis: basis.practice,
        fix: fix.stepTop,
        parameter: parameterPath('plate'),
      },
      plan.settings,
      ({ stepContact }) => v.plate - stepContact,
    ),
    worst(
      {
        id: 'range/step/lower-edge',
        label: labels.stepLower,
        atLeast: STEP_BREAK,
        basis: basis.geometry,
        fix: fix.stepLower,
        parameter: 'blades.0.spineRadius',
      },
      contacts,
      ({ low }) => low,
    ),
  ];
};

/**
 * What rules how low a pad may stand: how much steeper the pass is that asks for the highest push,
 * for the narrower its bevel, the nearer to the edge the belt bears; else the reserve.
 */
const rulesLow = (
  { design, plan }: Question,
  from: (setting: Question['plan']['settings'][number]) => number,
): string => {
  const [ruling] = [...plan.settings].sort((a, b) => from(b) - from(a));
  const pass = (ruling?.step ?? 0) - 1;
  return (design.sequence[pass]?.steeper ?? 0) > 0
    ? `sequence.${String(pass)}.steeper`
    : parameterPath('pushReserve');
};

/** The push: the pad inside the window of every pass, and what the step then carries. */
const pushChecks = (q: Question): CheckResult[] => {
  const { v, plan } = q;
  const [first] = q.design.blades.map(({ name }) => name);
  const parameter = rulesLow(q, ({ push }) => push.from);
  return [
    worst(
      {
        id: 'force/push/low',
        label: labels.pushLow,
        kind: 'force',
        atLeast: 0,
        basis: basis.plan,
        fix: fix.pushLow(first ?? ''),
        parameter,
      },
      plan.settings,
      ({ push }) => plan.pushHeight - push.from,
    ),
    worst(
      {
        id: 'force/push/high',
        label: labels.pushHigh,
        kind: 'force',
        atLeast: v.padMargin,
        basis: basis.setting,
        fix: fix.pushHigh,
        parameter: parameterPath('padMargin'),
      },
      plan.settings,
      ({ push }) => push.to - plan.pushHeight,
    ),
    worst(
      {
        id: 'force/step',
        label: labels.reserve,
        kind: 'force',
        unit: 'ratio',
        atLeast: v.pushReserve,
        basis: basis.setting,
        fix: fix.reserve(first ?? ''),
        parameter,
      },
      plan.settings,
      ({ push }) => push.stepForceMin,
    ),
  ];
};

/** The same for the other blades of the family, each with its own pad, near its heel. */
const otherPadChecks = (q: Question): CheckResult[] => {
  const { design, v, plan } = q;
  return mainPads(
    plan,
    design.blades.map(({ name }) => name),
    v,
  )
    .slice(1)
    .flatMap(({ blade, height }, i): CheckResult[] => {
      const windows = plan.settings
        .filter((s) => isGround(s)({ name: blade }))
        .map(({ id, blades }) => ({
          id,
          push: blades
            .find((b) => b.blade === blade)
            ?.expected.find(({ place }) => place === 'heel')?.push,
        }));
      type Push = { readonly from: number; readonly to: number };
      const at =
        (value: (push: Push) => number) =>
        ({ push }: { readonly push?: Push | undefined }): number =>
          push ? value(push) : NaN;
      const id = String(i + 1);
      const parameter = rulesLow(
        q,
        (setting) => windows.find((one) => one.id === setting.id)?.push?.from ?? -Infinity,
      );
      return [
        worst(
          {
            id: `force/push/low/${id}`,
            label: labels.padLow(blade),
            kind: 'force',
            atLeast: 0,
            basis: basis.plan,
            fix: fix.pushLow(blade),
            parameter,
          },
          windows,
          at(({ from }) => height - from),
        ),
        worst(
          {
            id: `force/push/high/${id}`,
            label: labels.padHigh(blade),
            kind: 'force',
            atLeast: v.padMargin,
            basis: basis.setting,
            fix: fix.pushHigh,
            parameter: parameterPath('padMargin'),
          },
          windows,
          at(({ to }) => to - height),
        ),
      ];
    });
};

/** Edge, undercut and grind lines of the plan. */
const bladeChecks = ({ design, v, plan }: Question): CheckResult[] => [
  edgeCheck(plan.settings, v.leastEdge),
  undercutCheck(plan.settings),
  ...plan.lines.map((line) =>
    flatLineCheck(design, line, {
      label: labels.line(line.blade, sides[line.side]),
      fix: offLine(design.blades, line)[0]?.fix ?? fix.line,
    }),
  ),
];

/** The strip against its limits, where the step is rounded for one. */
const stripRanges = (q: Question): CheckResult[] => {
  const { strip } = q;
  if (strip === undefined) return [];
  return strip.found.cure.sides.flatMap((side) => stripChecks(q, side, strip.wish));
};

/** Every check that holds one number of plan or layout to its limits. */
export const rangeChecks = (q: Question): CheckResult[] => [
  ...gapChecks(q),
  ...platenChecks(q),
  ...stepChecks(q),
  ...pushChecks(q),
  ...otherPadChecks(q),
  ...bladeChecks(q),
  ...stripRanges(q),
  yawCheck(q.context.l.slide.yaw, labels.yaw),
  speedCheck(q.design.grinder),
];
