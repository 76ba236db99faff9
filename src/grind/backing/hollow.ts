/**
 * Depth (mm) of the shallow hollow that a convex face of radius `radius` (backing and belt)
 * grinds under a chord: s = R - sqrt(R^2 - c^2 / 4). Domain: 0 <= chord <= 2 R, mm. Source: circle
 * segment, CRC mathematical tables.
 */
export const hollowDepth = (radius: number, chord: number): number =>
  radius - Math.sqrt(radius * radius - (chord * chord) / 4);
