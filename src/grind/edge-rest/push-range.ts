import {
  arctangent,
  cosine,
  hull,
  minus,
  negative,
  over,
  plus,
  point,
  sine,
  squareRoot,
  times,
  type Interval,
} from '../../geometry/interval.ts';
import { TOUCH, type Pushing } from './lip-push.ts';
import type { HollowRange, HollowStanding } from './section-range.ts';
import type { WheelAtSeat } from './stand.ts';
import { touchRange } from './touch-range.ts';

/** The push window of a range of hollows; ranges that hold every case. */
export interface PushRange {
  /** Heights over the seat from which on, and up to which, lip and wheel carry their shares, mm. */
  readonly from: Interval;
  readonly to: Interval;
  /** Force on the seat for one unit of force square to it from the wheel; negative lifts. */
  readonly down: Interval;
}

const EVERYTHING: Interval = [-Infinity, Infinity];
const UNKNOWN: PushRange = { from: EVERYTHING, to: EVERYTHING, down: EVERYTHING };

/** (t - sin t cos t) / (t + sin t cos t) and 2 sin t / (t + sin t cos t), t in degrees. */
const spreadAt = (turn: number): { readonly lean: Interval; readonly length: Interval } => {
  const [s, c] = [sine(point(turn)), cosine(point(turn))];
  const t = over(times(point(turn), point(Math.PI)), point(180));
  const both = plus(t, times(s, c));
  return { lean: over(minus(t, times(s, c)), both), length: over(times(point(2), s), both) };
};

/** Both grow with t up to a quarter turn, so that its ends bound them. */
const spreadOver = ([low, high]: Interval): ReturnType<typeof spreadAt> => {
  const [a, b] = [spreadAt(Math.max(low, TOUCH)), spreadAt(high)];
  return { lean: hull([a.lean, b.lean]), length: hull([a.length, b.length]) };
};

/** Where a range bears, as `Contact` tells it: its middle, and how far it goes to either side. */
interface Middle {
  readonly middle: Interval;
  readonly half: Interval;
}

/** `loadOf` on ranges, at one friction. Everything where the pressure may end within the contact. */
const loadOver = (
  wheel: WheelAtSeat,
  { lip, seat, touch }: Pick<HollowStanding, 'lip' | 'seat' | 'touch'>,
  { middle, half }: Middle,
  friction: number,
): { readonly centre: Interval; readonly down: Interval } => {
  const [radius, drop] = [point(wheel.radius), point(wheel.drop)];
  const [level, up] = [plus(radius, lip), minus(drop, touch)];
  const [c, s] = [cosine(middle), sine(middle)];
  const lever = plus(times(up, c), times(level, s));
  const rise = minus(times(level, c), times(up, s));
  const least = minus(times(lever, cosine(half)), times(rise, sine(half)));
  if (!(least[0] > 0)) return { centre: EVERYTHING, down: EVERYTHING };
  const spread = spreadOver(half);
  const lean = times(spread.lean, over(rise, lever));
  const drag = arctangent(point(friction));
  const direction = minus(plus(middle, arctangent(lean)), drag);
  const slope = over(sine(direction), cosine(direction));
  const stretch = times(cosine(direction), squareRoot(plus(point(1), times(lean, lean))));
  return {
    centre: plus(
      drop,
      times(plus(radius, seat), slope),
      over(times(times(radius, spread.length), sine(drag)), stretch),
    ),
    down: negative(slope),
  };
};

/** What the hollow of a pass before may turn the first touch: it lies below the face. */
const turnedBy = ({ near, depth, wheel }: HollowRange): Interval => {
  const angle = point(near.angle ?? 0);
  const aside = times(depth, over(sine(angle), cosine(angle)));
  const turned = arctangent(over(aside, minus(point(wheel.radius), depth)));
  return hull([negative(turned), point(0), turned]);
};

/**
 * `lipPush` on ranges: the windows of the finished hollows and of their first touch, at either end
 * of the friction. Everything where a hollow may run over its bevel's shoulder.
 */
export const pushRange = (
  range: HollowRange,
  standing: HollowStanding,
  { friction, reserve, wheelShare }: Pushing,
): PushRange => {
  const first = standing.whole ? touchRange(range, standing) : undefined;
  if (first === undefined) return UNKNOWN;
  const whole = { middle: standing.lean, half: standing.turn };
  const touch = { middle: plus(first.lean, turnedBy(range)), half: point(TOUCH) };
  const cases = friction.flatMap((one) => [
    { lip: standing.touch, ...loadOver(range.wheel, standing, whole, one) },
    { lip: first.touch, ...loadOver(range.wheel, first, touch, one) },
  ]);
  const pushFor = (share: number): Interval[] =>
    cases.map(({ centre, lip }) => plus(times(point(1 - share), centre), times(point(share), lip)));
  const ends = (ranges: readonly Interval[], pick: (...all: number[]) => number): Interval => [
    pick(...ranges.map(([low]) => low)),
    pick(...ranges.map(([, high]) => high)),
  ];
  return {
    from: ends(pushFor(1 - wheelShare), Math.max),
    to: ends(pushFor(reserve), Math.min),
    down: ends(
      cases.map(({ down }) => down),
      Math.min,
    ),
  };
};
