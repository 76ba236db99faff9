import { acos, atan2, cos, sin } from '../core/trigonometry.ts';
import { degrees, radians } from '../core/units.ts';
import { add2, distance2, scale2, sub2, type Vec2 } from '../geometry/vector.ts';

/**
 * Something round that a tight belt can lie on, in the plane across the stroke: a circle, or the
 * part of it whose outward normals lie between `from` and `to` (degrees from the first axis).
 */
export interface Support {
  readonly id: string;
  readonly centre: Vec2;
  readonly radius: number;
  readonly only?: { readonly from: number; readonly to: number };
}

/** The stretch of a support on which the belt lies: outward normals from `start` to `end`. */
export interface Wrap {
  readonly support: Support;
  readonly start: number;
  readonly end: number;
}

/** Equality of directions, degrees: over half a metre it is 1e-8 mm. */
const SAME = 1e-6;

/** The unit vector in a direction (degrees). */
export const direction = (angle: number): Vec2 => [cos(radians(angle)), sin(radians(angle))];

/** The point of a circle (grown by `outset`) whose outward normal has this direction. */
export const onRound = (support: Support, angle: number, outset = 0): Vec2 =>
  add2(support.centre, scale2(direction(angle), support.radius + outset));

/** A circle that touches another from within has no tangent of its own. */
const INTERNAL = 1 - 1e-12;

const same = (a: number, b: number): boolean => Math.abs(a - b) < SAME;

/**
 * Direction of the outward normal of the common outer tangent at which a belt that turns
 * anticlockwise round `a` passes on to `b`: with d the distance and f the direction from a to b,
 * d cos(t - f) = r_a - r_b, on the branch where b gains on a. Where one touches the other from
 * within, the belt passes at the ends of the part that can be lain on, and nowhere else.
 */
const passing = (a: Support, b: Support): number | undefined => {
  const [dx, dy] = sub2(b.centre, a.centre);
  const distance = Math.hypot(dx, dy);
  if (distance === 0) return undefined;
  const ratio = (a.radius - b.radius) / distance;
  const facing = degrees(atan2(dy, dx));
  if (Math.abs(ratio) <= INTERNAL) return facing - degrees(acos(ratio));
  if (ratio > 0) return a.only && same(facing, a.only.to) ? facing : undefined;
  const at = facing - 180;
  return b.only && same(cos(radians(at - b.only.from)), 1) ? at : undefined;
};

const within = (support: Support, angle: number): boolean => {
  if (support.only === undefined) return true;
  const { from, to } = support.only;
  const turned = (((angle - from) % 360) + 360) % 360;
  return turned <= to - from + SAME || turned >= 360 - SAME;
};

const reach = (support: Support, angle: number): number => {
  const n = direction(angle);
  return support.centre[0] * n[0] + support.centre[1] * n[1] + support.radius;
};

/**
 * The convex hull of round supports, anticlockwise: which of them a tight belt touches, and
 * between which normals. Wrapping starts at the support that reaches furthest along -x, which no
 * platen does. At least one support must be a whole circle.
 */
export const wrapRound = (supports: readonly Support[]): Wrap[] => {
  const whole = supports.filter((support) => support.only === undefined);
  const first = whole.reduce<Support | undefined>(
    (best, s) => (best === undefined || reach(s, 180) > reach(best, 180) ? s : best),
    undefined,
  );
  if (first === undefined) return [];
  const wraps: Wrap[] = [];
  let current = first;
  let start = 180;
  while (start < 540 - SAME && wraps.length <= 4 * supports.length) {
    let next: { support: Support; at: number; away: number } | undefined;
    for (const support of supports) {
      const tangent = support === current ? undefined : passing(current, support);
      if (tangent === undefined || !within(support, tangent)) continue;
      const ahead = (((tangent - start) % 360) + 360) % 360;
      // A tangent that was just passed is not ahead by a full turn.
      const at = start + (ahead > 360 - SAME ? 0 : ahead);
      const away = distance2(onRound(current, at), onRound(support, at));
      const sooner = next === undefined || at < next.at - SAME;
      // Several supports may lie on one line: the belt meets the nearest first.
      const nearer = next !== undefined && at <= next.at + SAME && away < next.away;
      if (sooner || nearer) next = { support, at, away };
    }
    const end = Math.min(next?.at ?? 540, 540);
    wraps.push({ support: current, start, end });
    start = end;
    current = next?.support ?? current;
  }
  // The first support was entered in the middle of its wrap.
  const last = wraps.at(-1);
  return last === undefined || last.support !== first || wraps.length === 1
    ? wraps
    : [
        { support: first, start: last.start - 360, end: wraps[0]?.end ?? 540 },
        ...wraps.slice(1, -1),
      ];
};
