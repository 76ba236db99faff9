import {
  arctangent,
  cosine,
  hull,
  minus,
  negative,
  over,
  plus,
  point,
  positive,
  sine,
  squareRoot,
  times,
  type Interval,
} from '../../geometry/interval.ts';
import type { WheelAtSeat } from './stand.ts';

/** One side of a section before it is hollowed: its edge from the midplane, and its flat bevel. */
export interface SideRange {
  readonly edge: Interval;
  /** Degrees; none on the flat of the stock. */
  readonly angle: number | undefined;
}

/** Hollows of a range of places and depths in bars of a range of sizes, mm. */
export interface HollowRange {
  readonly thickness: Interval;
  /** Middle of the hollow above the edge's foot, along the face, and its depth below it. */
  readonly centre: Interval;
  readonly depth: Interval;
  /** Towards the wheel, and towards the maker. */
  readonly near: SideRange;
  readonly far: SideRange;
  readonly wheel: WheelAtSeat;
  readonly lipHeight: number;
}

/** Where such a bar stands and what is hollowed out of it; ranges that hold every case. */
export interface HollowStanding {
  /** The lip's face from the wheel's foremost point. */
  readonly lip: Interval;
  /** Tilt of the midplane, towards the wheel positive, degrees. */
  readonly tilt: Interval;
  /** Height of the edge's corner on the side of the wheel over the seat. */
  readonly corner: Interval;
  /** Lower limit of the hollow from the edge's corner, as calipers show it. */
  readonly lower: Interval;
  /** Height of the upper limit along the midplane. */
  readonly top: Interval;
  /** Directions from the wheel's axis to the ends of the contact, degrees. */
  readonly from: Interval;
  readonly to: Interval;
  /** Least that is left between midplane and hollow; its least value is proved, not its greatest. */
  readonly left: Interval;
}

const TWO = point(2);

/** A straight face: its angle to the midplane, and its distance from it at the edge's height. */
interface Face {
  readonly angle: number;
  readonly out: Interval;
}

/** Faces that a hollow's middle may lie on: the bevel up to its shoulder, the flat above it. */
const facesOf = ({ near, thickness, centre }: HollowRange): Face[] => {
  const flat: Face = { angle: 0, out: over(thickness, TWO) };
  if (near.angle === undefined) return [flat];
  const shoulder = over(minus(flat.out, near.edge), sine(point(near.angle)));
  const bevel: Face = { angle: near.angle, out: near.edge };
  if (centre[1] <= shoulder[0]) return [bevel];
  return centre[0] > shoulder[1] ? [flat] : [bevel, flat];
};

const joined = (all: readonly HollowStanding[]): HollowStanding => {
  const of = (key: keyof HollowStanding): Interval => hull(all.map((one) => one[key]));
  return {
    lip: of('lip'),
    tilt: of('tilt'),
    corner: of('corner'),
    lower: of('lower'),
    top: of('top'),
    from: of('from'),
    to: of('to'),
    left: of('left'),
  };
};

/** How far the near side stands before its corner, at most up to the lip's top, mm. */
const overhang = (range: HollowRange, tilt: Interval, corner: Interval): Interval => {
  const { near, thickness, lipHeight } = range;
  const rise = positive(minus(point(lipHeight), corner));
  const lean = (angle: number): Interval => {
    const leaning = plus(tilt, point(angle));
    return times(rise, positive(over(sine(leaning), cosine(leaning))));
  };
  const steep = lean(near.angle ?? 0);
  if (near.angle === undefined) return steep;
  // Up to the shoulder the bevel leans; where that lies below the lip's top, the flat beyond it.
  const shoulder = over(minus(over(thickness, TWO), near.edge), sine(point(near.angle)));
  const height = times(shoulder, cosine(plus(tilt, point(near.angle))));
  return height[0] >= lipHeight ? steep : hull([steep, lean(0)]);
};

/**
 * A section that stands on one corner of its edge. With b from that corner to the face, across the
 * midplane at the edge, the wheel's axis lies p along the face and s square to it from the corner,
 *
 *     p = c + b sin a       s = R - d + b cos a       M = sqrt(p^2 + s^2 - dz^2) = R + y
 *
 * and the face leans k + a = atan(p / s) - atan(dz / M) towards the wheel: `edgeSeat`, for either
 * corner. Each of c and d enters once.
 */
const onCorner = (range: HollowRange, face: Face, isNear: boolean): HollowStanding => {
  const { near, far, centre, depth, wheel } = range;
  const [radius, drop] = [point(wheel.radius), point(wheel.drop)];
  const [s, c] = [sine(point(face.angle)), cosine(point(face.angle))];
  const square = minus(radius, depth);
  const isBevel = face.angle === near.angle;
  const b = isNear ? (isBevel ? point(0) : minus(face.out, near.edge)) : plus(face.out, far.edge);
  const along = plus(centre, times(b, s));
  const apart = plus(square, times(b, c));
  const level = squareRoot(
    minus(plus(times(along, along), times(apart, apart)), times(drop, drop)),
  );
  const lean = minus(arctangent(over(along, apart)), arctangent(over(drop, level)));
  const tilt = minus(lean, point(face.angle));
  const width = isNear ? point(0) : plus(near.edge, far.edge);
  const corner = positive(negative(times(width, sine(tilt))));
  const foremost = minus(minus(level, radius), times(width, cosine(tilt)));
  // Half the chord, and the turn of the wheel over it.
  const half = squareRoot(times(depth, plus(radius, square)));
  const turn = arctangent(over(half, square));
  const [lowest, highest] = [minus(centre, half), plus(centre, half)];
  const stock = minus(face.out, near.edge);
  const axis = minus(times(centre, c), times(square, s));
  const under = minus(plus(face.out, times(centre, s), times(square, c)), radius);
  const atLower = plus(face.out, times(lowest, s));
  return {
    lip: minus(foremost, overhang(range, tilt, corner)),
    tilt,
    corner,
    lower: isBevel
      ? lowest
      : hull([lowest, squareRoot(plus(times(centre, centre), times(stock, stock)))]),
    top: times(hull([centre, highest]), c),
    from: hull([minus(lean, turn), lean]),
    to: hull([lean, plus(lean, turn)]),
    // Straight under its axis the wheel is nearest, unless the hollow ends above that.
    left: axis[1] <= times(lowest, c)[0] ? atLower : hull([under, atLower]),
  };
};

/**
 * `standingFor` and `limitsOf` on ranges, for the fresh section of a bar: its face, and the corner
 * it stands on, both ways where the ranges leave them open. The near corner bears while the axis
 * of the hollow lies higher over the edge than the wheel's over the seat. Everything where the
 * wheel may stand too high or too low. A hollow that runs past its bevel's shoulder is taken to
 * reach as far as it would without it: its lower limit stays, its upper is no higher.
 */
export const hollowRange = (range: HollowRange): HollowStanding => {
  const { centre, depth, wheel } = range;
  return joined(
    facesOf(range).flatMap((face) => {
      const [s, c] = [sine(point(face.angle)), cosine(point(face.angle))];
      const h = minus(times(centre, c), times(minus(point(wheel.radius), depth), s));
      return [
        ...(h[1] > wheel.drop ? [onCorner(range, face, true)] : []),
        ...(h[0] <= wheel.drop ? [onCorner(range, face, false)] : []),
      ];
    }),
  );
};
