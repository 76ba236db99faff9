import {
  cosine,
  minus,
  over,
  plus,
  point,
  sine,
  times,
  type Interval,
} from '../../geometry/interval.ts';
import type { Carriage } from './screw.ts';

/** Straight bars of a range of sizes clamped on one carriage; mm and degrees. */
export interface CarriageRange {
  readonly thickness: Interval;
  /** Between midplane and ground face. */
  readonly angle: Interval;
  /** Edge of the belt side from the midplane. */
  readonly edge: Interval;
  /** Midplane ahead of the upright's face: half of what the jaw grips. */
  readonly midplane: Interval;
  readonly carriage: Carriage;
  /** The upright's face ahead of the foot's centre, and the edge above the base, level. */
  readonly forward: number;
  readonly edgeHeight: number;
  readonly lean: number;
}

/** Where carriage and bevel stand; ranges that hold every case. */
export interface CarriageStanding {
  /** Of the carriage against its base, degrees. */
  readonly tilt: Interval;
  /** Extension of the heel screw from level. */
  readonly extension: Interval;
  /** Foot's centre from the abrasive face, and the heel's behind it, along the base. */
  readonly footCentre: Interval;
  readonly heelBehind: Interval;
  /** Lowest and highest contact of belt and bevel above the base, along the face. */
  readonly low: Interval;
  readonly high: Interval;
  /** Height of the bevel along the midplane. */
  readonly bevel: Interval;
}

const TWO = point(2);

/**
 * `screwExtension`, `fenceDistance`, `heelBehind` and `onStage` on ranges, for a bar without yaw
 * whose edge lies along the stroke. With a the bevel, q = a + t the tilt and F the edge's corner
 * ahead of the foot's centre:
 *
 *     z = L tan q + (r_f - r_t) (1 / cos q - 1)       heel = L / cos q + (r_f - r_t) tan q
 *     y_c = (F cos a + (h - r_f) sin a - r_f sin t) / cos t
 *     high = (r_f + (h - r_f) cos q - F sin q) / cos t     low = high - (T/2 - e) / sin a
 *
 * The heel is L cos q + (z + r_f - r_t) sin q with z put in; then each size enters once.
 */
export const carriageRange = (range: CarriageRange): CarriageStanding => {
  const { thickness, angle, edge, midplane, carriage, forward, edgeHeight, lean } = range;
  const [base, foot] = [point(carriage.base), point(carriage.footRadius)];
  const rounds = minus(foot, point(carriage.tipRadius));
  const up = minus(point(edgeHeight), foot);
  const t = point(lean);
  const tilt = plus(angle, t);
  const [sq, cq] = [sine(tilt), cosine(tilt)];
  const ahead = plus(point(forward), midplane, edge);
  const slope = over(sq, cq);
  const onFace = minus(over(thickness, TWO), edge);
  const high = over(minus(plus(foot, times(up, cq)), times(ahead, sq)), cosine(t));
  return {
    tilt,
    extension: plus(times(base, slope), times(rounds, minus(over(point(1), cq), point(1)))),
    footCentre: over(
      minus(plus(times(ahead, cosine(angle)), times(up, sine(angle))), times(foot, sine(t))),
      cosine(t),
    ),
    heelBehind: plus(over(base, cq), times(rounds, slope)),
    low: minus(high, over(onFace, sine(angle))),
    high,
    bevel: over(times(onFace, cosine(angle)), sine(angle)),
  };
};

/**
 * Highest push above the base that leaves `reserve` of it on the heel, at one friction:
 * `highestPush` on ranges, (cos t + k sin t) low + k y_c - reserve heel, k = (sin t - m cos t) /
 * (cos t + m sin t).
 */
export const highestPushRange = (
  { low, footCentre, heelBehind }: CarriageStanding,
  lean: number,
  reserve: number,
  friction: number,
): Interval => {
  const [s, c, m] = [sine(point(lean)), cosine(point(lean)), point(friction)];
  const k = over(minus(s, times(m, c)), plus(c, times(m, s)));
  return minus(
    plus(times(plus(c, times(k, s)), low), times(k, footCentre)),
    times(point(reserve), heelBehind),
  );
};
