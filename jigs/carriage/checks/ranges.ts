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
} from '../../shared/checks/ranges.ts';
import { runningGrowth } from '../../shared/rules.ts';
import { baseLean } from '../rules.ts';
import { heldIn } from '../layout/grip.ts';
import { JAW } from '../layout/sizes.ts';
import type { PlanSetting } from '../place/stand.ts';
import { parameterPath, words, type Question } from './question.ts';

const { labels, basis, fix } = words;

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
  const at = (step: number, alongFace: number): number =>
    onPlaten(grinder, stands[step - 1], v.base, alongFace);
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
      plan.settings,
      ({ step, contact }) => at(step, contact[0]) - low,
    ),
    worst(
      { ...terms, id: 'range/platen/high', label: labels.contactHigh },
      plan.settings,
      ({ step, contact }) => high - at(step, contact[1]),
    ),
  ];
};

/** The push: low enough that the heel stays down in every pass. */
const pushChecks = ({ c: { v, plan }, pushHeight }: Question): CheckResult[] => {
  // Higher over the foot the same push tips the carriage less.
  const parameter = parameterPath('edgeHeight');
  const terms = { kind: 'force', basis: basis.setting, fix: fix.heel, parameter } as const;
  return [
    worst(
      { ...terms, id: 'force/heel', label: labels.heel, unit: 'ratio', atLeast: v.heelReserve },
      plan.settings,
      ({ push }) => push.heelForceMin,
    ),
    worst(
      { ...terms, id: 'force/push', label: labels.push, atLeast: 0 },
      plan.settings,
      ({ push }) => push.to - pushHeight,
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
      plan.settings,
      ({ push }) => push.baseForceMin,
    ),
  ];
};

/** Edge, undercut, grind lines and the falling tip. */
const bladeChecks = ({ c: { design, v, plan } }: Question): CheckResult[] => [
  edgeCheck(plan.settings, v.leastEdge),
  undercutCheck(plan.settings),
  ...plan.lines.flatMap((line): CheckResult[] => {
    const { blade, side, tip, places } = line;
    const index = design.blades.findIndex(({ name }) => name === blade);
    const where = text.family.carriage.setting.side[side];
    const thin = Math.min(0, ...places.map(({ leftStanding }) => leftStanding));
    const at = `${String(index)}/${side}`;
    return [
      flatLineCheck(design, line, {
        label: labels.line(blade, where),
        fix: offLine(design.blades, line)[0]?.fix ?? fix.line,
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
  // At the end of the jaw where the least of a turned blade lies under it.
  const gripped = ({ clamping }: PlanSetting, drop: number): number[] =>
    clamping.flatMap((one) => {
      const grip = grips.find(({ blade }) => blade.name === one.blade);
      if (!grip) return [NaN];
      const { high, upright } = heldIn(grip, one, v.jawWidth);
      return [Math.min(upright, Math.min(l.jawTop - drop, l.earTop) - v.edgeHeight - high)];
    });
  return [
    worst(
      {
        id: 'range/grip',
        label: labels.grip,
        atLeast: JAW.leastGrip,
        basis: basis.practice,
        fix: fix.grip,
        parameter: parameterPath('edgeHeight'),
      },
      plan.settings,
      (setting) => Math.min(...gripped(setting, l.jawDrops[plan.settings.indexOf(setting)] ?? 0)),
    ),
    worst(
      {
        id: 'range/jaw',
        label: labels.jawBeside,
        atLeast: v.runningClearance,
        basis: basis.setting,
        fix: fix.jaw,
        parameter: parameterPath('jawGap'),
      },
      plan.settings,
      ({ jawBeside }) => jawBeside,
    ),
    rangeCheck({
      id: 'range/belt-on-foot',
      label: labels.belt,
      found: l.foot.half - l.stroke,
      atLeast: 0,
      basis: basis.geometry,
      fix: fix.support,
    }),
    speedCheck(grinder),
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
