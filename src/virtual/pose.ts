import type { Side } from '../blade/schema.ts';
import type { Frame } from '../geometry/frame.ts';
import { cross3, type Vec3 } from '../geometry/vector.ts';

/**
 * Coefficients of one coordinate of a placed blade: constant, along the blade (u - m), across it
 * (v - v0), and out of the midplane towards the belt (n). Rows of a rotation, so it is rigid.
 */
export type Row = readonly [constant: number, u: number, v: number, n: number];

/**
 * A blade placed in the seat frame with place m of it before the belt's middle. x runs along the
 * stroke in the direction of u, so that both sides are one problem: for the right side, whose blade
 * points the other way, the seat frame's x is its negative.
 */
export interface Pose {
  readonly m: number;
  /** v of the blade's point that x = 0 belongs to. */
  readonly v0: number;
  readonly x: Row;
  readonly y: Row;
  readonly z: Row;
}

/** The pose as a right-handed frame that takes blade coordinates (u, v, w) to the seat frame. */
export const frameOf = ({ m, v0, x, y, z }: Pose, side: Side): Frame => {
  // n is w on the left and -w on the right; the stroke's x turns with the blade.
  const towards = side === 'left' ? 1 : -1;
  const turned = handed(x, y, z) * towards;
  const axis = (k: 1 | 2): Vec3 => [turned * x[k], y[k], z[k]];
  const [along, across] = [axis(1), axis(2)];
  const at = ([c, u, v]: Row): number => c - u * m - v * v0;
  return {
    origin: [turned * at(x), at(y), at(z)],
    x: along,
    y: across,
    z: cross3(along, across),
  };
};

/** Determinant of (u, v, n) in (x, y, z): which way round the blade stands, +1 or -1. */
const handed = (x: Row, y: Row, z: Row): number =>
  Math.sign(
    x[1] * (y[2] * z[3] - y[3] * z[2]) -
      x[2] * (y[1] * z[3] - y[3] * z[1]) +
      x[3] * (y[1] * z[2] - y[2] * z[1]),
  );
