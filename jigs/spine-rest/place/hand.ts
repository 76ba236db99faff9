import { cos, radians, sin, type SpineRestPlan, tan } from '../../../src/family/index.ts';
import { PAD } from '../../shared/layout/sizes.ts';

type PlanSetting = SpineRestPlan['settings'][number];
type Place = PlanSetting['blades'][number]['places'][number];

const STEPS = 400;

/** Half-thickness left at height v by an earlier cut of the far side, if there was one. */
export const farSide = (
  thickness: number,
  height: number,
  earlier: PlanSetting | undefined,
): ((v: number) => number) => {
  if (!earlier) return () => thickness / 2;
  const rise = tan(radians(earlier.angle));
  return (v) => Math.min(thickness / 2, earlier.edgeSide + (height - v) * rise);
};

/** The last setting before this one that ground the other side. */
export const earlierOther = (plan: SpineRestPlan, setting: PlanSetting): PlanSetting | undefined =>
  plan.settings
    .slice(0, plan.settings.indexOf(setting))
    .findLast(({ side }) => side !== setting.side);

/**
 * Where along y the tip of a round nose, `pad` above the seat, touches the blade's far face at one
 * place: the farthest back over the points of that face, y + sqrt(r^2 - (z - pad)^2) - r; nowhere
 * (-Infinity) where the blade is lower.
 */
const contactAt = (
  plan: SpineRestPlan,
  setting: PlanSetting,
  { seating, thickness, height }: Place,
  pad: number,
): number => {
  const half = farSide(thickness, height, earlierOther(plan, setting));
  const r = PAD.noseRadius;
  const [c, s] = [cos(radians(seating.tilt)), sin(radians(seating.tilt))];
  let most = -Infinity;
  for (let i = 0; i <= STEPS; i += 1) {
    const v = (height * i) / STEPS;
    const w = half(v);
    const y = seating.origin[0] - v * s + w * c;
    const d = seating.origin[1] + v * c + w * s - pad;
    if (Math.abs(d) < r) most = Math.max(most, y + Math.sqrt(r * r - d * d) - r);
  }
  return most;
};

/**
 * Where along y the tip of the pad touches the first blade at its bevel place, mm. `from`: the
 * first place that is looked at, mm from the plunge.
 */
export const padContact = (
  plan: SpineRestPlan,
  setting: PlanSetting,
  pad: number,
  from = -Infinity,
): number => {
  const place = setting.blades[0]?.places.find(({ u }) => u >= from);
  return place ? contactAt(plan, setting, place, pad) : 0;
};

/**
 * The same of the push stick where the edge stands at least `margin` above the middle of its nose,
 * which is as far as it may be used: the place of any blade that lets it come nearest the belt, mm.
 */
export const stickContact = (
  plan: SpineRestPlan,
  setting: PlanSetting,
  height: number,
  margin: number,
  from = -Infinity,
): number => {
  const least = height + Math.max(margin, PAD.noseRadius);
  const reaches = setting.blades
    .flatMap(({ places }) => places)
    .filter(({ u, seating }) => u >= from && seating.edge[1] >= least)
    .map((place) => contactAt(plan, setting, place, height));
  return Math.min(padContact(plan, setting, height, from), ...reaches);
};
