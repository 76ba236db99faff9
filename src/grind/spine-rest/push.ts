import { cos, sin } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { dot2, type Vec2 } from '../../geometry/vector.ts';
import { bearing, type Face } from '../section/ground.ts';
import type { Section } from '../section/section.ts';
import { pressureCentre } from './pressure.ts';
import { inSeat } from '../in-seat.ts';
import type { Seating } from './settle.ts';

/**
 * What a push has to hold; lengths along the abrasive face from the seat (the height above the seat
 * on a square platen) unless said otherwise, mm.
 */
export interface Hold {
  /** Where the resultant of the belt's pressure acts. */
  readonly centre: number;
  /** The near spine corner: along the face, and from it. */
  readonly corner: number;
  readonly cornerDistance: number;
  /** Height of the step's contact above the seat. */
  readonly stepHeight: number;
  readonly lean: number;
}

/** Where the belt bears on a bevel that is reached, along the face; undefined if it misses. */
export const contactOf = (
  section: Section,
  face: Face,
  { origin, tilt, lean }: Seating,
): readonly [low: number, high: number] | undefined => {
  const ends = bearing(section, face);
  if (ends === undefined) return undefined;
  const [low, high] = ends.map((p) => alongFace(inSeat(origin, tilt, p), lean));
  return low === undefined || high === undefined ? undefined : [low, high];
};

/** Distance of a seat-frame point along the abrasive face from the seat. */
export const alongFace = (p: Vec2, lean: number): number =>
  dot2(p, [-sin(radians(lean)), cos(radians(lean))]);

/** The hold on a seated section whose belt contact has its resultant at `centre`. */
export const holdAt = ({ seat, step, lean }: Seating, centre: number): Hold => ({
  centre,
  corner: alongFace(seat, lean),
  cornerDistance: dot2(seat, [cos(radians(lean)), sin(radians(lean))]),
  stepHeight: step[1],
  lean,
});

/** The hold on a section while its whole bevel is worn down at this setting. */
export const holdOn = (seating: Seating, [low, high]: readonly [number, number]): Hold => {
  const pivot = alongFace([seating.seat[0], seating.step[1]], seating.lean);
  return holdAt(seating, pressureCentre(low, high, pivot));
};

/** Lever of the belt about the near corner, per unit of normal force over its share along the seat. */
const lever = ({ centre, corner, cornerDistance, lean }: Hold, friction: number): number =>
  (centre - corner - friction * cornerDistance) /
  (cos(radians(lean)) + friction * sin(radians(lean)));

/**
 * Force of the step as a share of the push, for a push square to the belt at `height`.
 *
 * The belt presses with N and drags with m N (down the face; negative m for a belt that runs up),
 * the step can only push towards the belt, the seat only up; friction on the seat acts along the
 * stroke and is not counted, nor is weight. Along the seat N (cos t + m sin t) = P cos t + S, and
 * about the near corner (d from the belt) N (h_c - h_n - m d) = P (h_p - h_n) + S z_s. Hence, with
 * A = (h_c - h_n - m d) / (cos t + m sin t),
 *
 *     S / P = (h_p - h_n - A cos t) / (A - z_s)
 *
 * Square platen: S >= 0 only for h_p >= h_c - m d. Derived here; tests balance a discretised
 * contact. Domain: A > z_s, that is a contact above the step.
 */
export const stepForce = (hold: Hold, height: number, friction: number): number => {
  const a = lever(hold, friction);
  return (height - hold.corner - a * cos(radians(hold.lean))) / (a - hold.stepHeight);
};

/** Lowest height of a push for which the step carries `reserve` of it; `stepForce` solved for h_p. */
export const pushFor = (hold: Hold, reserve: number, friction: number): number => {
  const a = lever(hold, friction);
  return hold.corner + a * cos(radians(hold.lean)) + reserve * (a - hold.stepHeight);
};

/** Force on the seat as a share of the push: m N cos t - N sin t + P sin t; negative lifts. */
export const seatForce = (hold: Hold, height: number, friction: number): number => {
  const [c, s] = [cos(radians(hold.lean)), sin(radians(hold.lean))];
  const normal = (c + stepForce(hold, height, friction)) / (c + friction * s);
  return normal * (friction * c - s) + s;
};
