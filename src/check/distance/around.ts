import type { Frame } from '../../geometry/frame.ts';
import type { Body } from './body.ts';
import { real } from './flat.ts';
import { AT_REST, poseAt, stands, tracksOf, type Motion, type Track } from './motion.ts';
import type { Solid } from './solid.ts';

/** Numbers of an upright box: its lower and its upper corner. */
const BOX = 6;

/** How far the points of a body leave the straight ways between the ends of a sweep, mm at most. */
const strayOf = ({ travel, turn, bend, twist }: Track, far: number): number =>
  travel === 0 && turn === 0
    ? 0
    : Math.min((travel + turn * far) / 2, (bend + (turn * turn + twist) * far) / 8);

/** Widens a box until it holds that of a solid in a pose, and `more` beyond it. */
const hold = (
  boxes: Float64Array,
  at: number,
  own: Float64Array,
  { origin, x, y, z }: Frame,
  more: number,
): void => {
  for (let k = 0; k < 3; k++) {
    const axis = k as 0 | 1 | 2;
    const middle =
      origin[axis] + x[axis] * real(own, 0) + y[axis] * real(own, 1) + z[axis] * real(own, 2);
    const half =
      Math.abs(x[axis]) * real(own, 3) +
      Math.abs(y[axis]) * real(own, 4) +
      Math.abs(z[axis]) * real(own, 5) +
      more;
    if (middle - half < real(boxes, at + k)) boxes[at + k] = middle - half;
    if (middle + half > real(boxes, at + 3 + k)) boxes[at + 3 + k] = middle + half;
  }
};

const boxesOf = ({ solids, motion = AT_REST }: Body): Float64Array | undefined => {
  const tracks = tracksOf(motion);
  const boxes = new Float64Array(BOX * tracks.length);
  for (let i = 0; i < boxes.length; i++) boxes[i] = i % BOX < 3 ? Infinity : -Infinity;
  for (const solid of solids) {
    if (solid.kind === 'plane') return undefined;
    const own = solid.tree.boxes;
    tracks.forEach((track, i) => {
      const stray = strayOf(track, real(own, 6));
      hold(boxes, i * BOX, own, poseAt(track, 0), stray);
      if (track.sweep.kind !== 'still') hold(boxes, i * BOX, own, poseAt(track, 1), stray);
    });
  }
  return boxes;
};

interface Around {
  readonly motion: Motion | undefined;
  readonly boxes: Float64Array | undefined;
}

const known = new WeakMap<readonly Solid[], Around>();

/** The upright boxes around a body in each of its sweeps; none where a half space has no end. */
const boxesAround = (body: Body): Float64Array | undefined => {
  const last = known.get(body.solids);
  if (last && last.motion === body.motion) return last.boxes;
  const { motion } = body;
  const boxes = boxesOf(body);
  known.set(body.solids, { motion, boxes });
  return boxes;
};

/**
 * A distance (mm) that two bodies keep at least over their sweeps, by the upright boxes around them in
 * each: most of the bodies of a fixture are nowhere near each other, and for these nothing else need be
 * built. Negative where it tells nothing. The motions must be such as can be compared.
 */
export const roomAround = (a: Body, b: Body): number => {
  const [one, other] = [boxesAround(a), boxesAround(b)];
  if (!one || !other) return -Infinity;
  const [stepA, stepB] = [stands(a.motion) ? 0 : BOX, stands(b.motion) ? 0 : BOX];
  const sweeps = Math.max(one.length, other.length) / BOX;
  let least = Infinity;
  for (let i = 0; i < sweeps; i++) {
    let most = -Infinity;
    for (let k = 0; k < 3; k++) {
      const [p, q] = [stepA * i + k, stepB * i + k];
      const room = Math.max(real(one, p) - real(other, q + 3), real(other, q) - real(one, p + 3));
      if (room > most) most = room;
    }
    if (most < least) least = most;
  }
  return least;
};
