import { cos, sin } from '../../core/trigonometry.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import { int, real } from './flat.ts';

/** Numbers a round piece: centre, middle, side, axis (12), its sizes (5). */
export const ROUND = 17;
/** Where the axis stands among them, and the outer radius. */
export const AXIS = 9;
export const OUTER = 12;

/**
 * Convex pieces in flat arrays. A piece is a run of corners (a triangle, a box, a hull:
 * `start` is its first corner) or a round one (`start` is the complement of its number): a
 * sector of a bar, of `halfAngle` to both sides of its middle direction, from the inner to the
 * outer radius, `halfWidth` to both sides along its axis; a whole cylinder has half a turn.
 */
export interface Pieces {
  readonly start: Int32Array;
  readonly count: Int32Array;
  readonly points: Float64Array;
  readonly rounds: Float64Array;
}

/** A round piece, mm and radians. */
export interface Round {
  readonly centre: Vec3;
  /** Unit direction from the centre to the middle of the arc, the next one anticlockwise, axis. */
  readonly middle: Vec3;
  readonly side: Vec3;
  readonly axis: Vec3;
  readonly outer: number;
  readonly inner: number;
  readonly halfAngle: number;
  readonly halfWidth: number;
}

/** Convex pieces from lists of corners and from rounds. */
export const packPieces = (
  hulls: readonly (readonly Vec3[])[],
  rounds: readonly Round[],
): Pieces => {
  const total = hulls.length + rounds.length;
  const start = new Int32Array(total);
  const count = new Int32Array(total);
  let used = 0;
  hulls.forEach((corners, i) => {
    start[i] = used;
    count[i] = corners.length;
    used += corners.length;
  });
  rounds.forEach((_, i) => {
    start[hulls.length + i] = ~i;
    count[hulls.length + i] = 1;
  });
  const packed = new Float64Array(ROUND * rounds.length);
  rounds.forEach((r, i) => {
    const sizes = [r.outer, r.inner, cos(r.halfAngle), sin(r.halfAngle), r.halfWidth];
    packed.set([...r.centre, ...r.middle, ...r.side, ...r.axis, ...sizes], ROUND * i);
  });
  const points = new Float64Array(3 * used);
  let to = 0;
  for (const corners of hulls)
    for (const [x, y, z] of corners) {
      points[to++] = x;
      points[to++] = y;
      points[to++] = z;
    }
  return { start, count, points, rounds: packed };
};

/** Lower and upper corner of every piece's box, six numbers each. */
export const pieceBounds = (pieces: Pieces): Float64Array => {
  const bounds = new Float64Array(pieces.start.length * 6);
  for (let piece = 0; piece < pieces.start.length; piece++) {
    const start = int(pieces.start, piece);
    const to = piece * 6;
    for (let k = 0; k < 3; k++) {
      let low = Infinity;
      let high = -Infinity;
      if (start < 0) {
        const at = ~start * ROUND;
        const centre = real(pieces.rounds, at + k);
        // The box of the whole bar would do; a sector's corners and arc stay within this one.
        low = centre - roundReach(pieces.rounds, at, k, -1);
        high = centre + roundReach(pieces.rounds, at, k, 1);
      } else {
        const end = start + int(pieces.count, piece);
        for (let i = start; i < end; i++) {
          const value = real(pieces.points, 3 * i + k);
          if (value < low) low = value;
          if (value > high) high = value;
        }
      }
      bounds[to + k] = low;
      bounds[to + 3 + k] = high;
    }
  }
  return bounds;
};

/**
 * How far a round piece reaches along coordinate k from its centre, for a sign of 1, or against it,
 * for -1. Its arc counts where the way points into the sector, else its corners.
 */
const roundReach = (rounds: Float64Array, at: number, k: number, sign: 1 | -1): number => {
  const u = sign * real(rounds, at + 3 + k);
  const v = sign * real(rounds, at + 6 + k);
  const outer = real(rounds, at + OUTER);
  const inner = real(rounds, at + 13);
  const cosine = real(rounds, at + 14);
  const sine = real(rounds, at + 15);
  const along = Math.abs(real(rounds, at + AXIS + k)) * real(rounds, at + 16);
  const length = Math.hypot(u, v);
  if (length > 0 && u >= length * cosine) return outer * length + along;
  const one = u * cosine + v * sine;
  const other = u * cosine - v * sine;
  return Math.max(one * outer, one * inner, other * outer, other * inner) + along;
};
