import { cos, sin } from '../core/trigonometry.ts';
import { radians } from '../core/units.ts';
import type { Vec2 } from '../geometry/vector.ts';

/** `inSeat` by cosine and sine of the tilt. */
export const inSeatBy = (origin: Vec2, c: number, s: number, [w, along]: Vec2): Vec2 => [
  origin[0] - along * s + w * c,
  origin[1] + along * c + w * s,
];

/**
 * A point of a section in the seat frame, mm: w across the blade, away from the belt positive, and
 * along it away from what stands on the seat (v from the spine, h from the edge). The section's own
 * middle there lies at `origin`; its midplane is tilted from the seat's normal by `tilt` degrees, what
 * is up towards the belt positive.
 */
export const inSeat = (origin: Vec2, tilt: number, point: Vec2): Vec2 =>
  inSeatBy(origin, cos(radians(tilt)), sin(radians(tilt)), point);
