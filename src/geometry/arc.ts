import { atan, atan2, cos, sin, tan } from '../core/trigonometry.ts';
import { degrees, radians } from '../core/units.ts';
import { distance2, type Vec2 } from './vector.ts';

/** A circular arc from its start angle through a signed sweep (degrees, anticlockwise positive). */
export interface Arc {
  readonly centre: Vec2;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
}

/** Bulge of an included angle (degrees, signed, magnitude below 360): tan(theta/4). */
export const bulgeOf = (sweep: number): number => tan(radians(sweep) / 4);

/** Included angle of a bulge, degrees, signed. */
export const sweepOf = (bulge: number): number => degrees(4 * atan(bulge));

/** Height of the arc over its chord as a signed bulge times half the chord: h = b c / 2. */
export const sagittaOf = (chord: number, bulge: number): number => (bulge * chord) / 2;

/** What an arc is part of. */
export type Circle = Pick<Arc, 'centre' | 'radius'>;

/** How far the centre of an arc stands on its chord's normal, as a share of the chord. */
export const centreShare = (bulge: number): number => (1 - bulge * bulge) / (4 * bulge);

/**
 * The circle of the arc from a to b with the given bulge (not 0; a and b apart).
 * r = c (1 + b^2) / (4 |b|), and the centre stands on the chord's normal at c (1 - b^2) / (4 b): the
 * geometry of LWPOLYLINE group 42 in the published DXF reference.
 */
export const circleOf = (a: Vec2, b: Vec2, bulge: number): Circle => {
  const share = centreShare(bulge);
  const x = (a[0] + b[0]) * 0.5 + -(b[1] - a[1]) * share;
  const y = (a[1] + b[1]) * 0.5 + (b[0] - a[0]) * share;
  const radius = (distance2(a, b) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return { centre: [x, y], radius };
};

/** The arc from a to b with the given bulge; see `circleOf`. */
export const arcOf = (a: Vec2, b: Vec2, bulge: number): Arc => {
  const { centre, radius } = circleOf(a, b, bulge);
  const start = degrees(atan2(a[1] - centre[1], a[0] - centre[0]));
  return { centre, radius, start, sweep: sweepOf(bulge) };
};

/** Direction of a vector in degrees, -180 to 180. */
export const angleOf = (d: Vec2): number => degrees(atan2(d[1], d[0]));

/** The point at an angle (degrees) on a circle. */
export const onCircle = (centre: Vec2, radius: number, angle: number): Vec2 => [
  centre[0] + radius * cos(radians(angle)),
  centre[1] + radius * sin(radians(angle)),
];

/** Whether the direction `angle` (degrees) from the centre meets the arc. */
export const spans = (arc: Arc, angle: number): boolean => {
  const turned = arc.sweep >= 0 ? angle - arc.start : arc.start - angle;
  return ((turned % 360) + 360) % 360 <= Math.abs(arc.sweep) + 1e-9;
};

/** The anticlockwise start and end angle, degrees from -180 to 180, as drawing formats want. */
export const anticlockwise = (arc: Arc): { readonly start: number; readonly end: number } => {
  // Half a turn, and what rounding makes of it, stays half a turn.
  const wrap = (angle: number): number => angle - 360 * Math.ceil((angle - 180) / 360 - 1e-12);
  const other = arc.start + arc.sweep;
  return arc.sweep >= 0
    ? { start: wrap(arc.start), end: wrap(other) }
    : { start: wrap(other), end: wrap(arc.start) };
};
