import { expect, it } from 'vitest';
import { roomAround } from '../../src/check/distance/around.ts';
import type { Body, Motion, Sweep } from '../../src/check/distance/index.ts';
import { poseAt, track } from '../../src/check/distance/motion.ts';
import { frame, place, type Frame } from '../../src/geometry/frame.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import { body, random, turned } from './shapes.ts';

const next = random(17);
const between = (low: number, high: number): number => low + (high - low) * next();
const any = (far: number): Vec3 => [between(-far, far), between(-far, far), between(-far, far)];

/** A block along its own axes, and its corners: what is around it is known to the last digit. */
const block = (motion: Motion): { readonly points: readonly Vec3[]; readonly body: Body } => {
  const [middle, size] = [any(20), [between(1, 40), between(1, 40), between(1, 40)] as const];
  const points = [-0.5, 0.5].flatMap((x) =>
    [-0.5, 0.5].flatMap((y) =>
      [-0.5, 0.5].map((z): Vec3 => [
        middle[0] + x * size[0],
        middle[1] + y * size[1],
        middle[2] + z * size[2],
      ]),
    ),
  );
  return { points, body: { ...body('it', [{ kind: 'box', frame: frame(middle), size }]), motion } };
};

/** A body that turns about a still point as it goes: second derivatives by hand. */
const course = (from: Vec3): Sweep => {
  const [way, degrees] = [any(30), between(5, 60)];
  const axis = any(1);
  return {
    kind: 'course',
    label: '',
    pose: (t) =>
      turned(axis, degrees * t, [from[0] + way[0] * t, from[1] + way[1] * t, from[2] + way[2] * t]),
    travel: Math.hypot(...way),
    turn: degrees,
    ...(next() < 0.5 ? { bend: 0, twist: 0 } : {}),
  };
};

const glide = (far: number): Sweep => {
  const axis = any(1);
  const [from, to] = [
    turned(axis, between(0, 90), any(far)),
    turned(axis, between(100, 170), any(far)),
  ];
  return { kind: 'glide', label: '', from, to };
};

const separation = (one: readonly Vec3[], other: readonly Vec3[]): number =>
  Math.max(
    ...([0, 1, 2] as const).map((k) => {
      const [a, b] = [one.map((p) => p[k]), other.map((p) => p[k])];
      return Math.max(Math.min(...a) - Math.max(...b), Math.min(...b) - Math.max(...a));
    }),
  );

it('is never more than what the corners keep along the axes at 30 moments of every sweep', () => {
  const STEPS = 30;
  let [told, bent] = [0, 0];
  for (let i = 0; i < 250; i += 1) {
    const sweeps = (): Sweep[] =>
      Array.from({ length: 2 }, () => (next() < 0.5 ? glide(90) : course(any(90))));
    const stands = i % 4 === 0;
    const one = block(sweeps());
    const other = block(
      stands ? [{ kind: 'still', label: '', pose: turned(any(1), 40, any(90)) }] : sweeps(),
    );
    const room = roomAround(one.body, other.body);
    let least = Infinity;
    let straight = Infinity;
    for (const sweep of [0, 1]) {
      const at = ({ body: { motion = [] } }: typeof one, t: number): Frame =>
        poseAt(track(motion[motion.length === 1 ? 0 : sweep] as Sweep), t);
      const corners = (it: typeof one, t: number): Vec3[] =>
        it.points.map((p) => place(at(it, t), p));
      for (let k = 0; k <= STEPS; k += 1) {
        const t = k / STEPS;
        least = Math.min(least, separation(corners(one, t), corners(other, t)));
      }
      const ends = (it: typeof one): Vec3[] => [...corners(it, 0), ...corners(it, 1)];
      straight = Math.min(straight, separation(ends(one), ends(other)));
    }
    expect(room).toBeLessThanOrEqual(least + 1e-9);
    if (room > 0) told += 1;
    // Without what leaves the straight ways it would be said to be more.
    if (straight > least + 0.01) bent += 1;
  }
  expect(told).toBeGreaterThan(20);
  expect(bent).toBeGreaterThan(5);
});

it('is that of the boxes for bodies that stand, and tells nothing of a half space', () => {
  const box = (x: number): Body =>
    body('box', [
      {
        kind: 'box',
        frame: { origin: [x, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] },
        size: [4, 4, 4],
      },
    ]);
  expect(roomAround(box(0), box(9))).toBeCloseTo(5, 12);
  expect(roomAround(box(0), box(1))).toBeLessThan(0);
  const floor = body('floor', [{ kind: 'half-space', point: [0, 0, -50], normal: [0, 0, 1] }]);
  expect(roomAround(box(0), floor)).toBe(-Infinity);
});

it('reaches as far as a body that goes out and back, by its speed or by how its way bends', () => {
  // Out by 20 mm and back at once: 40 mm of way; along a parabola 4 * 20 t (1 - t): it bends by 160 mm.
  const at = (x: number): Frame => frame([x, 0, 0]);
  const out = (
    sweep: Pick<Sweep & { kind: 'course' }, 'pose' | 'travel' | 'bend' | 'twist'>,
  ): Body =>
    body(
      'it',
      [{ kind: 'box', frame: frame([0, 0, 0]), size: [2, 2, 2] }],
      [{ kind: 'course', label: '', turn: 0, ...sweep }],
    );
  const wall = body('wall', [{ kind: 'box', frame: at(31), size: [2, 90, 90] }]);
  const back = out({ pose: (t) => at(20 * (1 - Math.abs(1 - 2 * t))), travel: 40 });
  const bent = out({ pose: (t) => at(80 * t * (1 - t)), travel: 80, bend: 160, twist: 0 });
  for (const it of [back, bent]) expect(roomAround(it, wall)).toBeCloseTo(30 - 1 - 20, 9);
});
