import { radians } from '../../core/units.ts';

/**
 * Where a fence must hold the centre of the front foot, mm from the abrasive face, so that the
 * finished edge's belt-side corner lies on that face at `angle`.
 *
 * The corner stands `forward` ahead of the foot's centre and `height` above the base when level,
 * so `height` - r_f above that centre. Tilting by a carries it F cos a + (h - r_f) sin a ahead of
 * the centre. The foot's front is r_f nearer. Square platen. Derived here.
 */
export const fenceDistance = (
  forward: number,
  height: number,
  footRadius: number,
  angle: number,
): number => forward * Math.cos(radians(angle)) + (height - footRadius) * Math.sin(radians(angle));

/** Growth of the fence distance with the angle, mm per degree. */
export const fencePerDegree = (
  forward: number,
  height: number,
  footRadius: number,
  angle: number,
): number =>
  radians(1) *
  ((height - footRadius) * Math.cos(radians(angle)) - forward * Math.sin(radians(angle)));
