import {
  cosine,
  minus,
  negative,
  over,
  plus,
  point,
  sine,
  times,
  type Interval,
} from '../../geometry/interval.ts';

/** Fresh bars of a range of sizes, ground to a range of angles; mm and degrees. */
export interface SectionRange {
  readonly height: Interval;
  readonly thickness: Interval;
  /** Between midplane and ground face. */
  readonly angle: Interval;
  /** Edge of the belt side from the midplane. */
  readonly edge: Interval;
  readonly spineRadius: Interval;
  readonly lean: number;
}

/** Where such a bar stands; ranges that hold every case. */
export interface StandingRange {
  readonly setoff: Interval;
  /** Near spine corner on the seat, from the abrasive face along the seat. */
  readonly corner: Interval;
  /** Height over the seat at which the spine touches the step. */
  readonly step: Interval;
  /** Height of the edge over the seat. */
  readonly edge: Interval;
  /** Height of the bevel along the midplane, on the planes of face and flank. */
  readonly bevel: Interval;
}

const TWO = point(2);

/**
 * The closed form of `settle` for a bar with both spine corners rounded by r, on ranges. With
 * h = T/2, q = a + t, s = sin q and c = cos q the edge stands at height
 *
 *     z = (h - r - e) s + r + (H - r) c
 *
 * and, far and near corner written into the setoff so that each size enters once,
 *
 *     setoff = (h - r + e) c + r + (H - r) s - z tan t
 *     corner = (e - h + r) c + (H - r) s - z tan t       step = 2 (h - r) s + r
 *
 * with b = (h - e) / tan a. Exact while the bevel of the other side leaves the far corner: b < H - r.
 */
export const standingRange = (range: SectionRange): StandingRange => {
  const { height, thickness, angle, edge, spineRadius, lean } = range;
  const [r, t] = [spineRadius, point(lean)];
  const tilt = plus(angle, t);
  const [s, c] = [sine(tilt), cosine(tilt)];
  const half = over(thickness, TWO);
  const inner = minus(half, r);
  const rise = times(minus(height, r), s);
  const top = plus(times(minus(inner, edge), s), r, times(minus(height, r), c));
  const slope = over(sine(t), cosine(t));
  const back = lean === 0 ? point(0) : negative(times(top, slope));
  return {
    setoff: plus(times(plus(inner, edge), c), r, rise, back),
    corner: plus(times(minus(edge, inner), c), rise, back),
    step: plus(times(times(TWO, inner), s), r),
    edge: top,
    bevel: over(times(minus(half, edge), cosine(angle)), sine(angle)),
  };
};

/**
 * From the resultant of the belt's pressure (`pressureCentre`) up to the edge, for a bevel of
 * length L whose upper end lies z over the pivot:
 *
 *     z - (2/3) (z^2 + z f + f^2) / (z + f) = L (z - 2 L / 3) / (2 z - L)      f = z - L
 *
 * Its derivatives are L^2 / (3 (2 z - L)^2) by z and 2 (z - L) (z - L / 3) / (2 z - L)^2 by L: it
 * grows with both for 0 <= L <= z, and beyond, where only the part over the pivot bears, it stays
 * z / 3. So the ends of the ranges bound it.
 */
const overCentre = (length: Interval, above: Interval): Interval => {
  const at = (l: number, z: number): Interval => {
    const [x, y] = [point(Math.min(l, z)), point(z)];
    const two = times(TWO, y);
    return over(times(x, minus(y, times(TWO_THIRDS, x))), minus(two, x));
  };
  return [at(length[0], above[0])[0], at(length[1], above[1])[1]];
};

const TWO_THIRDS = over(TWO, point(3));

/**
 * Room for the push along the abrasive face: from the lowest that leaves the step `reserve` of it
 * while the whole bevel bears (`pushFor`), at one friction, up to the edge. Everything where the
 * edge cannot be shown to lie over the step.
 */
export const pushRoom = (
  { angle, lean }: SectionRange,
  { corner, step, edge, bevel }: StandingRange,
  reserve: number,
  friction: number,
): Interval => {
  const [s, c, m] = [sine(point(lean)), cosine(point(lean)), point(friction)];
  const high = over(edge, c);
  const length = over(bevel, cosine(angle));
  const above = minus(high, minus(times(step, c), times(corner, s)));
  if (above[0] <= 0 || length[0] < 0) return [-Infinity, Infinity];
  const up = overCentre(length, above);
  const foot = negative(times(corner, s));
  const fromFoot = minus(minus(high, up), foot);
  // A cos t = k (h_c - h_n - m d) with k = cos t / (cos t + m sin t); 1 - k is small.
  const share = plus(c, times(m, s));
  const drag = times(m, times(corner, c));
  const lever = over(minus(fromFoot, drag), share);
  return plus(
    up,
    times(over(times(m, s), share), fromFoot),
    times(over(c, share), drag),
    negative(times(point(reserve), minus(lever, step))),
  );
};
