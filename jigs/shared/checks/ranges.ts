import {
  beltSpeed,
  type CheckResult,
  cos,
  type Design,
  endsConvex,
  faceDepth,
  type Grinder,
  radians,
  rangeCheck,
  type RangeTerms,
  sin,
} from '../../../src/family/index.ts';
import type { Stand } from '../site.ts';
import { parameterPath, words } from './words.ts';

/** 1/8 inch, the published limit for work rests at abrasive wheels, mm. */
export const WIDEST_GAP = 3.175;
/** The same as a sentence tells it to a maker with feelers, mm. */
export const WIDEST_TOLD = 3.1;
/** Platen that must lie beyond contact and gap, mm. */
export const PLATEN_MARGIN = 2;
/** Yaw that the play of a guide may allow, degrees: about the angle tolerance of a bevel. */
const MOST_YAW = 0.25;

const { basis, labels, fix } = words;

type Identified = { readonly id: string };

/**
 * The check at the setting where a value is worst: the least one, or the greatest with `most`; where
 * it fails, its sentence names that setting. A value that is no number makes the check fail as not
 * computed.
 */
export const worst = <T extends Identified>(
  terms: Omit<RangeTerms, 'found' | 'pose'>,
  settings: readonly T[],
  value: (setting: T) => number,
  most = false,
): CheckResult => {
  const sign = most ? -1 : 1;
  const [first, ...others] = settings.map((s) => ({ value: value(s), setting: s.id }));
  if (!first) return rangeCheck({ ...terms, found: null });
  const found = others.reduce(
    (least, one) =>
      Number.isNaN(least.value) || sign * (one.value - least.value) >= 0 ? least : one,
    first,
  );
  const { setting } = found;
  const check = rangeCheck({ ...terms, found: found.value, pose: { setting } });
  const message = words.worstAt(check.message, setting);
  return check.passed || settings.length === 1 ? check : { ...check, message };
};

/** From the seat along the face to the platen's own measure: z' = (stack - d sin t) / cos t + f. */
export const onPlaten = (
  grinder: Grinder,
  stand: Stand | undefined,
  stack: number,
  alongFace: number,
): number => {
  const t = radians(grinder.lean);
  const depth = stand ? faceDepth(grinder, stand.belt, stand.backing) : 0;
  return (stack - depth * sin(t)) / cos(t) + alongFace;
};

/** The edge at the stop of every pass against the least that is ground edge up. */
export const edgeCheck = (
  settings: readonly (Identified & { readonly edgeStop: number })[],
  least: number,
): CheckResult =>
  worst(
    {
      id: 'range/edge',
      label: labels.edge,
      atLeast: least,
      basis: basis.practice,
      fix: fix.edge,
      parameter: parameterPath('leastEdge'),
    },
    settings,
    ({ edgeStop }) => edgeStop,
  );

/**
 * Every pass before the last against the finished face, scratch and tolerances added. The last one
 * ends at that face: its distance is 0 by what it is, and would hide how near the others come.
 */
export const undercutCheck = (
  settings: readonly (Identified & {
    readonly step: number;
    readonly blades: readonly { readonly undercutMargin: number }[];
  })[],
  own: { readonly label: string; readonly fix: string } = {
    label: labels.undercut,
    fix: fix.undercut,
  },
): CheckResult => {
  const last = Math.max(...settings.map(({ step }) => step));
  const earlier = settings.filter(({ step }) => step !== last);
  return worst(
    { ...own, id: 'range/undercut', atLeast: 0, basis: basis.plan, parameter: 'sequence' },
    // Where one pass is all there is, it stands for itself.
    earlier.length > 0 ? earlier : settings,
    ({ blades }) => Math.min(...blades.map(({ undercutMargin }) => undercutMargin)),
  );
};

/** The grind line of one side of one blade against what its blade file allows. */
export const lineCheck = (
  { blades }: Design,
  line: { readonly blade: string; readonly side: string; readonly greatestDeviation: number },
  own: { readonly label: string; readonly fix: string },
): CheckResult => {
  const index = blades.findIndex(({ name }) => name === line.blade);
  const allowed = blades[index]?.line.allowed;
  return rangeCheck({
    ...own,
    id: `range/line/${String(index)}/${line.side}`,
    found: allowed === undefined ? null : line.greatestDeviation,
    ...(allowed === undefined ? {} : { atMost: allowed }),
    basis: basis.blade,
    parameter: `blades.${String(index)}.line.allowed`,
  });
};

/**
 * The same on a fixture that is planned for a flat face: behind a convex one a bevel lies as it leans
 * there, by degrees where the radius is small, and where the line runs is not known.
 */
export const flatLineCheck: typeof lineCheck = (design, line, own) =>
  endsConvex(design.grinder, design.sequence)
    ? lineCheck(design, { ...line, greatestDeviation: NaN }, { ...own, fix: fix.convexLine })
    : lineCheck(design, line, own);

/** What the play of the guide lets the slide yaw. */
export const yawCheck = (yaw: number, label: string): CheckResult =>
  rangeCheck({
    id: 'range/yaw',
    label,
    unit: 'deg',
    found: yaw,
    atMost: MOST_YAW,
    basis: basis.practice,
    fix: fix.yaw,
    parameter: parameterPath('guidePlay'),
  });

/** Speed of the belt against the ratings of belt and wheels. */
export const speedCheck = (grinder: Grinder): CheckResult =>
  rangeCheck({
    id: 'range/speed',
    label: labels.speed,
    unit: 'm/s',
    found: beltSpeed(grinder),
    atMost: Math.min(grinder.drive.beltRating, grinder.drive.wheelRating),
    basis: basis.rating,
    fix: fix.speed,
    parameter: 'grinder.drive',
  });
