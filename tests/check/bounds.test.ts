import { describe, expect, it } from 'vitest';
import { frame, place, type Frame } from '../../src/geometry/frame.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import {
  aim,
  createAim,
  highStillTo,
  lowMovingTo,
  turnRound,
} from '../../src/check/distance/aim.ts';
import { boxGapTo, turnedGapTo } from '../../src/check/distance/bounds.ts';
import { lookAnew, roomAlong } from '../../src/check/distance/look.ts';
import { applyPose } from '../../src/check/distance/motion.ts';
import {
  firstOf,
  moment,
  poseOf,
  relativeMotion,
  secondOf,
  split,
  START_POSE,
  STRAY,
  STRAY_PER,
  STRIDE,
  type Relative,
} from '../../src/check/distance/relative.ts';
import type { Motion } from '../../src/check/distance/motion.ts';
import { waysOf } from '../../src/check/distance/ways.ts';
import { reachOf } from '../../src/check/distance/reach.ts';
import { createRoom } from '../../src/check/distance/room.ts';
import { prepare } from '../../src/check/distance/prepare.ts';
import type { TreeSolid } from '../../src/check/distance/solid.ts';
import { bumpyMesh, random, turned } from './shapes.ts';

/** The motion of one thing as seen from another. */
const motionOf = (a?: Motion, b?: Motion): Relative => relativeMotion(waysOf(a, b));

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
      const motion = motionOf([glide, glide], i % 2 ? [other, other] : undefined);
      const a = node(some(6), some(8));
      const b = node(some(6), some(8));
      // The whole way, its halves and the first one's halves.
      const nodes = [motion.root];
      for (let k = 0; k < 3; k++) {
        const m = nodes[k] ?? motion.root;
        if (split(motion, m)) nodes.push(firstOf(motion, m), secondOf(motion, m));
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
    const still = motionOf(
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
      motionOf(undefined, undefined),
      0,
    );
    expect(own).toBeCloseTo(other, 12);
  });
});

/** The corners below a node of a mesh's tree. */
const cornersBelow = ({ tree, pieces }: TreeSolid, at: number): Vec3[] => {
  const right = tree.next[at] ?? 0;
  if (right >= 0)
    return [
      ...cornersBelow({ tree, pieces } as TreeSolid, at + 1),
      ...cornersBelow({ tree, pieces } as TreeSolid, right),
    ];
  const first = 3 * (pieces.start[~right] ?? 0);
  const [a, b, c, d, e, f, g, h, i] = pieces.points.slice(first, first + 9);
  return [
    [a ?? NaN, b ?? NaN, c ?? NaN],
    [d ?? NaN, e ?? NaN, f ?? NaN],
    [g ?? NaN, h ?? NaN, i ?? NaN],
  ];
};

describe('the reach of a node along a direction', () => {
  const next = random(53);
  const probed = () => {
    const made = prepare('bumpy', { kind: 'mesh', mesh: bumpyMesh(next, 9, 0.4, 6, 8) });
    if (!made.ok || made.value.kind !== 'tree') throw new Error('no tree');
    return { solid: made.value, reach: reachOf(made.value) };
  };
  const dot = (p: readonly number[], q: ArrayLike<number>): number =>
    p.reduce((sum, x, k) => sum + x * (q[k] ?? 0), 0);
  const direction = (): Float64Array => {
    const d = [next() - 0.5, next() - 0.5, next() - 0.5];
    return Float64Array.from(d, (x) => x / Math.hypot(...d));
  };
  const pose = (): Frame => turned([next(), next() - 0.5, 1], 30 * next(), [30 * next(), 0, 9]);

  it('holds all corners below it, wherever the body moves, and is closer than its box', () => {
    const body = probed();
    const { boxes } = body.solid.tree;
    const out = new Float64Array(2);
    let closer = 0;
    let nodes = 0;
    for (let i = 0; i < 12; i++) {
      const motion = motionOf([{ kind: 'glide', label: '', from: pose(), to: pose() }], undefined);
      const normal = direction();
      const [aimed, back] = [createAim(2), createAim(1)];
      aim(aimed, motion.data, motion.root, normal);
      turnRound(back, normal);
      for (let at = 0; at < body.solid.tree.next.length; at += 5) {
        const corners = cornersBelow(body.solid, at);
        lowMovingTo(out, 0, body, at, aimed, motion.data, motion.root);
        for (let k = 0; k <= 4; k++) {
          const there = new Float64Array(12);
          poseOf(motion, 0, k / 4, there);
          const least = Math.min(...corners.map((p) => dot(applyPose(there, 0, p), normal)));
          expect(out[0]).toBeLessThanOrEqual(least + 1e-9);
        }
        highStillTo(out, 1, body, at, back);
        expect(out[1]).toBeGreaterThanOrEqual(
          Math.max(...corners.map((p) => dot(p, normal))) - 1e-9,
        );
        const half = boxes.slice(7 * at + 3, 7 * at + 6);
        const box = dot([...normal], boxes.slice(7 * at)) + dot([...normal].map(Math.abs), half);
        expect(out[1]).toBeLessThanOrEqual(box + 1e-9);
        nodes++;
        if ((out[1] ?? 0) < box - 0.1) closer++;
      }
    }
    expect(closer).toBeGreaterThan(nodes / 2);
  });

  it('tells the room of two bodies to the slack, and surely when there is not enough', () => {
    const [one, two] = [probed(), probed()];
    const room = createRoom();
    const counts = { enough: 0, not: 0 };
    for (let i = 0; i < 80; i++) {
      const motion = motionOf([{ kind: 'still', label: '', pose: pose() }], undefined);
      const normal = direction();
      const places = (solid: TreeSolid, move: (p: Vec3) => Vec3): number[] =>
        cornersBelow(solid, 0).map((p) => dot(move(p), normal));
      const there = motion.data.slice(START_POSE);
      const low = Math.min(...places(one.solid, (p) => applyPose(there, 0, p)));
      const truly = low - Math.max(...places(two.solid, (p) => p));
      const asked = truly + 4 * (next() - 0.5);
      lookAnew(room.look);
      const off = roomAlong(room, one, 0, two, 0, normal, motion.data, 0, 1e-4, asked, 0);
      if (asked > truly) expect(off).toBeLessThan(asked);
      else {
        expect(off).toBeLessThanOrEqual(truly + 1e-9);
        expect(off).toBeGreaterThanOrEqual(Math.min(asked, truly - 2.1e-4));
      }
      counts[asked > truly ? 'not' : 'enough']++;
    }
    expect(Math.min(counts.enough, counts.not)).toBeGreaterThan(20);
  });
});

describe('how far a point may leave the straight way between two poses', () => {
  it('holds for bodies that both turn, bend and slide, and is not much more than they do', () => {
    const RATE = Math.PI / 180;
    const course = (degrees: number, way: (t: number) => Vec3, travel: number, bend: number) =>
      [
        {
          kind: 'course',
          label: '',
          pose: (t: number) => turned([0, 0, 1], degrees * t, way(t)),
          travel,
          turn: Math.abs(degrees),
          bend,
          twist: 0,
        },
      ] as const;
    const none = (): Vec3 => [0, 0, 0];
    const out = (t: number): Vec3 => [20 * t, 0, 0];
    const curve = (t: number): Vec3 => [0, 12 * t * (1 - t), 0];
    const still = course(0, none, 0, 0);
    // What each leaves halfway, by hand: turning by w and sliding by v a unit, 2 w v / 8 aslant; bending
    // by c, c / 8; turning against each other by w each, (2 w)² r / 8.
    const pairs = [
      { a: course(0, out, 20, 0), b: course(6, none, 0, 0), least: (2 * 6 * RATE * 20) / 8 },
      { a: course(0, out, 20, 0), b: course(0, curve, 12, 24), least: 24 / 8 },
      { a: course(6, none, 0, 0), b: course(-6, none, 0, 0), least: (12 * RATE) ** 2 * (50 / 8) },
      { a: course(0, curve, 12, 24), b: still, least: 24 / 8 },
    ];
    const p: Vec3 = [50, 0, 0];
    const at = (motion: Relative, t: number): Vec3 => {
      const pose = new Float64Array(12);
      poseOf(motion, 0, t, pose);
      return applyPose(pose, 0, p);
    };
    for (const { a, b, least } of pairs) {
      const motion = motionOf(a, b);
      const stray =
        (motion.data[motion.root * STRIDE + STRAY] ?? NaN) +
        (motion.data[motion.root * STRIDE + STRAY_PER] ?? NaN) * 50;
      const [from, to] = [at(motion, 0), at(motion, 1)];
      let most = 0;
      for (let i = 0; i <= 100; i++) {
        const t = i / 100;
        const here = at(motion, t);
        most = Math.max(
          most,
          Math.hypot(...here.map((x, k) => x - (1 - t) * (from[k] ?? 0) - t * (to[k] ?? 0))),
        );
      }
      expect(most).toBeGreaterThan(0.9 * least);
      expect(stray).toBeGreaterThanOrEqual(most - 1e-9);
    }
  });

  it('is counted along every axis in the room of long boxes that turn', () => {
    // A bar 100 long along each axis in turn, turned about the other two, under a box beside its end.
    const axes: readonly Vec3[] = [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
    for (const along of [0, 1, 2])
      for (const about of [0, 1, 2].filter((k) => k !== along)) {
        const half = [0, 1, 2].map((k) => (k === along ? 50 : 1)) as unknown as Vec3;
        const axis = axes[about] ?? [0, 0, 1];
        const sweep = {
          kind: 'glide',
          label: '',
          from: turned(axis, 0),
          to: turned(axis, 40),
        } as const;
        const motion = motionOf([sweep]);
        const a = node([0, 0, 0], half);
        // Where the end of the bar is when it has turned.
        const end = place(
          sweep.to,
          [0, 1, 2].map((k) => (k === along ? 50 : 0)) as unknown as Vec3,
        );
        for (const sign of [1, -1]) {
          const b = node(end.map((x) => sign * x) as unknown as Vec3, [0.1, 0.1, 0.1]);
          for (const room of bounds(a, b, motion, motion.root)) expect(room).toBeLessThanOrEqual(0);
        }
      }
  });
});
