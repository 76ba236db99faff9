import { cos, halfAt, radians, sin, type EdgeRestPlan } from '../../../src/family/index.ts';
import { PAD } from '../../shared/layout/sizes.ts';

type PlanSetting = EdgeRestPlan['settings'][number];
type Place = PlanSetting['blades'][number]['places'][number];

const STEPS = 400;

/**
 * Where along y the tip of a round nose, `height` above the seat, touches the far side of a blade
 * at one place: the farthest back over the points of that side, y + sqrt(r^2 - (z - height)^2) - r.
 */
const contactAt = ({ section, standing: { origin, tilt } }: Place, height: number): number => {
  const r = PAD.noseRadius;
  const [c, s] = [cos(radians(tilt)), sin(radians(tilt))];
  // No point of the side lies farther from the midplane than the bar's flank.
  const wide = Math.abs(section.far.stock * s);
  let most = -Infinity;
  for (let i = 0; i <= STEPS; i += 1) {
    const h = (section.height * i) / STEPS;
    if (Math.abs(origin[1] + h * c - height) > wide + r) continue;
    const w = halfAt(section.far, h);
    const d = origin[1] + h * c + w * s - height;
    if (Math.abs(d) < r)
      most = Math.max(most, origin[0] - h * s + w * c + Math.sqrt(r * r - d * d) - r);
  }
  return most;
};

/** Where along y the tip of the pad touches the first blade at its bevel place, mm. */
export const padContact = ({ blades }: PlanSetting, height: number): number => {
  const place = blades[0]?.places[0];
  return place ? contactAt(place, height) : 0;
};

/**
 * The same of a round nose of the push block or the push stick, at the place of any blade that lets it
 * come nearest the belt, mm.
 */
export const nearestContact = (setting: PlanSetting, height: number): number => {
  const reaches = setting.blades
    .flatMap(({ places }) => places)
    .map((place) => contactAt(place, height))
    .filter(Number.isFinite);
  return Math.min(padContact(setting, height), ...reaches);
};
