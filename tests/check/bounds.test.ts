import { describe, expect, it } from 'vitest';
import { frame, place, type Frame } from '../../src/geometry/frame.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import { boxGapTo, turnedGapTo } from '../../src/check/distance/bounds.ts';
import { applyPose } from '../../src/check/distance/motion.ts';
import {
  moment,
  poseOf,
  relativeMotion,
  split,
  type Relative,
} from '../../src/check/distance/relative.ts';
import { random, turned } from './shapes.ts';

/** A box as a tree keeps it: middle, half sizes, greatest distance from the origin. */
const node = (middle: Vec3, half: Vec3): Float64Array =>
  Float64Array.from([
    ...middle,
    ...half,
    Math.hypot(...middle.map((x, k) => Math.abs(x) + (half[k] ?? 0))),
  ]);

const bounds = (a: Float64Array, b: Float64Array, motion: Relative, m: number): number[] =>
  [boxGapTo, turnedGapTo].map((gapTo) => {
    const out = new Float64Array(2);
    gapTo(out, 0, a, 0, b, 0, motion.data, m);
    return out[0] ?? NaN;
  });

/** A point of a box by three shares from -1 to 1; mostly corners and edges, which come nearest. */
const pointOf = (next: () => number, box: Float64Array): Vec3 => {
  const share = (): number => Math.max(-1, Math.min(1, 4 * next() - 2));
  const at = (k: number): number => (box[k] ?? 0) + share() * (box[k + 3] ?? 0);
  return [at(0), at(1), at(2)];
};

describe('the room between two boxes', () => {
  it('is never above what points of both leave anywhere in the motion', () => {
    const next = random(31);
    const some = (size: number): Vec3 => [size * next(), size * next(), size * next()];
    const pose = (far: number): Frame => {
      const [x, y, z] = some(9);
      return turned([next() - 0.5, next() - 0.5, next() - 0.5], 50 * next(), [far + x, y, z]);
    };
    let apart = 0;
    for (let i = 0; i < 60; i++) {
      const glide = { kind: 'glide', label: '', from: pose(25), to: pose(25) } as const;
      const other = { kind: 'glide', label: '', from: pose(0), to: pose(0) } as const;
      const motion = relativeMotion([glide, glide], i % 2 ? [other, other] : undefined);
      const a = node(some(6), some(8));
      const b = node(some(6), some(8));
      // The whole way, its halves and the first one's halves.
      const nodes = [motion.root];
      for (let k = 0; k < 3; k++) {
        const m = nodes[k] ?? motion.root;
        if (split(motion, m)) nodes.push(motion.first[m] ?? 0, motion.second[m] ?? 0);
      }
      for (const m of nodes) {
        const rooms = bounds(a, b, motion, m);
        if (Math.max(...rooms) > 0) apart++;
        let least = Infinity;
        for (let k = 0; k < 60; k++) {
          const { sweep, t } = moment(motion, m, next());
          const at = new Float64Array(12);
          poseOf(motion, sweep, t, at);
          const p = applyPose(at, 0, pointOf(next, a));
          const q = pointOf(next, b);
          least = Math.min(least, Math.hypot(...p.map((x, c) => x - (q[c] ?? 0))));
        }
        for (const room of rooms) expect(room).toBeLessThanOrEqual(least + 1e-9);
      }
    }
    expect(apart).toBeGreaterThan(100);
  });

  it('is exact across the faces of either one', () => {
    // Two blocks, the moving one turned 30 degrees about z: face to corner, by its own axes.
    const still = relativeMotion(
      [{ kind: 'still', label: '', pose: turned([0, 0, 1], 30) }],
      [{ kind: 'still', label: '', pose: frame([0, 0, 0]) }],
    );
    const half: Vec3 = [10, 10, 1];
    const corner = place(turned([0, 0, 1], 30), [13, 2, 0]);
    const dot = node(corner, [0, 0, 0]);
    const [along = NaN, turnedAlong = NaN] = bounds(node([0, 0, 0], half), dot, still, still.root);
    expect(turnedAlong).toBeCloseTo(3, 12);
    expect(along).toBeLessThan(0);
    const [own = NaN, other = NaN] = bounds(
      dot,
      node([0, 0, 0], half),
      relativeMotion(undefined, undefined),
      0,
    );
    expect(own).toBeCloseTo(other, 12);
  });
});
