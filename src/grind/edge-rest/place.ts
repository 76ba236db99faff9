import { centreAtLipOf, type AtWheel } from './at-lip.ts';
import {
  circleOn,
  faceAt,
  halfAt,
  hollowed,
  unhollowed,
  type EdgeSection,
  type Half,
} from './half.ts';
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

/** Straight distance from the edge's corner to a place of the side, as calipers show it, mm. */
export const fromEdge = (half: Half, h: number): number =>
  Math.hypot(h, halfAt(half, h) - halfAt(half, 0));

/**
 * The hollow of a section with its middle at `centre`, `depth` deep: limits against the face as it
 * was before any hollow.
 */
export const hollowFor = (
  { section, face, wheel, lipHeight }: AtWheel,
  centre: number,
  depth: number,
): Omit<HollowPlace, 'u' | 'thickness' | 'edge' | 'guided' | 'web'> | undefined => {
  const { near, height } = section;
  const circle = circleOn(face, wheel.radius, centre, depth);
  const standing = standingFor(section, circle, wheel.drop, lipHeight);
  const base = unhollowed(near);
  const limits = limitsOf(base, height, circle);
  if (standing === undefined || limits === undefined) return undefined;
  return {
    height,
    section,
    circle,
    standing,
    depth,
    centre,
    lower: fromEdge(base, limits.lower),
    upper: fromEdge(base, limits.upper),
    limits,
  };
};

/** The same with the web of the section as it then is. */
export const placeFor = (
  at: AtWheel,
  centre: number,
  depth: number,
): Omit<HollowPlace, 'u' | 'thickness' | 'edge' | 'guided'> | undefined => {
  const hollow = hollowFor(at, centre, depth);
  if (hollow === undefined) return undefined;
  const { height, circle, limits } = hollow;
  const { near, far } = at.section;
  const after: EdgeSection = { height, near: hollowed(near, circle), far };
  return { ...hollow, web: thinnest(after, limits.lower, limits.upper) };
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
