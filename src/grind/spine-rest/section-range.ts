import {
  cosine,
  greater,
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

/** (a^2 + a b + b^2) / (a + b): it grows with either, for a and b not negative. */
const mean = ([a0, a1]: Interval, [b0, b1]: Interval): Interval => {
  const at = (a: number, b: number): Interval => {
    const [x, y] = [point(a), point(b)];
    return over(plus(times(x, x), times(x, y), times(y, y)), plus(x, y));
  };
  return [at(a0, b0)[0], at(a1, b1)[1]];
};

const TWO_THIRDS = over(TWO, point(3));

/**
 * Lowest push, along the abrasive face from the seat, that leaves the step `reserve` of it while
 * the whole bevel bears: `pressureCentre` and `pushFor` on ranges, at one friction. Everything
 * where the whole bevel cannot be shown to lie above the seat.
 */
export const pushRange = (
  { angle, lean }: SectionRange,
  { corner, step, edge, bevel }: StandingRange,
  reserve: number,
  friction: number,
): Interval => {
  const [s, c] = [sine(point(lean)), cosine(point(lean))];
  const high = over(edge, c);
  const low = minus(high, over(bevel, cosine(angle)));
  const pivot = minus(times(step, c), times(corner, s));
  const from = minus(greater(low, pivot), pivot);
  const to = minus(high, pivot);
  if (to[0] <= 0) return [-Infinity, Infinity];
  const centre = plus(pivot, times(TWO_THIRDS, mean(to, greater(from, point(0)))));
  const foot = negative(times(corner, s));
  const m = point(friction);
  const lever = over(minus(minus(centre, foot), times(m, times(corner, c))), plus(c, times(m, s)));
  return plus(foot, times(lever, c), times(point(reserve), minus(lever, step)));
};
