import { asin } from '../../core/trigonometry.ts';
import { placeOn } from '../../blade/place.ts';
import type { Shape } from '../../blade/shape.ts';
import { degrees } from '../../core/units.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import type { Seating } from '../../grind/spine-rest/settle.ts';
import type { Reached } from '../hold/hold.ts';
import { outerFace, type Strip } from '../hold/strip.ts';
import type { Pose } from '../pose.ts';

/** A blade's section with its strip on the step, while that place is nearest the belt's middle. */
export interface Stood {
  readonly pose: Pose;
  readonly seating: Seating;
}

/** A point of the blade in the seat frame across the stroke, (y, z). */
export const acrossStroke = ({ m, v0, y, z }: Pose, u: number, v: number, n: number): Vec2 => [
  y[0] + y[1] * (u - m) + y[2] * (v - v0) + y[3] * n,
  z[0] + z[1] * (u - m) + z[2] * (v - v0) + z[3] * n,
];

/** The pose of a stroke in which place u was nearest to the belt's middle. */
export const poseAt = (reached: readonly Reached[], u: number): Pose | undefined =>
  reached.reduce<Pose | undefined>(
    (best, { pose }) =>
      best !== undefined && Math.abs(best.m - u) <= Math.abs(pose.m - u) ? best : pose,
    undefined,
  );

/** What a blade that carries a strip stands on, and what is ground there. */
export interface Standing {
  readonly shape: Shape;
  readonly strip: Strip;
  /** Where the rounded step stands along the stroke, from the belt's middle, mm. */
  readonly at: number;
  readonly setoff: number;
  readonly lean: number;
  /** Length of seat that the spine stands on, mm. */
  readonly seat: number;
}

/** Where the strip's lower outer corner meets the step in a pose, (y, z). */
export const stripContact = ({ strip, at }: Standing, pose: Pose): Vec2 =>
  acrossStroke(pose, pose.m + at, strip.bottom, -outerFace(strip, pose.m + at));

/** The section at place u, its edge at `edge` from the midplane, as it stood in a pose. */
export const seatingIn = (standing: Standing, pose: Pose, u: number, edge: number): Seating => {
  const { shape, setoff, lean, seat } = standing;
  const { spine, edge: low, thickness } = placeOn(shape, u, seat);
  const tilt = degrees(asin(-pose.z[3]));
  return {
    setoff,
    lean,
    tilt,
    angle: tilt - lean,
    origin: acrossStroke(pose, spine[0], spine[1], 0),
    seat: acrossStroke(pose, spine[0], spine[1], thickness / 2),
    step: [setoff, stripContact(standing, pose)[1]],
    edge: acrossStroke(pose, low[0], low[1], edge),
  };
};
