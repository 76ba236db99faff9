import { cos, sin } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { hollowChord } from './chord.ts';

/** A hollow in a flat bevel that ends at the edge; mm and degrees. */
export interface HollowInBevel {
  readonly radius: number;
  readonly depth: number;
  /** Of the hollow's middle above the edge, along the bevel. */
  readonly centre: number;
  /** The bevel: its edge from the midplane and its angle to it. */
  readonly edge: number;
  readonly angle: number;
}

/**
 * Least distance of the hollow from the midplane, mm: half the thinnest web of a blade hollowed
 * alike on both sides. The wheel's axis stands c cos a - (R - d) sin a above the edge and
 * e + c sin a + (R - d) cos a from the midplane; the wheel comes nearest straight under its axis,
 * R nearer, unless the hollow ends above that: then at its lower limit, e + (c - w/2) sin a.
 * Negative when the hollow goes through. Domain: 0 <= d <= R.
 */
export const hollowWeb = ({ radius, depth, centre, edge, angle }: HollowInBevel): number => {
  const [c, s] = [cos(radians(angle)), sin(radians(angle))];
  const lower = centre - hollowChord(radius, depth) / 2;
  const axisAbove = centre * c - (radius - depth) * s;
  const axisOut = edge + centre * s + (radius - depth) * c;
  return axisAbove >= lower * c ? axisOut - radius : edge + lower * s;
};
