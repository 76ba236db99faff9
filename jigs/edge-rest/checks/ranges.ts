import { rangeCheck, text, type CheckResult } from '../../../src/family/index.ts';
import {
  lineCheck,
  speedCheck,
  undercutCheck,
  WIDEST_GAP,
  worst,
  yawCheck,
} from '../../shared/checks/ranges.ts';
import { parameterPath, words, type Question } from './question.ts';

/** Lip that must stand above the edge's corner, and hollow above the lip, mm. */
export const CORNER_MARGIN = 0.2;
export const LIP_MARGIN = 0.5;
/** Belt that must lie on the wheel beyond the contact, degrees. */
export const WRAP_MARGIN = 2;
const { labels, basis, fix } = words;
const sides = text.family.edgeRest.setting.side;

/** Gaps at the wheel, and the room of the lip. */
const gapChecks = ({ design, v, plan }: Question): CheckResult[] => {
  const strip = v.lip === 'strip';
  const { flutter, splice } = design.grinder.belt;
  const spare = (s: Question['plan']['settings'][number]): number => s.roomAtTop - v.lipThickness;
  return [
    worst(
      {
        id: 'range/gap/seat',
        label: labels.gapMost,
        atMost: WIDEST_GAP,
        basis: basis.wheelRest,
        fix: fix.gap,
        parameter: parameterPath('lipThickness'),
      },
      plan.settings,
      (s) => (strip ? spare(s) : s.roomAtSeat),
      true,
    ),
    rangeCheck({
      id: 'range/gap/nose',
      label: labels.gapNose,
      found: v.noseGap,
      atMost: WIDEST_GAP,
      basis: basis.wheelRest,
      fix: fix.nose,
      parameter: parameterPath('noseGap'),
    }),
    ...(strip
      ? [
          worst(
            {
              id: 'range/lip/room',
              label: labels.room,
              atLeast: v.runningClearance,
              basis: basis.setting,
              fix: fix.room,
              parameter: parameterPath('lipThickness'),
            },
            plan.settings,
            (s) => spare(s) - flutter - splice,
          ),
        ]
      : []),
    worst(
      {
        id: 'range/lip/corner',
        label: labels.corner,
        atLeast: CORNER_MARGIN,
        basis: basis.geometry,
        fix: fix.corner,
        parameter: parameterPath('lipHeight'),
      },
      plan.settings,
      ({ blades }) =>
        v.lipHeight - Math.max(...blades.flatMap((b) => b.places.map((p) => p.standing.corner[1]))),
    ),
  ];
};

/** Hollows, webs and lines, blade by blade and side by side. */
const bladeChecks = ({ design, v, plan }: Question): CheckResult[] =>
  plan.lines.flatMap((line) => {
    const { blade, side, places } = line;
    const index = design.blades.findIndex(({ name }) => name === blade);
    const key = `${String(index)}/${side}`;
    const path = `blades.${String(index)}`;
    const [first] = places;
    return [
      rangeCheck({
        id: `range/web/${key}`,
        label: labels.web(blade, sides[side]),
        found: line.web.thickness,
        atLeast: v.leastWeb,
        basis: basis.setting,
        fix: fix.web,
        parameter: `${path}.bevels.${side}.depth`,
        pose: { setting: plan.settings.at(-1)?.id ?? '', blade, u: line.web.u },
      }),
      rangeCheck({
        id: `range/lower/${key}`,
        label: labels.lower(blade, sides[side]),
        found: first ? Math.min(...places.map(({ lower }) => lower)) - v.lipHeight : null,
        atLeast: LIP_MARGIN,
        basis: basis.geometry,
        fix: fix.lower,
        parameter: `${path}.bevels.${side}.centre`,
      }),
      rangeCheck({
        id: `range/guided/${key}`,
        label: labels.guided(blade, sides[side]),
        found: line.guided,
        atLeast: design.grinder.belt.width,
        basis: basis.practice,
        fix: fix.guided,
        parameter: parameterPath('lip'),
      }),
      lineCheck(design, line, { label: labels.line(blade, sides[side]), fix: fix.line }),
    ];
  });

/** The push: the pad inside the window of every pass, what lip and seat then carry. */
const pushChecks = ({ v, plan }: Question): CheckResult[] => [
  worst(
    {
      id: 'force/push/low',
      label: labels.pushLow,
      kind: 'force',
      atLeast: 0,
      basis: basis.plan,
      fix: fix.pushLow,
      parameter: parameterPath('wheelShare'),
    },
    plan.settings,
    ({ push }) => plan.pushHeight - push.from,
  ),
  worst(
    {
      id: 'force/push/high',
      label: labels.pushHigh,
      kind: 'force',
      atLeast: 0,
      basis: basis.plan,
      fix: fix.pushHigh,
      parameter: parameterPath('pushReserve'),
    },
    plan.settings,
    ({ push }) => push.to - plan.pushHeight,
  ),
  worst(
    {
      id: 'force/lip',
      label: labels.reserve,
      kind: 'force',
      unit: 'ratio',
      atLeast: v.pushReserve,
      basis: basis.setting,
      fix: fix.pushHigh,
      parameter: parameterPath('pushReserve'),
    },
    plan.settings,
    ({ push }) => push.lipForceMin,
  ),
  worst(
    {
      id: 'force/seat',
      label: labels.seat,
      kind: 'force',
      unit: 'ratio',
      atLeast: 0,
      basis: basis.plan,
      fix: fix.seat,
      parameter: 'grinder.belt.direction',
    },
    plan.settings,
    ({ push }) => push.seatForceMin,
  ),
];

/** Belt on the wheel to either side of the contact. */
const wrapCheck = ({ plan }: Question): CheckResult =>
  worst(
    {
      id: 'range/wrap',
      label: labels.wrap,
      unit: 'deg',
      atLeast: WRAP_MARGIN,
      basis: basis.practice,
      fix: fix.wrap,
      parameter: 'grinder.wheels',
    },
    plan.settings,
    ({ wrapMargin }) => wrapMargin,
  );

/** Every check that holds one number of plan or layout to its limits. */
export const rangeChecks = (q: Question): CheckResult[] => [
  ...gapChecks(q),
  ...bladeChecks(q),
  ...pushChecks(q),
  wrapCheck(q),
  undercutCheck(q.plan.settings, { label: labels.undercut, fix: fix.undercut }),
  yawCheck(q.context.rig.l.slide.yaw, labels.yaw),
  speedCheck(q.design.grinder),
];
