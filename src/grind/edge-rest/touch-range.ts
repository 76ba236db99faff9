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
import { facesOf, foremostOf, type HollowRange, type HollowStanding } from './section-range.ts';

/** The first touch of a range of hollows, with the lip where the finished hollow has it. */
export type TouchRange = Pick<HollowStanding, 'lip' | 'seat' | 'touch' | 'lean'>;

/** By how much the edge's corner may stand otherwise at the first touch, mm: along, and higher. */
interface Moved {
  readonly along: Interval;
  readonly up: Interval;
}

const GUESSES = [0.01, 0.05, 0.25] as const;
const ROUNDS = 2;

const isWithin = ([low, high]: Interval, by: number): boolean => low >= -by && high <= by;

/**
 * Seen from the edge's corner towards the wheel, which stands y from the wheel's foremost point and
 * z over the seat, the axis lies p = c + b sin a along the face and s = R - d + b cos a square to it
 * (`onCorner`), so that p^2 + s^2 = (R + y)^2 + (dz - z)^2. At the first touch, where the depth is
 * none and the corner stands e farther and f higher,
 *
 *     p_0^2 = p^2 - d (2 s + d) + e (2 (R + y) + e) - f (2 (dz - z) - f)
 *
 * and e is how much farther the section then stands before its corner, f how much more its tilt
 * raises it. That takes a guess of both to another; where a guess holds all that comes of it, it
 * holds an e and f that come of themselves (Brouwer), and there are no others: a lip nearer the
 * wheel lowers the touch. Undefined where no guess does, or where the face is left open.
 */
export const touchRange = (
  range: HollowRange,
  { lip, tilt, corner }: HollowStanding,
): TouchRange | undefined => {
  const { near, centre, depth, wheel, width } = range;
  const [face, ...others] = facesOf(range);
  if (face === undefined || others.length > 0) return undefined;
  const [s, c] = [sine(point(face.angle)), cosine(point(face.angle))];
  const b = face.angle === (near.angle ?? 0) ? point(0) : minus(face.out, near.edge);
  const [p, apart] = [plus(centre, times(b, s)), plus(point(wheel.radius), times(b, c))];
  const { before } = foremostOf(range, tilt, corner);
  const level = plus(point(wheel.radius), lip, before);
  const under = minus(point(wheel.drop), corner);
  // d (2 s + d), as s = `apart` - d.
  const deepened = times(depth, minus(times(point(2), apart), depth));
  const at = ({ along, up }: Moved): { readonly next: Moved; readonly found: TouchRange } => {
    const square = plus(
      minus(times(p, p), deepened),
      times(along, plus(times(point(2), level), along)),
      negative(times(up, minus(times(point(2), under), up))),
    );
    const m = plus(level, along);
    const lean = minus(
      arctangent(over(squareRoot(square), apart)),
      arctangent(over(minus(under, up), m)),
    );
    const turned = minus(lean, point(face.angle));
    const raised = positive(negative(times(width, sine(turned))));
    const most = foremostOf(range, turned, raised);
    const y = minus(m, point(wheel.radius));
    const other = plus(y, times(width, cosine(turned)));
    return {
      next: { along: minus(most.before, before), up: minus(raised, corner) },
      found: {
        lip,
        seat: turned[0] > 0 ? y : turned[1] < 0 ? other : hull([y, other]),
        touch: most.height,
        lean,
      },
    };
  };
  for (const guess of GUESSES) {
    const { next } = at({ along: [-guess, guess], up: [-guess, guess] });
    if (!isWithin(next.along, guess) || !isWithin(next.up, guess)) continue;
    // What holds them gives what holds them, nearer and nearer.
    const nearer = Array.from({ length: ROUNDS }).reduce<Moved>((moved) => at(moved).next, next);
    return at(nearer).found;
  }
  return undefined;
};
