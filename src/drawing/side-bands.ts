import type { Vec2 } from '../geometry/vector.ts';
import type { Box } from './box.ts';

/**
 * The sides of an area by level bands, each side in every band that it touches: an area is asked
 * about thousands of points, and near the level of each run only a few of its sides. Plain arrays of
 * doubles, of one kind for every area: looking one up costs no more than the number.
 */
export interface SideBands {
  readonly low: number;
  readonly high: number;
  readonly count: number;
  /** Where the sides of each band start in `sides`, and where those of the last one end. */
  readonly starts: Int32Array;
  /** Both ends of every side of a band, one after the other: x, y, x, y. */
  readonly sides: Float64Array;
}

/** Sides in a band, were they even. */
const PER_BAND = 8;

/** The band of a level; levels beyond the area belong to its lowest or highest band. */
export const bandOf = ({ low, high, count }: Omit<SideBands, 'starts' | 'sides'>, y: number) =>
  high > low ? Math.max(0, Math.min(count - 1, Math.floor(((y - low) / (high - low)) * count))) : 0;

/** Both ends of a side of a closed ring. */
const sideAt = (ring: readonly Vec2[], i: number): readonly [Vec2, Vec2] => {
  const a = ring[i] as Vec2;
  return [a, ring[i + 1] ?? ring[0] ?? a];
};

/**
 * The sides of closed rings in a box. A band has the sides within `margin` of its levels, so that
 * what is that near to a point is found in the point's own band.
 */
export const sideBands = (
  rings: readonly (readonly Vec2[])[],
  { y0: low, y1: high }: Box,
  margin = 0,
): SideBands => {
  const total = rings.reduce((sum, ring) => sum + ring.length, 0);
  const count = high > low ? Math.ceil(total / PER_BAND) : 1;
  const levels = { low, high, count };
  const starts = new Int32Array(count + 1);
  for (const ring of rings)
    for (let i = 0; i < ring.length; i += 1) {
      const [a, b] = sideAt(ring, i);
      const to = bandOf(levels, Math.max(a[1], b[1]) + margin);
      for (let n = bandOf(levels, Math.min(a[1], b[1]) - margin); n <= to; n += 1)
        starts[n + 1] = (starts[n + 1] as number) + 4;
    }
  for (let n = 1; n <= count; n += 1) starts[n] = (starts[n] as number) + (starts[n - 1] as number);
  const sides = new Float64Array(starts[count] as number);
  const next = starts.slice();
  for (const ring of rings)
    for (let i = 0; i < ring.length; i += 1) {
      const [a, b] = sideAt(ring, i);
      const to = bandOf(levels, Math.max(a[1], b[1]) + margin);
      for (let n = bandOf(levels, Math.min(a[1], b[1]) - margin); n <= to; n += 1) {
        const at = next[n] as number;
        sides[at] = a[0];
        sides[at + 1] = a[1];
        sides[at + 2] = b[0];
        sides[at + 3] = b[1];
        next[n] = at + 4;
      }
    }
  return { ...levels, starts, sides };
};
