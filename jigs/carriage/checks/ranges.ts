import {
  beltSpeed,
  faceDepth,
  radians,
  rangeCheck,
  text,
  type CheckResult,
  type RangeTerms,
} from '../../../src/family/index.ts';
import type { PlanSetting } from '../place/stand.ts';
import { baseLean, runningGrowth } from '../rules.ts';
import { JAW } from '../layout/sizes.ts';
import { parameterPath, words, type Question } from './question.ts';

/** 1/8 inch, the published limit for work rests at abrasive wheels, mm. */
const WIDEST_GAP = 3.175;
/** Platen that must lie beyond the contact, mm. */
const PLATEN_MARGIN = 2;

const { labels, basis, fix } = words;

/** The setting with the least value of something. */
const least = (settings: readonly PlanSetting[], value: (setting: PlanSetting) => number) =>
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

const gapChecks = ({ c: { design, v } }: Question): CheckResult[] => {
  const parameter = parameterPath('beltGap');
  return [
    rangeCheck({
      id: 'range/gap/limit',
      label: labels.gapMost,
      found: v.beltGap,
      atMost: WIDEST_GAP,
      basis: basis.wheelRest,
      fix: fix.gap,
      parameter,
    }),
    rangeCheck({
      id: 'range/gap/running',
      label: labels.gapLeast,
      found: v.beltGap - runningGrowth(design) - baseLean(design, v),
      atLeast: v.runningClearance,
      basis: basis.setting,
      fix: fix.gapLeast,
      parameter,
    }),
  ];
};

/** How much flat platen lies below and above the bevel, mm. */
const platenChecks = ({ c: { grinder, v, plan, stands } }: Question): CheckResult[] => {
  const { platen } = grinder;
  if (platen.kind === 'none') return [];
  const t = radians(grinder.lean);
  // From the base along the face to the platen's own measure: z' = (stack - d sin t) / cos t + f.
  const onPlaten = (step: number, along: number): number => {
    const stand = stands[step - 1];
    const depth = stand ? faceDepth(grinder, stand.belt, stand.backing) : 0;
    return (v.base - depth * Math.sin(t)) / Math.cos(t) + along;
  };
  const low = platen.bottom + platen.edgeRadius;
  const high = platen.top - platen.edgeRadius;
  const terms = {
    atLeast: PLATEN_MARGIN,
    basis: basis.practice,
    fix: fix.contact,
    parameter: parameterPath('edgeHeight'),
  };
  return [
    worst(
      { ...terms, id: 'range/platen/low', label: labels.contactLow },
      least(plan.settings, ({ step, contact }) => onPlaten(step, contact[0]) - low),
    ),
    worst(
      { ...terms, id: 'range/platen/high', label: labels.contactHigh },
      least(plan.settings, ({ step, contact }) => high - onPlaten(step, contact[1])),
    ),
  ];
};

/** The push: low enough that the heel stays down in every pass. */
const pushChecks = ({ c: { v, plan }, pushHeight }: Question): CheckResult[] => {
  const parameter = parameterPath('heelReserve');
  const terms = { kind: 'force', basis: basis.setting, fix: fix.heel, parameter } as const;
  return [
    worst(
      { ...terms, id: 'force/heel', label: labels.heel, unit: 'ratio', atLeast: v.heelReserve },
      least(plan.settings, ({ push }) => push.heelForceMin),
    ),
    worst(
      { ...terms, id: 'force/push', label: labels.push, atLeast: 0 },
      least(plan.settings, ({ push }) => push.to - pushHeight),
    ),
    worst(
      {
        id: 'force/base',
        label: labels.base,
        kind: 'force',
        unit: 'ratio',
        atLeast: 0,
        basis: basis.plan,
        fix: fix.base,
        parameter: 'grinder.belt.direction',
      },
      least(plan.settings, ({ push }) => push.baseForceMin),
    ),
  ];
};

/** Edge, undercut, grind lines and the falling tip. */
const bladeChecks = ({ c: { design, v, plan } }: Question): CheckResult[] => [
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
    least(plan.settings, ({ blades }) =>
      Math.min(...blades.map(({ undercutMargin }) => undercutMargin)),
    ),
  ),
  ...plan.lines.flatMap(({ blade, side, greatestDeviation, tip, places }): CheckResult[] => {
    const index = design.blades.findIndex(({ name }) => name === blade);
    const allowed = design.blades[index]?.line.allowed;
    const where = text.family.carriage.setting.side[side];
    const thin = Math.min(0, ...places.map(({ leftStanding }) => leftStanding));
    const at = `${String(index)}/${side}`;
    return [
      rangeCheck({
        id: `range/line/${at}`,
        label: labels.line(blade, where),
        found: allowed === undefined ? null : greatestDeviation,
        ...(allowed === undefined ? {} : { atMost: allowed }),
        basis: basis.blade,
        fix: fix.line,
        parameter: `blades.${String(index)}.line.allowed`,
      }),
      rangeCheck({
        id: `range/tip/${at}`,
        label: labels.tip(blade, where),
        found: tip.leftSteering,
        atMost: v.tipAllowance,
        basis: basis.setting,
        fix: fix.tip,
        parameter: parameterPath('tipAllowance'),
      }),
      rangeCheck({
        id: `range/thin/${at}`,
        label: labels.thin(blade, where),
        found: -thin,
        atMost: v.fenceTolerance,
        basis: basis.setting,
        fix: fix.thin,
        parameter: parameterPath('fenceTolerance'),
      }),
    ];
  }),
];

/** Jaw, foot and speed of the belt. */
const machineChecks = ({ c }: Question): CheckResult[] => {
  const { v, l, grips, plan, grinder } = c;
  const grip = grips.map(({ edge, from, to }) => {
    const low = v.edgeHeight - edge + from;
    const high = v.edgeHeight - edge + to;
    return Math.min(high, l.jawTop, l.earTop) - low;
  });
  return [
    rangeCheck({
      id: 'range/grip',
      label: labels.grip,
      found: Math.min(...grip),
      atLeast: JAW.leastGrip,
      basis: basis.practice,
      fix: fix.grip,
      parameter: parameterPath('edgeHeight'),
    }),
    worst(
      {
        id: 'range/jaw',
        label: labels.jawBeside,
        atLeast: v.runningClearance,
        basis: basis.setting,
        fix: fix.jaw,
        parameter: parameterPath('jawGap'),
      },
      least(plan.settings, ({ jawBeside }) => jawBeside),
    ),
    rangeCheck({
      id: 'range/belt-on-foot',
      label: labels.belt,
      found: l.foot.half - l.stroke,
      atLeast: 0,
      basis: basis.geometry,
      fix: fix.support,
    }),
    rangeCheck({
      id: 'range/speed',
      label: labels.speed,
      unit: 'm/s',
      found: beltSpeed(grinder),
      atMost: Math.min(grinder.drive.beltRating, grinder.drive.wheelRating),
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
  ...pushChecks(q),
  ...bladeChecks(q),
  ...machineChecks(q),
];
