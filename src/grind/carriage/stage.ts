import { cos, sin } from '../../core/trigonometry.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { radians } from '../../core/units.ts';
import type { Carriage } from './screw.ts';

/** The carriage at one setting: the foot from the face, tilted against the base; mm, degrees. */
export interface Stage extends Pick<Carriage, 'footRadius'> {
  readonly footCentre: number;
  readonly tilt: number;
}

/**
 * A point of the level carriage, `ahead` of the foot's centre and `height` above the base, where it
 * stands at a setting: (y from the abrasive face along the base, z above the base).
 */
export const onStage = (
  { footRadius, footCentre, tilt }: Stage,
  ahead: number,
  height: number,
): Vec2 => {
  const [c, s] = [cos(radians(tilt)), sin(radians(tilt))];
  const up = height - footRadius;
  return [footCentre - ahead * c - up * s, footRadius + up * c - ahead * s];
};

/** How far the tip's centre stands behind the foot's along the base, mm: L cos q + lift of the tip. */
export const heelBehind = (
  { base, footRadius, tipRadius }: Carriage,
  extension: number,
  tilt: number,
): number => {
  const [c, s] = [cos(radians(tilt)), sin(radians(tilt))];
  return base * c + (extension + footRadius - tipRadius) * s;
};
