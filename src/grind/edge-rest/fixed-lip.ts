/**
 * How the hollow moves while it deepens at a lip that stays as it is, mm. The distance L of the
 * edge contact from the wheel's centre is then fixed:
 *
 *     c = sqrt(L^2 - (R - d + q)^2)          dc/dd = (R - d + q) / c
 *
 * Domain: L > R - d + q, that is c > 0. Depth is stopped by measuring; nothing stops the cut.
 */
export const centreAtLip = (
  radius: number,
  apart: number,
  depth: number,
  faceOffset = 0,
): number => {
  const square = radius - depth + faceOffset;
  return Math.sqrt(Math.max(0, apart * apart - square * square));
};

/** dc/dd: climb of the hollow's centre for each mm of depth at a fixed lip. */
export const climbPerDepth = (
  radius: number,
  centre: number,
  depth: number,
  faceOffset = 0,
): number => (radius - depth + faceOffset) / centre;

/**
 * dc/dy_E: how far the centre moves for each mm the lip moves, at one depth. From
 * L^2 = D^2 + c^2 = (R + y_E)^2 + dz^2 it is (R + y_E) / c.
 */
export const climbPerLip = (radius: number, lip: number, centre: number): number =>
  (radius + lip) / centre;
