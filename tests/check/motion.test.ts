import { describe, expect, it } from 'vitest';
import { frame, place, type Frame } from '../../src/geometry/frame.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import type { Motion, Sweep } from '../../src/check/distance/motion.ts';
import { poseAt, track } from '../../src/check/distance/motion.ts';
import type { Shape } from '../../src/check/distance/shape.ts';
import { createWorkspace, type Body } from '../../src/check/distance/body.ts';
import { meets, touch } from '../../src/check/distance/touch.ts';
import { valueOf } from '../family/examples.ts';
import { blockMesh, body, bumpyMesh, gap, measure, random, turned } from './shapes.ts';

const glide = (from: Frame, to: Frame, label = 'move'): Sweep => ({
  kind: 'glide',
  label,
  from,
  to,
});
const still = (pose: Frame): Sweep => ({ kind: 'still', label: 'still', pose });

/** The least gap over many still poses of the same motions. */
const sampled = (
  make: (name: 'a' | 'b', motion: Motion | undefined) => ReturnType<typeof body>,
  a: Sweep | undefined,
  b: Sweep | undefined,
  count: number,
): number => {
  let least = Infinity;
  for (let i = 0; i <= count; i++) {
    const at = (sweep: Sweep | undefined): Motion | undefined =>
      sweep && [still(poseAt(track(sweep), i / count))];
    least = Math.min(least, gap(make('a', at(a)), make('b', at(b)), { slack: 1e-5 }));
  }
  return least;
};

describe('motion', () => {
  it('a stroke finds a pin between two places', () => {
    const block = { kind: 'mesh', mesh: blockMesh([-2, 0, -2], [2, 4, 2]) } as const;
    const pin = body('pin', [{ kind: 'cylinder', from: [3, 9, -5], to: [3, 9, 5], radius: 1 }]);
    const sparse = [glide(frame([-200, 0, 0]), frame([200, 0, 0]), 'stroke')];
    const found = measure(body('block', [block], sparse), pin);
    if (found.state !== 'apart') throw new Error('nothing was found');
    expect(found.gap).toBeCloseTo(4, 3);
    expect(found.gap).toBeLessThanOrEqual(4 + 1e-6);
    expect(found.at.label).toBe('stroke');
    // The pin is passed while the block's centre is within 2 of it.
    expect(Math.abs(found.at.t * 400 - 200 - 3)).toBeLessThan(2.01);
    expect(found.pointB[1]).toBeCloseTo(8, 3);
    expect(found.pointA[1]).toBeCloseTo(4, 3);
    // Seen from the other side, and with both moving as one, nothing changes.
    expect(gap(pin, body('block', [block], sparse))).toBeCloseTo(4, 3);
    const carried = body('carried', [block], sparse);
    const with_ = body('with', [{ ...block, frame: frame([9, 0, 0]) }], sparse);
    expect(gap(carried, with_)).toBeCloseTo(5, 3);
  });

  it('a single pose is where a body stands through all movements of the other', () => {
    const pose = turned([0, 0, 1], 20, [3, 12, 1]);
    const strokes = [-60, -20, 20].map((x, i) =>
      glide(frame([x, 0, 0]), turned([0, 0, 1], 3 * i, [x + 40, i / 4, 0]), `stroke ${String(i)}`),
    );
    const block = body(
      'block',
      [{ kind: 'mesh', mesh: blockMesh([-2, 0, -2], [2, 4, 2]) }],
      strokes,
    );
    const shape: Shape = { kind: 'mesh', mesh: blockMesh([-1, -1, -3], [1, 2, 3]) };
    const once = body('pin', [shape], [still(pose)]);
    const always = body(
      'pin',
      [shape],
      strokes.map(() => still(pose)),
    );
    for (const [one, other] of [
      [measure(block, once), measure(block, always)],
      [measure(once, block), measure(always, block)],
    ] as const) {
      if (one.state !== 'apart' || other.state !== 'apart') throw new Error('they keep apart');
      expect(one.gap).toBeCloseTo(other.gap, 3);
      expect(one.at.sweep).toBe(other.at.sweep);
      expect(one.at.label).toBe(`stroke ${String(one.at.sweep)}`);
    }
    // Placed there to begin with it is the same again.
    const placed = body('pin', [{ ...shape, frame: pose }]);
    expect(gap(block, once)).toBeCloseTo(gap(block, placed), 3);
    // A contact is looked at in all of them.
    const floor = body('floor', [{ kind: 'box', size: [400, 10, 9], frame: frame([0, -5, 0]) }]);
    const rule = { kind: 'touch', a: 'block', b: 'floor', tolerance: 0.01 } as const;
    const standing = { ...floor, motion: [still(frame([0, 0, 0]))] };
    const closed = (to: Body): boolean =>
      valueOf(touch(createWorkspace(), block, to, { ...rule, apart: [0, 1, 0] })).issues.length ===
      0;
    expect([closed(floor), closed(standing)]).toEqual([false, false]);
    const level = {
      ...block,
      motion: strokes.map((_, i) => glide(frame([i, 0, 0]), frame([i + 9, 0, 0]))),
    };
    for (const to of [floor, standing])
      expect(
        valueOf(touch(createWorkspace(), level, to, { ...rule, apart: [0, 1, 0] })).issues,
      ).toEqual([]);
  });

  it('a corner that swings past a wall is caught at the top of its arc', () => {
    // A bar of length 40 about one end, turned through the wall's normal: its far corners reach
    // hypot(40, 1) when they point at it.
    const arm = { kind: 'mesh', mesh: blockMesh([0, -1, -1], [40, 1, 1]) } as const;
    const wall = body('wall', [{ kind: 'half-space', point: [50, 0, 0], normal: [-1, 0, 0] }]);
    const slab: Shape = { kind: 'box', size: [10, 200, 200], frame: frame([55, 0, 0]) };
    const swing = [glide(turned([0, 0, 1], -40), turned([0, 0, 1], 40))];
    const expected = 50 - Math.hypot(40, 1);
    for (const other of [wall, body('slab', [slab])]) {
      const found = gap(body('arm', [arm], swing), other);
      expect(found).toBeLessThanOrEqual(expected + 1e-6);
      expect(found).toBeGreaterThanOrEqual(expected - 0.0021);
    }
  });

  it('a rotating observer sees the same as the world', () => {
    const next = random(5);
    const m = bumpyMesh(next, 8, 0.3, 5, 7);
    const n = bumpyMesh(next, 10, 0.3, 5, 7);
    const make = (name: 'a' | 'b', motion: Motion | undefined) =>
      body(name, [{ kind: 'mesh', mesh: name === 'a' ? m : n }], motion);
    let apart = 0;
    for (let i = 0; i < 12; i++) {
      const any = (far: number) =>
        turned([next() - 0.5, next() - 0.5, next() - 0.5], 40 * next(), [
          far + 20 * next(),
          20 * next(),
          20 * next(),
        ]);
      const a = glide(any(0), any(0));
      const b = i % 3 === 0 ? undefined : glide(any(30), any(30));
      const found = measure(make('a', [a]), make('b', b && [b]));
      const least = sampled(make, a, b, 60);
      if (found.state !== 'apart') {
        expect(least).toBeLessThan(0.2);
        continue;
      }
      apart++;
      // Between 60 samples a point moves by 1 mm at most here.
      expect(found.gap).toBeLessThanOrEqual(least + 1e-3);
      expect(found.gap).toBeGreaterThanOrEqual(least - 1);
      expect(found.error).toBeLessThanOrEqual(0.0021);
      // The named configuration has the reported gap.
      const { t } = found.at;
      const there = (sweep: Sweep | undefined) => sweep && [still(poseAt(track(sweep), t))];
      const measured = gap(make('a', there(a)), make('b', there(b)));
      expect(Math.abs(measured - found.gap)).toBeLessThan(0.0031);
      const between = Math.hypot(...found.pointA.map((x, k) => x - (found.pointB[k] ?? 0)));
      expect(Math.abs(between - found.gap)).toBeLessThan(0.0031);
    }
    expect(apart).toBeGreaterThan(6);
  });

  it('a course is covered by its stated rates', () => {
    // Two turns of a helix about z, the block's own axes still: nearest where it faces the pin.
    const pose = (t: number): Frame =>
      frame([30 * Math.cos(4 * Math.PI * t), 30 * Math.sin(4 * Math.PI * t), 10 * t]);
    const travel = Math.hypot(30 * 4 * Math.PI, 10);
    const bend = 30 * (4 * Math.PI) ** 2;
    const course: Sweep = { kind: 'course', label: 'helix', pose, travel, turn: 0, bend, twist: 0 };
    const ball = { kind: 'mesh', mesh: bumpyMesh(random(3), 3, 0, 6, 8) } as const;
    const pin = body('pin', [
      { kind: 'cylinder', from: [24, 33, -9], to: [24, 33, 30], radius: 2 },
    ]);
    const found = measure(body('ball', [ball], [course]), pin);
    let least = Infinity;
    for (let i = 0; i <= 1500; i++) {
      least = Math.min(
        least,
        gap(body('ball', [ball], [still(pose(i / 1500))]), pin, { slack: 1e-5 }),
      );
    }
    if (found.state !== 'apart') throw new Error('nothing was found');
    expect(found.gap).toBeLessThanOrEqual(least + 2e-5);
    expect(found.gap).toBeGreaterThanOrEqual(least - 0.02);
    // Without second derivatives it is coarser, never over.
    const coarse: Sweep = { kind: 'course', label: 'helix', pose, travel, turn: 0 };
    const rough = gap(body('ball', [ball], [coarse]), pin, { slack: 0.2 });
    expect(rough).toBeLessThanOrEqual(least + 2e-5);
    expect(rough).toBeGreaterThanOrEqual(least - 0.21);
  });

  it('many places name the one that is nearest, and straight strokes join', () => {
    const block = { kind: 'mesh', mesh: blockMesh([-2, 0, -2], [2, 4, 2]) } as const;
    const place1 = (i: number): Vec3 => [i * 5, i === 7 ? 1.5 : 0, 0];
    const stills = Array.from({ length: 12 }, (_, i) => still(frame(place1(i))));
    const wall = body('wall', [{ kind: 'box', size: [500, 2, 50], frame: frame([0, 11, 0]) }]);
    const found = measure(body('block', [block], stills), wall);
    expect(found).toMatchObject({ state: 'apart', at: { sweep: 7, t: 0 } });
    expect(found.state === 'apart' && found.gap).toBeCloseTo(4.5, 3);
    // Twelve straight strokes in a row: the pin stands beside the eighth.
    const strokes = stills
      .slice(1)
      .map((_, i) => glide(frame([i * 5, 0, 0]), frame([i * 5 + 5, 0, 0]), `stroke ${i}`));
    const pin = body('pin', [{ kind: 'cylinder', from: [61, 3, -5], to: [61, 3, 5], radius: 1 }]);
    const last = measure(body('block', [block], strokes), pin);
    expect(last).toMatchObject({ state: 'apart', at: { sweep: 10, label: 'stroke 10' } });
    expect(last.state === 'apart' && last.gap).toBeCloseTo(61 - 1 - 57, 3);
    expect(last.state === 'apart' && last.at.t).toBeCloseTo(1, 6);
    if (last.state === 'apart') {
      expect(place(last.at.poseA, [2, 3, 0])[0]).toBeCloseTo(57, 3);
    }
  });

  it('separate places say nothing of the way between them', () => {
    const block = { kind: 'mesh', mesh: blockMesh([-2, 0, -2], [2, 4, 2]) } as const;
    const ends = [0, 100].map((x) => still(frame([x, 0, 0])));
    // Beside the middle of the way, 40 - 2 - 1 along x and 2 across from the nearer place.
    const pin = body('pin', [{ kind: 'cylinder', from: [40, 2, -5], to: [40, 2, 5], radius: 1 }]);
    const found = measure(body('block', [block], ends), pin);
    expect(found).toMatchObject({ state: 'apart', at: { sweep: 0, t: 0 } });
    expect(found.state === 'apart' && found.gap).toBeCloseTo(37, 3);
  });

  it('finds a body that only at one place stands inside another', () => {
    const block = body('block', [{ kind: 'mesh', mesh: blockMesh([-20, -20, -20], [20, 20, 20]) }]);
    const places = [100, 60, 0, 80].map((x) => still(frame([x, 0, 0])));
    const small = { kind: 'mesh', mesh: blockMesh([-1, -1, -1], [1, 1, 1]) } as const;
    const found = measure(body('small', [small], places), block, { within: 5 });
    expect(found).toMatchObject({ state: 'hit', how: 'inside', at: { sweep: 2 } });
  });

  it('finds a still body that a turned one closes around, whichever is named first', () => {
    // Its block is to one side; turned, it comes to the front, where the pin is.
    const block = { kind: 'mesh', mesh: blockMesh([-3, 37, -3], [3, 43, 3]) } as const;
    const places = [100, 60, 0].map((x) => still(turned([0, 0, 1], -90, [x, 0, 0])));
    const holder = body('holder', [block], places);
    const pin = body('pin', [{ kind: 'mesh', mesh: blockMesh([39, -1, -1], [41, 1, 1]) }]);
    for (const found of [measure(holder, pin), measure(pin, holder)]) {
      expect(found).toMatchObject({ state: 'hit', how: 'inside', at: { sweep: 2 } });
    }
    const beside = body('pin', [{ kind: 'mesh', mesh: blockMesh([-1, 39, -1], [1, 41, 1]) }]);
    expect(measure(holder, beside).state).toBe('apart');
  });

  it('what is beyond the limit is said to be, and not otherwise', () => {
    const block = { kind: 'mesh', mesh: blockMesh([-2, 0, -2], [2, 4, 2]) } as const;
    const stroke = [glide(frame([-200, 0, 0]), frame([200, 0, 0]))];
    const pin = body('pin', [{ kind: 'cylinder', from: [3, 9, -5], to: [3, 9, 5], radius: 1 }]);
    const moving = body('block', [block], stroke);
    expect(measure(moving, pin, { within: 3.99 })).toEqual({
      state: 'beyond',
      certified: true,
      beyond: 3.99,
    });
    expect(measure(moving, pin, { within: 4.01 }).state).toBe('apart');
  });
});

describe('what moves', () => {
  it('comes as near to a half space as its lowest part does at the end, whichever is looked at first', () => {
    const box = (x: number, z: number): Shape => ({
      kind: 'box',
      frame: frame([x, 0, z]),
      size: [2, 2, 2],
    });
    const floor = body('floor', [{ kind: 'half-space', point: [0, 0, 0], normal: [0, 0, 1] }]);
    const down = [glide(frame([0, 0, 10]), frame([0, 0, 0]))];
    // Lower faces end at 3 and at 1.
    for (const [near, far] of [
      [2, 4],
      [4, 2],
    ] as const) {
      const hulls = [box(0, near), box(50, far)].map(({ frame: at }: Shape & { frame?: Frame }) =>
        [-1, 1].flatMap((x) =>
          [-1, 1].flatMap((y) =>
            [-1, 1].map((z): Vec3 => place(at ?? frame([0, 0, 0]), [x, y, z])),
          ),
        ),
      );
      const moving = body('boxes', [{ kind: 'hulls', hulls }], down);
      expect(gap(moving, floor)).toBeCloseTo(1, 3);
    }
  });

  it('swings past on a wide arc, far from the middle that it turns about', () => {
    // A bar from that middle out to 201 along x turns by 77 degrees: between the ends its tip bulges.
    const R = 201;
    const bar = { kind: 'box', frame: frame([R / 2, 0, 1]), size: [R, 2, 2] } as const;
    const swing = [glide(turned([0, 0, 1], -30), turned([0, 0, 1], 47))];
    const wall = body('wall', [{ kind: 'box', frame: frame([R + 6, 0, 1]), size: [2, 400, 2] }]);
    // Its corner comes out to sqrt(R² + 1) when it points along x, and 5 beyond R the wall begins.
    const found = measure(body('bar', [bar], swing), wall);
    if (found.state !== 'apart') throw new Error('nothing was found');
    expect(found.gap).toBeCloseTo(R + 5 - Math.hypot(R, 1), 2);
    expect(found.at.t).toBeCloseTo(30 / 77, 1);
  });

  it('has its own point named first, whether it or the other one moves', () => {
    const block = { kind: 'mesh', mesh: blockMesh([-2, -2, -2], [2, 2, 2]) } as const;
    const wall = { kind: 'mesh', mesh: blockMesh([20, -9, -9], [22, 9, 9]) } as const;
    const there = [glide(frame([0, 0, 0]), frame([10, 0, 0]))];
    const here = [glide(frame([0, 0, 0]), frame([-10, 0, 0]))];
    for (const [a, b, x] of [
      [body('block', [block], there), body('wall', [wall]), 12],
      [body('block', [block]), body('wall', [wall], here), 2],
    ] as const) {
      const found = measure(a, b);
      if (found.state !== 'apart') throw new Error('nothing was found');
      expect(found.gap).toBeCloseTo(8, 3);
      expect(found.at.t).toBeCloseTo(1, 6);
      expect(found.pointA[0]).toBeCloseTo(x, 3);
      expect(found.pointB[0]).toBeCloseTo(x + 8, 3);
    }
  });

  it('keeps at least what the chords of both leave, and that is not more for being asked up to it', () => {
    const block = (x: number) =>
      body('block', [{ kind: 'mesh', mesh: blockMesh([x, 0, 0], [x + 1, 1, 1]) }], undefined, 0.05);
    // 1.05 apart, of which the chords may take 0.1.
    const found = measure(block(0), block(2.05), { within: 1 });
    expect(found.state).toBe('apart');
    if (found.state === 'apart') expect(found.gap).toBeCloseTo(0.95, 3);
  });

  it('meets what is within a millionth of a millimetre of it, and nothing farther away', () => {
    const block = (x: number) =>
      body('block', [{ kind: 'mesh', mesh: blockMesh([x, 0, 0], [x + 1, 1, 1]) }]);
    for (const [off, met] of [
      [0, true],
      [5e-7, true],
      [3e-6, false],
    ] as const)
      expect(valueOf(meets(createWorkspace(), block(0), block(1 + off)))).toBe(met);
  });
});
