import type { Vec2 } from '../geometry/vector.ts';
import type { Box } from './box.ts';

/**
 * The sides of an area by level bands, each side in every band that it touches: an area is asked
 * about thousands of points, and near the level of each run only a few of its sides.
 */
export interface SideBands {
  /** The band of a level; levels beyond the area belong to its lowest or highest band. */
  readonly bandOf: (y: number) => number;
  /** Both ends of every side of a band, one after the other: x, y, x, y. */
  readonly sides: readonly (readonly number[])[];
}

/** Sides in a band, were they even. */
const PER_BAND = 8;

/**
 * The sides of closed rings in a box. A band has the sides within `margin` of its levels, so that
 * what is that near to a point is found in the point's own band.
 */
export const sideBands = (
  rings: readonly (readonly Vec2[])[],
  { y0, y1 }: Box,
  margin = 0,
): SideBands => {
  const total = rings.reduce((sum, ring) => sum + ring.length, 0);
  const count = y1 > y0 ? Math.ceil(total / PER_BAND) : 1;
  const bandOf = (y: number): number =>
    y1 > y0 ? Math.max(0, Math.min(count - 1, Math.floor(((y - y0) / (y1 - y0)) * count))) : 0;
  const sides: number[][] = Array.from({ length: count }, () => []);
  for (const ring of rings)
    ring.forEach((a, i) => {
      const b = ring[i + 1] ?? ring[0] ?? a;
      const last = bandOf(Math.max(a[1], b[1]) + margin);
      for (let n = bandOf(Math.min(a[1], b[1]) - margin); n <= last; n++)
        sides[n]?.push(a[0], a[1], b[0], b[1]);
    });
  return { bandOf, sides };
};
