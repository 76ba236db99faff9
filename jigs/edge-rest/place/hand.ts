import { halfAt, inSeat, type EdgeRestPlan } from '../../../src/family/index.ts';
import { PAD } from '../../shared/layout/sizes.ts';

type PlanSetting = EdgeRestPlan['settings'][number];

const STEPS = 400;

/**
 * Where along y the tip of the pad stands when its round nose, `height` above the seat, touches the
 * far side of the first blade: the farthest back over the points of that side,
 * y + sqrt(r^2 - (z - height)^2) - r.
 */
export const padContact = ({ blades }: PlanSetting, height: number): number => {
  const place = blades[0]?.places[0];
  if (!place) return 0;
  const { section, standing } = place;
  const r = PAD.noseRadius;
  const reaches = Array.from({ length: STEPS + 1 }, (_, i) => {
    const h = (section.height * i) / STEPS;
    const [y, z] = inSeat(standing.origin, standing.tilt, [halfAt(section.far, h), h]);
    const d = z - height;
    return Math.abs(d) < r ? y + Math.sqrt(r * r - d * d) - r : -Infinity;
  });
  return Math.max(...reaches);
};
