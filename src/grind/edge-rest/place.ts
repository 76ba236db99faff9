import { radians } from '../../core/units.ts';
import { centreAtLipOf, type AtWheel } from './at-lip.ts';
import { circleOn, faceAt, hollowed, unhollowed, type EdgeSection, type FaceLine } from './half.ts';
import { limitsOf, thinnest } from './limits.ts';
import { standingFor, type WheelAtSeat } from './stand.ts';
import type { HollowWish } from './stations.ts';
import type { HollowPlace } from './types.ts';

/** A section at a wheel, ready for questions about the hollow that is wanted on it. */
export const atWheel = (
  section: EdgeSection,
  wish: HollowWish,
  wheel: WheelAtSeat,
  lipHeight: number,
): AtWheel => ({ section, face: faceAt(section.near, wish.centre), wheel, lipHeight });

/** A distance over the edge along the midplane as one along the face. */
export const alongFace = ({ angle }: FaceLine, h: number): number => h / Math.cos(radians(angle));

/**
 * The hollow of a section with its middle at `centre`, `depth` deep: limits against the face as it
 * was before any hollow, web of the section as it then is.
 */
export const placeFor = (
  at: AtWheel,
  centre: number,
  depth: number,
): Omit<HollowPlace, 'u' | 'thickness' | 'edge' | 'guided'> | undefined => {
  const { section, face, wheel, lipHeight } = at;
  const { near, far, height } = section;
  const circle = circleOn(face, wheel.radius, centre, depth);
  const standing = standingFor(section, circle, wheel.drop, lipHeight);
  const limits = limitsOf(unhollowed(near), height, circle);
  if (standing === undefined || limits === undefined) return undefined;
  const after: EdgeSection = { height, near: hollowed(near, circle), far };
  return {
    height,
    section,
    circle,
    standing,
    depth,
    centre,
    lower: alongFace(face, limits.lower),
    upper: alongFace(face, limits.upper),
    limits,
    web: thinnest(after, limits.lower, limits.upper),
  };
};

/** The hollow that a lip gives at a depth; undefined where that lip does not reach the section. */
export const placeAtLip = (
  at: AtWheel,
  lip: number,
  depth: number,
): ReturnType<typeof placeFor> => {
  const centre = centreAtLipOf(at, lip, depth);
  return centre === undefined ? undefined : placeFor(at, centre, depth);
};
