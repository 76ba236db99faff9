import { acos, atan2, cos, sin } from '../../core/trigonometry.ts';
import { degrees, radians } from '../../core/units.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { inSeat, inSeatBy } from '../in-seat.ts';
import { root } from '../numeric/root.ts';
import { breaks, halfAt, type Circle, type EdgeSection } from './half.ts';

/** The wheel as seat and lip see it, mm. */
export interface WheelAtSeat {
  /** Abrasive radius: wheel and belt. */
  readonly radius: number;
  /** Height of its centre above the seat. */
  readonly drop: number;
}

/**
 * A section standing on its edge, seat frame: y from the wheel's foremost point towards the maker,
 * z up from the seat; mm and degrees.
 */
export interface Standing {
  /** Midplane from the seat's normal, the spine towards the wheel positive. */
  readonly tilt: number;
  /** Where the middle of the edge (h = 0, w = 0) lies. */
  readonly origin: Vec2;
  /** The face of the lip that holds the blade off the wheel. */
  readonly lip: number;
  /** Where the section bears on seat and lip. */
  readonly seat: Vec2;
  readonly touch: Vec2;
  /** The edge's corner on the side of the wheel. */
  readonly corner: Vec2;
}

/** Tilts beyond this lay a blade down, degrees. */
const STEEPEST = 60;

/** Lowest corner of the edge and its depth under the middle of the edge, by the sine of a tilt. */
const footOf = ({ near, far }: EdgeSection, s: number): { w: number; below: number } => {
  const w = s > 0 ? -halfAt(near, 0) : halfAt(far, 0);
  return { w, below: -w * s };
};

/**
 * Where the near side is foremost between the seat and the top of a lip `room` higher than the
 * middle of the edge, by cosine and sine of a tilt.
 */
const foremost = ({ near, height }: EdgeSection, c: number, s: number, room: number): Vec2 => {
  const level = (h: number): number => h * c - halfAt(near, h) * s - room;
  const top = level(height) <= 0 ? height : root(level, 0, height);
  let best: Vec2 = [0, 0];
  let least = Infinity;
  // Between breaks the side is straight or bends away from the wheel: an end is the foremost.
  for (const h of breaks(near, 0, top)) {
    const w = -halfAt(near, h);
    const y = w * c - h * s;
    if (y < least) [best, least] = [[w, h], y];
  }
  return best;
};

/** Stands a section at a tilt on the seat, its middle of the edge at y = `at`. */
const standAt = (section: EdgeSection, tilt: number, at: number, lipHeight: number): Standing => {
  const c = cos(radians(tilt));
  const s = sin(radians(tilt));
  const foot = footOf(section, s);
  const origin: Vec2 = [at, foot.below];
  const touch = inSeatBy(origin, c, s, foremost(section, c, s, lipHeight - foot.below));
  return {
    tilt,
    origin,
    lip: touch[0],
    seat: inSeatBy(origin, c, s, [foot.w, 0]),
    touch,
    corner: inSeatBy(origin, c, s, [-halfAt(section.near, 0), 0]),
  };
};

/**
 * Stands a section so that the wheel cuts the given circle out of it. With the foot of the edge at
 * w_f (its corner towards the wheel where the blade leans that way, the other where it leans back)
 * the height of the wheel's centre alone gives the tilt k,
 *
 *     h cos k - (w + w_f) sin k = dz      k = acos(dz / hypot(h, w + w_f)) - atan2(w + w_f, h)
 *
 * w outwards to the circle's axis, and its distance the place along the seat. The blade leans
 * towards the wheel exactly when h > dz. The lip stands where the section is foremost below the
 * lip's top: at the edge's corner while the face leans away from the wheel, at the top of the lip
 * when it overhangs. Undefined where the wheel stands too high or too low, or the tilt would pass
 * 60 degrees. Derived here; tests tip a dense section by hand.
 */
export const standingFor = (
  section: EdgeSection,
  { h, w, radius }: Circle,
  drop: number,
  lipHeight: number,
): Standing | undefined => {
  const foot = h > drop ? -halfAt(section.near, 0) : halfAt(section.far, 0);
  const ratio = drop / Math.hypot(h, w + foot);
  if (Math.abs(ratio) > 1) return undefined;
  const tilt = degrees(acos(ratio) - atan2(w + foot, h));
  if (Math.abs(tilt) > STEEPEST) return undefined;
  const at = -radius - inSeat([0, 0], tilt, [-w, h])[0];
  return standAt(section, tilt, at, lipHeight);
};
