/**
 * Chord of a hollow of depth `depth` ground by a wheel of radius `radius`, mm:
 * w = 2 sqrt(2 R d - d^2), the chord whose sagitta is d. Domain: 0 <= d <= 2 R.
 * Source: circle segment, c = 2 sqrt(h (2 r - h)), CRC mathematical tables.
 */
export const hollowChord = (radius: number, depth: number): number =>
  2 * Math.sqrt(depth * (2 * radius - depth));
