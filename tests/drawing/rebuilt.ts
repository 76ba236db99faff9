import type { Vec2 } from '../../src/geometry/vector.ts';
import type { ReadPlate } from './reader.ts';

/** Vertices of the outline that corners and radii make: points where lines meet arcs. */
export const rebuilt = ({ corners }: ReadPlate): Vec2[] => {
  const n = corners.length;
  return corners.flatMap(({ at, radius }, i): Vec2[] => {
    if (radius === 0) return [at];
    const before = corners[(i + n - 1) % n]?.at ?? at;
    const after = corners[(i + 1) % n]?.at ?? at;
    const [u, v] = [before, after].map((p): Vec2 => {
      const length = Math.hypot(p[0] - at[0], p[1] - at[1]);
      return [(p[0] - at[0]) / length, (p[1] - at[1]) / length];
    }) as [Vec2, Vec2];
    // Distance from the corner to the tangent points of a circle in an angle 2h: r / tan h.
    const half = Math.acos(u[0] * v[0] + u[1] * v[1]) / 2;
    const reach = radius / Math.tan(half);
    return [
      [at[0] + u[0] * reach, at[1] + u[1] * reach],
      [at[0] + v[0] * reach, at[1] + v[1] * reach],
    ];
  });
};
