import { atan } from '../core/trigonometry.ts';
import { degrees } from '../core/units.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { Blade } from './schema.ts';
import { shapeOf, type Shape } from './shape.ts';

/** The blade at one place, in the section square to its spine there. Lengths mm, angles degrees. */
export interface Place {
  /** Where along the straight spine line the section's foot is. */
  readonly u: number;
  /** Foot of the section on the spine (or on the chord of a hollow spine), (u, v). */
  readonly spine: Vec2;
  /** Where the section meets the edge, (u, v). */
  readonly edge: Vec2;
  /** Direction of the spine there against the u axis, positive when it falls towards the edge. */
  readonly slope: number;
  /** From spine to edge, square to the spine. */
  readonly height: number;
  /** Thickness of the blank at the spine. */
  readonly thickness: number;
}

/** What the spine rests on: the foot and direction of the seat under place u. */
const seatAt = (shape: Shape, u: number, seat: number): { v: number; slope: number } => {
  const { spine, length, blade } = shape;
  const touching = { v: spine.value(u), slope: spine.slope(u) };
  const from = Math.max(u - seat / 2, -blade.ricasso);
  const to = Math.min(u + seat / 2, length);
  if (seat <= 0 || to <= from) return touching;
  const slope = (spine.value(to) - spine.value(from)) / (to - from);
  const v = spine.value(from) + slope * (u - from);
  // Only a spine that is hollow there leaves the seat; it then stands on the ends of the seat.
  return v < touching.v ? { v, slope } : touching;
};

/** Steps in which the first meeting with the edge is looked for, and halvings that refine it. */
const STEPS = 64;
const HALVINGS = 60;

/** Distance from (u, v) along the direction (du, dv) to the edge curve; 0 from the tip on. */
const distanceToEdge = (shape: Shape, [u, v]: Vec2, [du, dv]: Vec2): number => {
  const short = (s: number): boolean => v + s * dv < shape.edge.value(u + s * du);
  if (!short(0)) return 0;
  // No line to the edge is longer than blade and depth together.
  const longest = 2 * (shape.length + shape.edge.value(0));
  let far = longest;
  for (let i = 1; i <= STEPS; i += 1) {
    // Squared steps look closely near the spine, where a tip is low.
    const s = longest * (i / STEPS) ** 2;
    if (!short(s)) {
      far = s;
      break;
    }
  }
  let near = 0;
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (near + far) / 2;
    if (short(middle)) near = middle;
    else far = middle;
  }
  return (near + far) / 2;
};

/**
 * The blade at place u (mm from the plunge, -ricasso to length). Convention: the section stands
 * square to the spine's tangent at u and `height` is measured in it, from the spine to the edge.
 * With a `seat` (width of the nose along the stroke, mm) a hollow spine rests on the ends of the
 * seat: foot, direction and height are then those of that chord. A straight or bulging spine
 * touches at u itself whatever the seat. At the tip the height is 0.
 */
export const placeOn = (shape: Shape, u: number, seat = 0): Place => {
  const { v, slope } = seatAt(shape, u, seat);
  const norm = Math.hypot(1, slope);
  const normal: Vec2 = [-slope / norm, 1 / norm];
  const height = distanceToEdge(shape, [u, v], normal);
  return {
    u,
    spine: [u, v],
    edge: [u + height * normal[0], v + height * normal[1]],
    slope: degrees(atan(slope)),
    height,
    thickness: shape.thickness.value(u),
  };
};

/** `placeOn` for a single question; see there. */
export const placeAt = (blade: Blade, u: number, seat = 0): Place =>
  placeOn(shapeOf(blade), u, seat);
