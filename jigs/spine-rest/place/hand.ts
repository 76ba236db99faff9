import {
  cos,
  radians,
  sin,
  type SpineRestPlan,
  tan,
  type Vec2,
} from '../../../src/family/index.ts';
import { PAD } from '../../shared/layout/sizes.ts';
import { leastOver } from '../over-places.ts';

type PlanSetting = SpineRestPlan['settings'][number];
type Place = PlanSetting['blades'][number]['places'][number];

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

/** Corners of a blade's far face as they lie above the seat, from the spine to the edge. */
const farCorners = (
  { seating: { origin, tilt }, thickness, height }: Place,
  earlier: PlanSetting | undefined,
): readonly Vec2[] => {
  const half = farSide(thickness, height, earlier);
  const rise = earlier ? tan(radians(earlier.angle)) : 0;
  const shoulder =
    earlier && rise > 0 ? height - (thickness / 2 - earlier.edgeSide) / rise : height;
  const vs = shoulder > 0 && shoulder < height ? [0, shoulder, height] : [0, height];
  const [c, s] = [cos(radians(tilt)), sin(radians(tilt))];
  return vs.map((v) => [origin[0] - v * s + half(v) * c, origin[1] + v * c + half(v) * s]);
};

/**
 * Where along y the tip of a round nose, `pad` above the seat, touches the blade's far face at one
 * place: the farthest back over the points of that face, y + sqrt(r^2 - (z - pad)^2) - r; nowhere
 * (-Infinity) where the blade is lower. On a straight stretch y = y0 + k z that is greatest where
 * the nose has the stretch's slope, z - pad = r k / sqrt(1 + k^2), or at the end nearest to there.
 */
const contactAt = (place: Place, earlier: PlanSetting | undefined, pad: number): number => {
  const r = PAD.noseRadius;
  let farthest = -Infinity;
  farCorners(place, earlier).forEach(([y1, z1], i, corners) => {
    const [y0, z0] = corners[i - 1] ?? [y1, z1];
    const [low, high] = [Math.max(Math.min(z0, z1) - pad, -r), Math.min(Math.max(z0, z1) - pad, r)];
    if (low > high || z0 === z1) return;
    const k = (y1 - y0) / (z1 - z0);
    const d = Math.min(high, Math.max(low, (r * k) / Math.hypot(1, k)));
    farthest = Math.max(farthest, y0 + k * (d + pad - z0) + Math.sqrt(r * r - d * d) - r);
  });
  return farthest;
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
  return place ? contactAt(place, earlierOther(plan, setting), pad) : 0;
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
  const earlier = earlierOther(plan, setting);
  const nearest = leastOver([setting], (place) =>
    place.u >= from && place.seating.edge[1] >= least
      ? contactAt(place, earlier, height)
      : Infinity,
  );
  return Math.min(padContact(plan, setting, height, from), nearest);
};
