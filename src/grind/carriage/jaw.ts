import { cos, sin } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';

/**
 * Distance of a jaw on the belt side from the abrasive face, mm, when the edge's corner lies on it.
 * The jaw's outer corner stands `below` under the edge along the midplane and `proud` of the
 * blade's flank: (h_e - h_j) sin a - (T/2 - e + j) cos a, with e the edge's half on this side.
 */
export const jawClearance = (
  below: number,
  proud: number,
  halfThickness: number,
  edge: number,
  angle: number,
): number => below * sin(radians(angle)) - (halfThickness - edge + proud) * cos(radians(angle));
