import { asin } from '../../core/trigonometry.ts';
import { degrees } from '../../core/units.ts';
import { fenceDistance } from '../../grind/carriage/fence.ts';

/**
 * Length of a block that fits between the abrasive face and the front of the foot standing at its
 * fence, mm: the foot's centre by `fenceDistance`, less the foot's radius.
 */
export const fenceBlock = (
  forward: number,
  height: number,
  footRadius: number,
  angle: number,
): number => fenceDistance(forward, height, footRadius, angle) - footRadius;

/**
 * Angle between the carriage's upright face and the abrasive face from two feelers, degrees,
 * positive when the upper gap is smaller, as when tilted towards the belt. `apart`: distance of
 * the two places along the upright face, mm; the feelers are held square to the abrasive face.
 *
 *     sin a = (g_low - g_high) / apart
 */
export const angleFromFeelers = (low: number, high: number, apart: number): number =>
  degrees(asin((low - high) / apart));
