import {
  beltSpeed,
  faceDepth,
  radians,
  rangeCheck,
  text,
  type CheckResult,
  type RangeTerms,
} from '../../../src/family/index.ts';
import { mainPads } from '../pads.ts';
import { noseLean, runningGrowth } from '../rules.ts';
import { parameterPath, words, type Question } from './question.ts';

/** 1/8 inch, the published limit for work rests at abrasive wheels, mm. */
const WIDEST_GAP = 3.175;
/** Metal of the step that must stand above the spine, mm; how far its lower edge may be broken. */
const STEP_MARGIN = 1;
const STEP_BREAK = 0.1;
/** Platen that must lie beyond contact and gap, mm. */
const PLATEN_MARGIN = 2;
/** Yaw that the play of the guide may allow, degrees: about the angle tolerance of a bevel. */
const MOST_YAW = 0.25;

const { labels, basis, fix } = words;

/** The setting with the least value of something, for the worst pose. */
const least = <T extends { readonly id: string }>(
  settings: readonly T[],
  value: (setting: T) => number,
): { value: number; pose: { setting: string } } | undefined =>
  settings
    .map((s) => ({ value: value(s), pose: { setting: s.id } }))
    .reduce<{ value: number; pose: { setting: string } } | undefined>(
      (best, one) => (best && best.value <= one.value ? best : one),
      undefined,
    );

const worst = (
  terms: Omit<RangeTerms, 'found' | 'pose'>,
  found: ReturnType<typeof least>,
): CheckResult =>
  rangeCheck({ ...terms, found: found?.value ?? null, ...(found ? { pose: found.pose } : {}) });

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
      least(plan.settings, ({ cornerDistance }) => cornerDistance - v.noseGap),
    ),
  ];
};

/** How much flat platen lies below and above a stretch of the abrasive face, mm. */
const platenChecks = ({ design, v, plan, context, stands }: Question): CheckResult[] => {
  const { grinder } = design;
  const { platen } = grinder;
  if (platen.kind === 'none') return [];
  const t = radians(grinder.lean);
  // From the seat along the face to the platen's own measure: z' = (stack - d sin t) / cos t + f.
  const onPlaten = (step: number, alongFace: number): number => {
    const stand = stands[step - 1];
    const depth = stand ? faceDepth(grinder, stand.belt, stand.backing) : 0;
    return (context.l.levels.stack - depth * Math.sin(t)) / Math.cos(t) + alongFace;
  };
  const low = platen.bottom + platen.edgeRadius;
  const high = platen.top - platen.edgeRadius;
  const terms = { atLeast: PLATEN_MARGIN, basis: basis.practice };
  return [
    worst(
      { ...terms, id: 'range/platen/gap', label: labels.gapPlatenLow, fix: fix.platen },
      least(plan.settings, ({ step }) => onPlaten(step, -v.plate) - low),
    ),
    worst(
      { ...terms, id: 'range/platen/low', label: labels.contactLow, fix: fix.contact },
      least(plan.settings, ({ step, contact }) => onPlaten(step, contact[0]) - low),
    ),
    worst(
      { ...terms, id: 'range/platen/high', label: labels.contactHigh, fix: fix.contact },
      least(plan.settings, ({ step, contact }) => high - onPlaten(step, contact[1])),
    ),
  ];
};

/** Height of the step against where the spine touches it. */
const stepChecks = ({ v, plan }: Question): CheckResult[] => {
  const contacts = plan.settings.map((s) => ({
    id: s.id,
    low: Math.min(...s.blades.flatMap((b) => b.places.map(({ seating }) => seating.step[1]))),
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
      least(plan.settings, ({ stepContact }) => v.plate - stepContact),
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
      least(contacts, ({ low }) => low),
    ),
  ];
};

/** The push: the pad inside the window of every pass, and what the step then carries. */
const pushChecks = ({ v, plan }: Question): CheckResult[] => [
  worst(
    {
      id: 'force/push/low',
      label: labels.pushLow,
      kind: 'force',
      atLeast: 0,
      basis: basis.plan,
      fix: fix.pushLow,
      parameter: parameterPath('pushReserve'),
    },
    least(plan.settings, ({ push }) => plan.pushHeight - push.from),
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
    least(plan.settings, ({ push }) => push.to - plan.pushHeight),
  ),
  worst(
    {
      id: 'force/step',
      label: labels.reserve,
      kind: 'force',
      unit: 'ratio',
      atLeast: v.pushReserve,
      basis: basis.setting,
      fix: fix.reserve,
      parameter: parameterPath('pushReserve'),
    },
    least(plan.settings, ({ push }) => push.stepForceMin),
  ),
];

/** The same for the other blades of the family, each with its own pad, near its heel. */
const otherPadChecks = ({ design, v, plan }: Question): CheckResult[] =>
  mainPads(
    plan,
    design.blades.map(({ name }) => name),
    v,
  )
    .slice(1)
    .flatMap(({ blade, height }, i): CheckResult[] => {
      const windows = plan.settings.map(({ id, blades }) => ({
        id,
        push: blades.find((b) => b.blade === blade)?.expected.find(({ place }) => place === 'heel')
          ?.push,
      }));
      const at = (value: (push: { from: number; to: number }) => number) =>
        least(windows, ({ push }) => (push ? value(push) : NaN));
      const id = String(i + 1);
      return [
        worst(
          {
            id: `force/push/low/${id}`,
            label: labels.padLow(blade),
            kind: 'force',
            atLeast: 0,
            basis: basis.plan,
            fix: fix.pushLow,
            parameter: parameterPath('pushReserve'),
          },
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
          at(({ to }) => to - height),
        ),
      ];
    });

/** Edge, undercut and grind lines of the plan. */
const bladeChecks = ({ design, v, plan }: Question): CheckResult[] => [
  worst(
    {
      id: 'range/edge',
      label: labels.edge,
      atLeast: v.leastEdge,
      basis: basis.practice,
      fix: fix.edge,
      parameter: parameterPath('leastEdge'),
    },
    least(plan.settings, ({ edgeStop }) => edgeStop),
  ),
  worst(
    {
      id: 'range/undercut',
      label: labels.undercut,
      atLeast: 0,
      basis: basis.plan,
      fix: fix.undercut,
      parameter: 'sequence',
    },
    least(plan.settings, ({ blades }) => Math.min(...blades.map((b) => b.undercutMargin))),
  ),
  ...plan.lines.map(({ blade, side, greatestDeviation }) => {
    const index = design.blades.findIndex(({ name }) => name === blade);
    const allowed = design.blades[index]?.line.allowed;
    return rangeCheck({
      id: `range/line/${String(index)}/${side}`,
      label: labels.line(blade, text.family.spineRest.setting.side[side]),
      found: allowed === undefined ? null : greatestDeviation,
      ...(allowed === undefined ? {} : { atMost: allowed }),
      basis: basis.blade,
      fix: fix.line,
      parameter: `blades.${String(index)}.line.allowed`,
    });
  }),
];

/** Play of the guide and speed of the belt. */
const machineChecks = ({ design, context }: Question): CheckResult[] => {
  const { beltRating, wheelRating } = design.grinder.drive;
  return [
    rangeCheck({
      id: 'range/yaw',
      label: labels.yaw,
      unit: 'deg',
      found: context.l.slide.yaw,
      atMost: MOST_YAW,
      basis: basis.practice,
      fix: fix.yaw,
      parameter: parameterPath('guidePlay'),
    }),
    rangeCheck({
      id: 'range/speed',
      label: labels.speed,
      found: beltSpeed(design.grinder),
      atMost: Math.min(beltRating, wheelRating),
      basis: basis.rating,
      fix: fix.speed,
      parameter: 'grinder.drive',
    }),
  ];
};

/** Every check that holds one number of plan or layout to its limits. */
export const rangeChecks = (q: Question): CheckResult[] => [
  ...gapChecks(q),
  ...platenChecks(q),
  ...stepChecks(q),
  ...pushChecks(q),
  ...otherPadChecks(q),
  ...bladeChecks(q),
  ...machineChecks(q),
];
