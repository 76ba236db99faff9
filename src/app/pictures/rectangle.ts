import type { Vec2 } from '../../geometry/vector.ts';

/** The corners of an upright rectangle, anticlockwise from the lower left. */
export const cornersOf = ([x0, y0]: Vec2, [x1, y1]: Vec2): Vec2[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];
