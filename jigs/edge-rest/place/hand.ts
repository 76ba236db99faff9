import { halfAt, inSeat, type EdgeRestPlan } from '../../../src/family/index.ts';
import { PAD } from '../../shared/layout/sizes.ts';

type PlanSetting = EdgeRestPlan['settings'][number];
type Place = PlanSetting['blades'][number]['places'][number];

const STEPS = 400;

/**
 * Where along y the tip of a round nose, `height` above the seat, touches the far side of a blade
 * at one place: the farthest back over the points of that side, y + sqrt(r^2 - (z - height)^2) - r.
 */
const contactAt = ({ section, standing }: Place, height: number): number => {
  const r = PAD.noseRadius;
  const reaches = Array.from({ length: STEPS + 1 }, (_, i) => {
    const h = (section.height * i) / STEPS;
    const [y, z] = inSeat(standing.origin, standing.tilt, [halfAt(section.far, h), h]);
    const d = z - height;
    return Math.abs(d) < r ? y + Math.sqrt(r * r - d * d) - r : -Infinity;
  });
  return Math.max(...reaches);
};

/** Where along y the tip of the pad touches the first blade at its bevel place, mm. */
export const padContact = ({ blades }: PlanSetting, height: number): number => {
  const place = blades[0]?.places[0];
  return place ? contactAt(place, height) : 0;
};

/** The same of the push stick at the place of any blade that lets it come nearest the belt, mm. */
export const stickContact = (setting: PlanSetting, height: number): number => {
  const reaches = setting.blades
    .flatMap(({ places }) => places)
    .map((place) => contactAt(place, height))
    .filter(Number.isFinite);
  return Math.min(padContact(setting, height), ...reaches);
};
