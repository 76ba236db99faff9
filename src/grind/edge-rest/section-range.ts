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
  /** Of the edge, over both sides: nearer known than what they say of it one by one. */
  readonly width: Interval;
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
  /** Where the edge bears on the seat, from the wheel's foremost point. */
  readonly seat: Interval;
  /** Height of the lip's contact over the seat. */
  readonly touch: Interval;
  /** Direction from the wheel's axis square to the face, degrees, and how far to either side of it
   * a hollow reaches that ends within its face. */
  readonly lean: Interval;
  readonly turn: Interval;
  /** Whether every hollow of the range is shown to end within its face. */
  readonly whole: boolean;
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
export const facesOf = ({ near, thickness, centre }: HollowRange): Face[] => {
  const flat: Face = { angle: 0, out: over(thickness, TWO) };
  if (near.angle === undefined) return [flat];
  const shoulder = over(minus(flat.out, near.edge), sine(point(near.angle)));
  const bevel: Face = { angle: near.angle, out: near.edge };
  if (centre[1] <= shoulder[0]) return [bevel];
  return centre[0] > shoulder[1] ? [flat] : [bevel, flat];
};

const joined = (all: readonly HollowStanding[]): HollowStanding => {
  const of = (key: Exclude<keyof HollowStanding, 'whole'>): Interval =>
    hull(all.map((one) => one[key]));
  return {
    whole: all.every(({ whole }) => whole),
    seat: of('seat'),
    touch: of('touch'),
    lean: of('lean'),
    turn: of('turn'),
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

/** From the edge's foot along the bevel, where there is one, to its shoulder, mm. */
const shoulderOf = ({ near, thickness }: HollowRange): Interval | undefined =>
  near.angle === undefined
    ? undefined
    : over(minus(over(thickness, TWO), near.edge), sine(point(near.angle)));

/** Where the near side is foremost below the lip's top: how far before its corner, how high, mm. */
export const foremostOf = (
  range: HollowRange,
  tilt: Interval,
  corner: Interval,
): { readonly before: Interval; readonly height: Interval } => {
  const { near, lipHeight } = range;
  const rise = positive(minus(point(lipHeight), corner));
  const leaning = plus(tilt, point(near.angle ?? 0));
  const at = (turned: Interval): Interval =>
    times(rise, positive(over(sine(turned), cosine(turned))));
  const shoulder = shoulderOf(range);
  // Up to the shoulder the bevel leans; where that lies below the lip's top, the flat beyond it.
  const isStraight = shoulder === undefined || times(shoulder, cosine(leaning))[0] >= lipHeight;
  const [top, between] = [point(lipHeight), hull([corner, point(lipHeight)])];
  return {
    before: isStraight ? at(leaning) : hull([at(leaning), at(tilt)]),
    height: !isStraight ? between : leaning[0] > 0 ? top : leaning[1] < 0 ? corner : between,
  };
};

/** A section on one corner of its edge, as its wheel's axis is seen from there: `onCorner`. */
interface Seen {
  readonly face: Face;
  readonly isNear: boolean;
  /** From that corner to the face, across the midplane at the edge. */
  readonly b: Interval;
  readonly along: Interval;
  readonly apart: Interval;
  readonly level: Interval;
}

const seenFrom = (range: HollowRange, face: Face, isNear: boolean): Seen => {
  const { near, far, centre, depth, wheel } = range;
  const [s, c] = [sine(point(face.angle)), cosine(point(face.angle))];
  const isOwn = face.angle === (near.angle ?? 0);
  const across = isOwn ? range.width : plus(face.out, far.edge);
  const b = isNear ? (isOwn ? point(0) : minus(face.out, near.edge)) : across;
  const along = plus(centre, times(b, s));
  const apart = plus(minus(point(wheel.radius), depth), times(b, c));
  const drop = point(wheel.drop);
  const level = squareRoot(
    minus(plus(times(along, along), times(apart, apart)), times(drop, drop)),
  );
  return { face, isNear, b, along, apart, level };
};

/**
 * Every face and corner that a range leaves open. The near corner bears while the axis of the
 * hollow lies higher over the edge than the wheel's over the seat.
 */
const seenOf = (range: HollowRange): Seen[] => {
  const { centre, depth, wheel } = range;
  return facesOf(range).flatMap((face) => {
    const [s, c] = [sine(point(face.angle)), cosine(point(face.angle))];
    const h = minus(times(centre, c), times(minus(point(wheel.radius), depth), s));
    return [
      ...(h[1] > wheel.drop ? [seenFrom(range, face, true)] : []),
      ...(h[0] <= wheel.drop ? [seenFrom(range, face, false)] : []),
    ];
  });
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
const onCorner = (range: HollowRange, seen: Seen): HollowStanding => {
  const { near, centre, depth, wheel } = range;
  const { face, isNear, along, apart, level } = seen;
  const [radius, drop] = [point(wheel.radius), point(wheel.drop)];
  const [s, c] = [sine(point(face.angle)), cosine(point(face.angle))];
  const square = minus(radius, depth);
  const isBevel = face.angle === near.angle;
  const lean = minus(arctangent(over(along, apart)), arctangent(over(drop, level)));
  const tilt = minus(lean, point(face.angle));
  const width = isNear ? point(0) : range.width;
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
  const most = foremostOf(range, tilt, corner);
  const shoulder = shoulderOf(range);
  const whole =
    shoulder === undefined || (isBevel ? highest[1] <= shoulder[0] : lowest[0] >= shoulder[1]);
  return {
    lip: minus(foremost, most.before),
    tilt,
    seat: minus(level, radius),
    touch: most.height,
    lean,
    turn,
    whole,
    corner,
    lower: isBevel
      ? lowest
      : hull([lowest, squareRoot(plus(times(centre, centre), times(stock, stock)))]),
    top: times(hull([centre, highest]), c),
    from: whole ? minus(lean, turn) : hull([minus(lean, turn), lean]),
    to: whole ? plus(lean, turn) : hull([lean, plus(lean, turn)]),
    // Straight under its axis the wheel is nearest, unless the hollow ends above that.
    left: axis[1] <= times(lowest, c)[0] ? atLower : hull([under, atLower]),
  };
};

/**
 * `standingFor` and `limitsOf` on ranges, for the fresh section of a bar: its face, and the corner
 * it stands on, both ways where the ranges leave them open. Everything where the wheel may stand
 * too high or too low. A hollow that runs past its bevel's shoulder is taken to reach as far as it
 * would without it: its lower limit stays, its upper is no higher.
 */
export const hollowRange = (range: HollowRange): HollowStanding =>
  joined(seenOf(range).map((seen) => onCorner(range, seen)));
