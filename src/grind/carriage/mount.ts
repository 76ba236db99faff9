import { atan, cos, sin, tan } from '../../core/trigonometry.ts';
import { degrees, radians } from '../../core/units.ts';
import { placeOn, type Place } from '../../blade/place.ts';
import type { Shape } from '../../blade/shape.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import type { Face } from '../section/ground.ts';
import type { Bladework } from '../spine-rest/stations.ts';
import type { Jaw } from './types.ts';

/** A blade on the upright: where its midplane stands ahead of the face it is clamped to. */
export interface Mounting {
  readonly work: Bladework;
  /** One a station of `work`. */
  readonly places: readonly Place[];
  /** Half thickness in the middle of the jaw, at `jawAt` along the blade, mm. */
  readonly half: number;
  readonly jawAt: number;
  /** Growth of the half thickness along the blade under the jaw, mm/mm: the midplane's yaw. */
  readonly yaw: number;
}

/**
 * How the jaw holds a blade: by its ricasso where the jaw reaches one, else by the tang, which is
 * even. The far flank lies on the upright, so a taper under the jaw yaws the midplane by half.
 */
export const mounting = (work: Bladework, jaw: Jaw): Mounting => {
  const { shape, blade, stations } = work;
  const [near, far] = [-jaw.gap, -jaw.gap - jaw.width];
  const places = stations.map(({ u }) => placeOn(shape, u));
  const jawAt = (near + far) / 2;
  if (far < -blade.ricasso - 1e-9)
    return { work, places, half: blade.tang.thickness / 2, jawAt, yaw: 0 };
  const { value } = shape.thickness;
  const yaw = (value(near) - value(far)) / (2 * jaw.width);
  return { work, places, half: (value(near) + value(far)) / 4, jawAt, yaw };
};

/** How a blade is turned in its plane: the edge at `at` lies along the stroke. */
export interface Turned {
  readonly at: Vec2;
  /** Direction of the edge there, dv/du as an angle, degrees. */
  readonly turn: number;
}

/** The edge at u along the stroke. */
export const turnedTo = ({ edge }: Shape, u: number): Turned => ({
  at: [u, edge.value(u)],
  turn: degrees(atan(edge.slope(u))),
});

/** The midplane ahead of the upright's face at a place u of a mounted blade, mm. */
export const midplaneAt = ({ half, yaw, jawAt }: Mounting, u: number): number =>
  half + yaw * (u - jawAt);

/** The plane of the belt in blade coordinates: half-thickness left at (u, v) on the belt side. */
export interface Plane {
  readonly at: Vec2;
  readonly edge: number;
  readonly alongU: number;
  readonly alongV: number;
}

/**
 * The belt's plane in a mounted blade. Upright and belt meet at the angle `faceAngle` about the
 * stroke; the blade's edge lies along the stroke at `turned`. A point d below that line is left
 * d tan a thicker, and the yaw k takes k for every mm along the blade:
 *
 *     w = e + tan a ((u - u_0) sin r - (v - v_0) cos r) - k (u - u_0),   r the edge's direction
 *
 * Exact without yaw; with it to the second order of k. Derived here.
 */
export const planeOf = (
  { yaw }: Mounting,
  { at, turn }: Turned,
  edge: number,
  faceAngle: number,
): Plane => {
  const [rise, r] = [tan(radians(faceAngle)), radians(turn)];
  return {
    at,
    edge,
    alongU: rise * sin(r) - yaw,
    alongV: -rise * cos(r),
  };
};

/** The half-thickness a plane leaves at a point (u, v), mm. */
export const leftAt = ({ at, edge, alongU, alongV }: Plane, [u, v]: Vec2): number =>
  edge + alongU * (u - at[0]) + alongV * (v - at[1]);

/** A plane as the face it grinds in the section square to the spine at a place. */
export const faceIn = (plane: Plane, place: Place): Face => {
  const s = radians(place.slope);
  return {
    edge: leftAt(plane, place.edge),
    angle: degrees(atan(plane.alongU * sin(s) - plane.alongV * cos(s))),
  };
};

/**
 * Angle between upright and abrasive face that grinds `angle` in the section square to the spine
 * at a place: `faceIn` solved, tan a = (tan(angle) + k sin s) / cos(s - r).
 */
export const faceAngleFor = (
  { yaw }: Mounting,
  { turn }: Turned,
  place: Place,
  angle: number,
): number => {
  const s = radians(place.slope);
  const rise = tan(radians(angle)) + yaw * sin(s);
  return degrees(atan(rise / cos(s - radians(turn))));
};
