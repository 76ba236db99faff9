import { cos, sin } from '../core/trigonometry.ts';
import { radians } from '../core/units.ts';
import { path, type Loop, type PathLoop, type Profile } from './loop.ts';
import { signedArea } from './loop-measure.ts';
import type { Vec2 } from './vector.ts';

/** The contour run the other way; a circle has no direction. */
export const reversed = (loop: Loop): Loop => (loop.kind === 'circle' ? loop : reversedPath(loop));

const reversedPath = ({ vertices }: PathLoop): PathLoop => {
  const n = vertices.length;
  return path(
    vertices.map((_, i) => {
      // Corner n-1-i now starts the edge that ended there, bulging the other way.
      const corner = vertices[n - 1 - i];
      const edge = vertices[(2 * n - 2 - i) % n];
      return { x: corner?.x ?? 0, y: corner?.y ?? 0, bulge: -(edge?.bulge ?? 0) + 0 };
    }),
  );
};

/** The contour with the wanted direction: anticlockwise for an outer one, else clockwise. */
export const oriented = (loop: Loop, anticlockwise: boolean): Loop =>
  loop.kind === 'circle' || signedArea(loop) > 0 === anticlockwise ? loop : reversed(loop);

/** The region with its outer contour anticlockwise and its holes clockwise. */
export const normalised = ({ outer, holes }: Profile): Profile => ({
  outer: oriented(outer, true),
  holes: holes.map((hole) => oriented(hole, false)),
});

/** Maps the points; `flips` tells that the map mirrors, which turns every bulge round. */
const mapped = (loop: Loop, map: (p: Vec2) => Vec2, flips = false): Loop =>
  loop.kind === 'circle'
    ? { ...loop, centre: map(loop.centre) }
    : path(
        loop.vertices.map(({ x, y, bulge }) => {
          const [u, v] = map([x, y]);
          return { x: u, y: v, bulge: flips ? -bulge + 0 : bulge };
        }),
      );

export const translated = (loop: Loop, [dx, dy]: Vec2): Loop =>
  mapped(loop, ([x, y]) => [x + dx, y + dy]);

/** Turned anticlockwise by `angle` degrees about a point. */
export const rotated = (loop: Loop, angle: number, about: Vec2 = [0, 0]): Loop => {
  const c = cos(radians(angle));
  const s = sin(radians(angle));
  return mapped(loop, ([x, y]) => [
    about[0] + (x - about[0]) * c - (y - about[1]) * s,
    about[1] + (x - about[0]) * s + (y - about[1]) * c,
  ]);
};

/** Mirrored in the line x = `at` or y = `at`, direction of travel kept as it was. */
export const mirrored = (loop: Loop, axis: 'x' | 'y', at = 0): Loop =>
  reversed(mapped(loop, ([x, y]) => (axis === 'x' ? [2 * at - x, y] : [x, 2 * at - y]), true));

/** Applies a map of contours to a whole region. */
export const mapProfile = ({ outer, holes }: Profile, map: (loop: Loop) => Loop): Profile => ({
  outer: map(outer),
  holes: holes.map(map),
});
