import { cos, radians, sin, tan } from '../../../src/family/index.ts';
import { middle, type Needs } from '../needs.ts';
import { rangeOf } from '../needs-of.ts';

/** Where a stop collar meets the end of what a blade rests on. */
export interface AtStop {
  /** Half the length of the seat, where the stop's side is, mm. */
  readonly half: number;
  /** From the plunge to the place at the belt's middle, mm. */
  readonly u: number;
  /** How far below the seat collar and stop face each other, mm. */
  readonly deep: number;
  /** From the blade's middle to the inner and the outer face of a plate of the collar, mm. */
  readonly inner: number;
  readonly outer: number;
  readonly stop: Needs['stop'];
}

/**
 * From the plunge to the face of the stop collar that meets the end of the seat, mm. The face stands
 * square to u: of a blade whose u axis lies aslant by p it crosses the blade's line on the seat at
 * (D + u) / cos p from the belt's middle, and h beyond that at h tan p less, so that its lower corner
 * meets first where the tip is raised and its upper one where it is lowered:
 * D = cos p (half + max(0, h tan p)) - u. A blade tilted by t, its middle z above the seat, has the
 * foot of the stop at h = (deep + z + inner sin t) / cos t along the plate towards the belt, of which
 * what is farther out passes the stop, and its top at (z - outer sin t) / cos t along the other.
 * Blades that differ share the middle.
 */
export const stopDistance = ({ half, u, deep, inner, outer, stop }: AtStop): number => {
  const ends = stop.stands.flatMap(({ tilt, rise }) => {
    const [s, c] = [Math.abs(sin(radians(tilt))), cos(radians(tilt))];
    return [(rise - outer * s) / c, (deep + rise + inner * s) / c];
  });
  const more = stop.slopes.map((slope) => {
    const [c, t] = [cos(radians(slope)), tan(radians(slope))];
    return half * (c - 1) + c * Math.max(0, ...ends.map((h) => h * t));
  });
  return half - u + middle(rangeOf(more));
};
