import { cos, sin } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';

/**
 * Where a fence must hold the centre of the front foot, mm from the abrasive face along the base,
 * so that the finished edge's belt-side corner lies on that face when the blade stands at `angle`
 * to it.
 *
 * Level, the corner stands `forward` ahead of the foot's centre and `height` above the base, so
 * `height` - r_f above that centre. A platen that leans back by t (`lean`) asks for the tilt
 * q = a + t; the corner is then at y = y_c - F cos q - (h - r_f) sin q and
 * z = r_f + (h - r_f) cos q - F sin q, and the face is y cos t + z sin t = 0. Hence
 *
 *     y_c = (F cos a + (h - r_f) sin a - r_f sin t) / cos t
 *
 * and y_c = F cos a + (h - r_f) sin a on a square platen. The foot's front is r_f nearer.
 * Domain: -90 < t < 90. Derived here.
 */
export const fenceDistance = (
  forward: number,
  height: number,
  footRadius: number,
  angle: number,
  lean = 0,
): number => {
  const [c, s] = [cos(radians(angle)), sin(radians(angle))];
  const t = radians(lean);
  return (forward * c + (height - footRadius) * s - footRadius * sin(t)) / cos(t);
};

/** Growth of the fence distance with the angle, mm per degree. */
export const fencePerDegree = (
  forward: number,
  height: number,
  footRadius: number,
  angle: number,
  lean = 0,
): number =>
  (radians(1) * ((height - footRadius) * cos(radians(angle)) - forward * sin(radians(angle)))) /
  cos(radians(lean));

/** `fenceDistance` solved for F: how far ahead a corner on the face stands, mm. */
export const forwardAt = (
  distance: number,
  height: number,
  footRadius: number,
  angle: number,
  lean = 0,
): number => {
  const [c, s] = [cos(radians(angle)), sin(radians(angle))];
  const t = radians(lean);
  return (distance * cos(t) + footRadius * sin(t) - (height - footRadius) * s) / c;
};
