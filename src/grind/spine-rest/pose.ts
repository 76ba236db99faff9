import type { Seating } from './settle.ts';
import type { SpineRestSetting } from './types.ts';

/** How the blade stands while a place is at the belt's middle. */
export interface SettledPose {
  /** The section at that place, its own face reached. */
  readonly seating: Seating;
  /** Tilt of the whole blade there: the least its neighbours under the belt allow, degrees. */
  readonly strokeTilt: number;
  /** Height and thickness of the blade at that place, mm. */
  readonly height: number;
  readonly thickness: number;
}

const mix = (a: number, b: number, x: number): number => a + (b - a) * x;

/**
 * The settled pose of a blade at a setting with place u at the belt's middle, between the two places
 * of the plan around u linearly (they are a seventieth of the blade apart); beyond the last place
 * solved, that one. Undefined when the blade is not ground at this setting.
 */
export const settledPose = (
  setting: SpineRestSetting,
  blade: string,
  u: number,
): SettledPose | undefined => {
  const places = setting.blades.find((at) => at.blade === blade)?.places ?? [];
  const after = places.findIndex((place) => place.u >= u);
  const right = places[after < 0 ? places.length - 1 : after];
  const left = after > 0 ? places[after - 1] : right;
  if (left === undefined || right === undefined) return undefined;
  const x = right.u > left.u ? (u - left.u) / (right.u - left.u) : 0;
  const [p, q] = [left.seating, right.seating];
  const point = (a: readonly [number, number], b: readonly [number, number]) =>
    [mix(a[0], b[0], x), mix(a[1], b[1], x)] as const;
  return {
    seating: {
      setoff: p.setoff,
      lean: p.lean,
      tilt: mix(p.tilt, q.tilt, x),
      angle: mix(p.angle, q.angle, x),
      origin: point(p.origin, q.origin),
      seat: point(p.seat, q.seat),
      step: point(p.step, q.step),
      edge: point(p.edge, q.edge),
    },
    strokeTilt: mix(left.strokeTilt, right.strokeTilt, x),
    height: mix(left.height, right.height, x),
    thickness: mix(left.thickness, right.thickness, x),
  };
};
