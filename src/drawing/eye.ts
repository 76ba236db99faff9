import { cross3, dot3, unit3, type Vec2, type Vec3 } from '../geometry/vector.ts';

/** A parallel projection: unit vectors to the right, up the paper and towards the eye. */
export interface Eye {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly towards: Vec3;
}

/** Looking from a direction, z up the paper (for a view from above: y up). */
export const eyeFrom = (direction: Vec3): Eye => {
  const towards = unit3(direction);
  const right = unit3(cross3([0, 0, 1], towards));
  return { right, up: cross3(towards, right), towards };
};

/** From the right side (+x): y runs to the right, z up. The main view of a fixture at its belt. */
export const SIDE: Eye = { right: [0, 1, 0], up: [0, 0, 1], towards: [1, 0, 0] };
/** From above, turned as first-angle projection wants it below the side view. */
export const ABOVE_SIDE: Eye = { right: [0, 1, 0], up: [-1, 0, 0], towards: [0, 0, 1] };
/** Isometric from the maker's right. */
export const ISOMETRIC: Eye = eyeFrom([1, 1, 1]);

/** The same from the other side and from below. */
export const FROM_BELOW: Eye = eyeFrom([-1, -1, -1]);

/** A point as it is seen, on paper `k` times as large. */
export const projected = (p: Vec3, eye: Eye, k: number): Vec2 => [
  dot3(p, eye.right) * k,
  dot3(p, eye.up) * k,
];
