import { acos, atan2, cos, sin, tan } from '../../core/trigonometry.ts';
import { degrees, radians } from '../../core/units.ts';
import { dot2, type Vec2 } from '../../geometry/vector.ts';
import { inSeatBy } from '../in-seat.ts';
import { reachOfCut } from '../section/clip.ts';
import { behindFace, type Face } from '../section/ground.ts';
import type { Section } from '../section/section.ts';
import {
  centreX,
  centreY,
  distanceIn,
  farthest,
  radiusOf,
  reach,
  type Reach,
} from '../section/support.ts';

/**
 * A section standing in its contacts, in the seat frame: y from the abrasive face along the seat
 * towards the maker, z up from the seat; mm and degrees.
 */
export interface Seating {
  /** From where the seat meets the abrasive face to the step, along the seat. */
  readonly setoff: number;
  /** Platen's lean from the seat's normal, its top away from the maker positive. */
  readonly lean: number;
  /** Blade's tilt from the seat's normal, its edge towards the belt positive. */
  readonly tilt: number;
  /** Between midplane and ground face. */
  readonly angle: number;
  /** Where the spine's middle (v = 0, w = 0) lies. */
  readonly origin: Vec2;
  /** Near spine corner, where the blade bears on the seat. */
  readonly seat: Vec2;
  /** Far spine corner, where the blade bears on the step. */
  readonly step: Vec2;
  /** Corner of the edge on the belt side, or the point that touches; on the abrasive face. */
  readonly edge: Vec2;
}

/** Where the ground section reaches farthest down: at an end of the cut if that takes the point. */
const lowest = ({ outline, height }: Section, face: Face, down: Vec2): Reach => {
  const whole = reach(outline, down);
  const plane = behindFace(height, face);
  if (dot2(whole.at, plane.normal) <= plane.offset) return whole;
  const at = reachOfCut(outline, plane, down);
  return at ? { distance: dot2(at, down), at } : { distance: -Infinity, at: [0, 0] };
};

/** Stands a section with one of its points (w, v) on the abrasive face. */
const stand = (
  section: Section,
  low: Reach,
  [w, v]: Vec2,
  angle: number,
  lean: number,
): Seating => {
  const tilt = angle + lean;
  const c = cos(radians(tilt));
  const s = sin(radians(tilt));
  const far = reach(section.outline, [c, -s]);
  const height = low.distance + v * c + w * s;
  const setoff = far.distance + v * s - w * c - height * tan(radians(lean));
  const origin: Vec2 = [setoff - far.distance, low.distance];
  return {
    setoff,
    lean,
    tilt,
    angle,
    origin,
    seat: inSeatBy(origin, c, s, low.at),
    step: inSeatBy(origin, c, s, far.at),
    edge: inSeatBy(origin, c, s, [w, v]),
  };
};

/**
 * The section as it is, leaned at `angle` with its point (w, v) on the abrasive face: the closed
 * form of `settle` with that point in the place of the edge's corner.
 */
export const settleOn = (section: Section, point: Vec2, angle: number, lean: number): Seating => {
  const tilt = radians(angle + lean);
  const low = reach(section.outline, [-sin(tilt), -cos(tilt)]);
  return stand(section, low, point, angle, lean);
};

/** The setoff of `settleOn` alone. */
export const setoffOn = (
  { outline }: Section,
  [w, v]: Vec2,
  angle: number,
  lean: number,
): number => {
  const tilt = radians(angle + lean);
  const c = cos(tilt);
  const s = sin(tilt);
  const far = distanceIn(outline, c, -s) + v * s - w * c;
  return far - (distanceIn(outline, -s, -c) + v * c + w * s) * tan(radians(lean));
};

/**
 * Settles a section whose belt side is ground to `face` and gives the setoff that grinds it.
 *
 * The blade leans edge up, tilted q = a + t. Its lowest point bears on the seat and its farthest
 * on the step, so with the section's supports
 *
 *     P_z = - min (v cos q + w sin q)          P_y = s - max (w cos q - v sin q)
 *
 * the edge's belt-side corner (v = H, w = -e) stands at
 *
 *     y = P_y - H sin q - e cos q              z = P_z + H cos q - e sin q
 *
 * and lies on the abrasive face when y cos t + z sin t = 0. Hence, in closed form,
 *
 *     s = max (w cos q - v sin q) + H sin q + e cos q - z tan t
 *
 * For a sharp square bar and t = 0 that is s = (T/2 + e) cos a + H sin a; with both spine corners
 * rounded by r it is r + (T/2 + e - r) cos a + (H - r) sin a. The seat meets the section as it is
 * once ground: a bevel that runs through the spine takes the corner the blade stood on with it.
 *
 * Domain: 0 < q < 90. For q <= 0 the blade does not lean on the belt at all. The step must be
 * higher than `step`'s z. Derived here; tests settle and cut a dense polygon independently.
 */
export const settle = (section: Section, face: Face, lean: number): Seating => {
  const tilt = radians(face.angle + lean);
  const low = lowest(section, face, [-sin(tilt), -cos(tilt)]);
  return stand(section, low, [-face.edge, section.height], face.angle, lean);
};

/**
 * The tilt (degrees, its growing branch) at which a section stands at a setoff on the two points or
 * corner arcs that bear at `tilt`: while these stay the same, the closed form of `settle` is
 *
 *     s = A cos q + B sin q + C
 *
 * with A = x_f + e - (H - y_l) tan t, B = H - y_f + (x_l + e) tan t, C = r_f - r_l tan t, f the
 * centre and radius of what bears on the step and l of what bears on the seat. Undefined where the
 * face takes the point on the seat, or these points never reach that setoff.
 */
export const tiltOn = (
  { outline, height }: Section,
  { edge, angle }: Face,
  setoff: number,
  lean: number,
): number | undefined => {
  const q = radians(angle + lean);
  const c = cos(q);
  const s = sin(q);
  const far = farthest(outline, c, -s);
  let a = centreX(outline, far) + edge;
  let b = height - centreY(outline, far);
  let constant = radiusOf(outline, far);
  if (lean !== 0) {
    const low = farthest(outline, -s, -c);
    const x = centreX(outline, low);
    const y = centreY(outline, low);
    const radius = radiusOf(outline, low);
    const { normal, offset } = behindFace(height, { edge, angle });
    if ((x - s * radius) * normal[0] + (y - c * radius) * normal[1] > offset) return undefined;
    const t = tan(radians(lean));
    a -= (height - y) * t;
    b += (x + edge) * t;
    constant -= radius * t;
  }
  const share = (setoff - constant) / Math.sqrt(a * a + b * b);
  return Math.abs(share) > 1 ? undefined : degrees(atan2(b, a) - acos(share));
};

/** The setoff alone, skipping what only the whole pose needs; see `settle`. */
export const setoffFor = (section: Section, face: Face, lean: number): number => {
  const tilt = radians(face.angle + lean);
  const c = cos(tilt);
  const s = sin(tilt);
  const far = distanceIn(section.outline, c, -s) + section.height * s + face.edge * c;
  if (lean === 0) return far;
  const low = lowest(section, face, [-s, -c]).distance;
  return far - (low + section.height * c - face.edge * s) * tan(radians(lean));
};

/** Step of the central difference below, degrees: kinks apart, good to about 1e-9. */
const STEP = 1e-4;

/** Growth of the setoff with the angle at one edge thickness, mm per degree. */
export const setoffPerDegree = (section: Section, { edge, angle }: Face, lean: number): number =>
  (setoffFor(section, { edge, angle: angle + STEP }, lean) -
    setoffFor(section, { edge, angle: angle - STEP }, lean)) /
  (2 * STEP);
