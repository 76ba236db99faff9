import {
  cos,
  radians,
  sin,
  type SpineRestPlan,
  tan,
  type Vec2,
} from '../../../src/family/index.ts';
import { PAD } from '../../shared/layout/sizes.ts';
import type { Pressed } from '../../shared/checks/stroked.ts';
import { isBehind } from '../pads.ts';

type PlanSetting = SpineRestPlan['settings'][number];
type Place = PlanSetting['blades'][number]['places'][number];

/** What an earlier cut left of the far side of a place: half-thickness at the edge, and its growth. */
export interface FarCut {
  readonly edge: number;
  readonly rise: number;
}

/** Half-thickness left at height v of a place by an earlier cut of the far side there, if any. */
export const farSide = (
  { thickness, height }: Pick<Place, 'thickness' | 'height'>,
  cut: FarCut | undefined,
): ((v: number) => number) =>
  cut ? (v) => Math.min(thickness / 2, cut.edge + (height - v) * cut.rise) : () => thickness / 2;

/** The last setting before this one that ground the other side. */
const earlierOther = (plan: SpineRestPlan, setting: PlanSetting): PlanSetting | undefined =>
  plan.settings
    .slice(0, plan.settings.indexOf(setting))
    .findLast(({ side }) => side !== setting.side);

const leftBy = ({ reachedEdge, reachedAngle }: Place): FarCut => ({
  edge: reachedEdge,
  rise: tan(radians(reachedAngle)),
});

type Placed = readonly (readonly [at: Place, cut: FarCut | undefined])[];

/**
 * The places of all blades at a setting, each with what an earlier cut of the far side left there: no
 * more than it left at the blade's first place, where a line is led that does not keep to the plan.
 */
export const placesAt = (plan: SpineRestPlan, setting: PlanSetting): Placed => {
  const other = earlierOther(plan, setting);
  return setting.blades.flatMap(({ blade, places }) => {
    const found = other?.blades.find((one) => one.blade === blade)?.places ?? [];
    const cuts = new Map(found.map((place) => [place.u, leftBy(place)]));
    const first = found[0] && leftBy(found[0]);
    return places.map((place) => {
      const cut = cuts.get(place.u) ?? first;
      return cut && first
        ? ([
            place,
            { edge: Math.min(cut.edge, first.edge), rise: Math.min(cut.rise, first.rise) },
          ] as const)
        : ([place, undefined] as const);
    });
  });
};

/** Corners of a blade's far face as they lie above the seat, from the spine to the edge. */
const farCorners = (place: Place, cut: FarCut | undefined): readonly Vec2[] => {
  const { seating, thickness, height } = place;
  const { origin, tilt } = seating;
  const half = farSide(place, cut);
  const shoulder = cut && cut.rise > 0 ? height - (thickness / 2 - cut.edge) / cut.rise : height;
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
const contactAt = (place: Place, cut: FarCut | undefined, pad: number): number => {
  const r = PAD.noseRadius;
  let farthest = -Infinity;
  farCorners(place, cut).forEach(([y1, z1], i, corners) => {
    const [y0, z0] = corners[i - 1] ?? [y1, z1];
    const [low, high] = [Math.max(Math.min(z0, z1) - pad, -r), Math.min(Math.max(z0, z1) - pad, r)];
    if (low > high || z0 === z1) return;
    const k = (y1 - y0) / (z1 - z0);
    const d = Math.min(high, Math.max(low, (r * k) / Math.hypot(1, k)));
    farthest = Math.max(farthest, y0 + k * (d + pad - z0) + Math.sqrt(r * r - d * d) - r);
  });
  return farthest;
};

/** The same of the first place that is looked at. */
const firstContact = (places: Placed, pad: number, from: number): number => {
  const first = places.find(([{ u }]) => u >= from);
  return first ? contactAt(...first, pad) : 0;
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
): number => firstContact(placesAt(plan, setting), pad, from);

/** The pads of the push block: heights over the seat, what an edge keeps above each, mm. */
export interface Pads {
  /** The pad level with its groove, which is placed in the block. */
  readonly main: number;
  readonly all: readonly number[];
  readonly margin: number;
}

/**
 * How far from where its pad meets the first blade, along y, the block is nearest the belt: at the
 * place of any blade, pushed by the highest pad that it may be pushed with. Before a face that leans
 * the pads do not come to the same y: `pad` is where the main one is as near to the belt as the nearest.
 */
export const blockNearer = (
  plan: SpineRestPlan,
  setting: PlanSetting,
  pads: Pads,
  from = -Infinity,
): Pressed => {
  const places = placesAt(plan, setting);
  const main = firstContact(places, pads.main, from);
  const lean = tan(radians(plan.lean));
  const falling = [...pads.all].sort((a, b) => b - a);
  let [block, tip] = [Infinity, Infinity];
  for (const [place, cut] of places) {
    const pad = falling.find((height) => isBehind(place, height, pads.margin));
    if (place.u < from || pad === undefined) continue;
    const y = contactAt(place, cut, pad);
    block = Math.min(block, y);
    tip = Math.min(tip, y + (pad - pads.main) * lean);
  }
  return Number.isFinite(block) ? { block: block - main, pad: tip - main } : { block: 0, pad: 0 };
};

/**
 * Where along y the nose of the push stick touches a blade where the edge stands at least `margin` above the middle of its nose,
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
  const places = placesAt(plan, setting);
  const reaches = places.flatMap(([place, cut]) =>
    place.u >= from && place.seating.edge[1] >= least ? [contactAt(place, cut, height)] : [],
  );
  return Math.min(firstContact(places, height, from), ...reaches);
};
