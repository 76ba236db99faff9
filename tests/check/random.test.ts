import Module, { type Mat4 } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { compose, frame, place, type Frame } from '../../src/geometry/frame.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import type { Mesh } from '../../src/model/mesh.ts';
import { barMesh, blockMesh, body, bumpyMesh, gap, measure, random, turned } from './shapes.ts';

type Manifold = InstanceType<Awaited<ReturnType<typeof Module>>['Manifold']>;

const placedMesh = (m: Mesh, at: Frame): Mesh => {
  const vertices = new Float64Array(m.vertices.length);
  for (let i = 0; i < vertices.length; i += 3) {
    const p: Vec3 = [m.vertices[i] ?? 0, m.vertices[i + 1] ?? 0, m.vertices[i + 2] ?? 0];
    vertices.set(place(at, p), i);
  }
  return { vertices, triangles: m.triangles };
};

const anyFrame = (next: () => number, far: number): Frame =>
  turned([next() - 0.5, next() - 0.5, next() - 0.5], 360 * next(), [
    far * (next() - 0.5),
    far * (next() - 0.5),
    far * (next() - 0.5),
  ]);

const cloud = (next: () => number, count: number, size: number, at: Frame): Vec3[] =>
  Array.from({ length: count }, () =>
    place(at, [size * (next() - 0.5), size * (next() - 0.5), size * (next() - 0.5)]),
  );

/**
 * Least distance of two hulls as the quadratic programme min |A x - B y|, x and y on unit
 * simplices, by Frank and Wolfe's method with away steps: no code shared with the kernel.
 * Returns bounds from both sides.
 */
const quadraticProgramme = (a: readonly Vec3[], b: readonly Vec3[]): [number, number] => {
  const points = a.flatMap((p) => b.map((q): Vec3 => [p[0] - q[0], p[1] - q[1], p[2] - q[2]]));
  const dot = (p: Vec3, q: Vec3) => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
  const weight = new Map<number, number>([[0, 1]]);
  let v: Vec3 = points[0] ?? [0, 0, 0];
  let low = 0;
  for (let step = 0; step < 20000; step++) {
    let near = 0;
    points.forEach((p, i) => {
      if (dot(v, p) < dot(v, points[near] ?? v)) near = i;
    });
    let away = -1;
    for (const i of weight.keys()) {
      if (away < 0 || dot(v, points[i] ?? v) > dot(v, points[away] ?? v)) away = i;
    }
    const length = Math.sqrt(dot(v, v));
    low = Math.max(low, dot(v, points[near] ?? v) / length);
    if (length - low < 1e-6 || length < 1e-9) break;
    const toNear = dot(v, v) - dot(v, points[near] ?? v);
    const fromAway = dot(v, points[away] ?? v) - dot(v, v);
    const forward = toNear >= fromAway;
    const goal = points[forward ? near : away] ?? v;
    const sign = forward ? 1 : -1;
    const d: Vec3 = [sign * (goal[0] - v[0]), sign * (goal[1] - v[1]), sign * (goal[2] - v[2])];
    const held = weight.get(away) ?? 0;
    const most = forward ? 1 : held / (1 - held);
    const t = Math.min(most, -dot(v, d) / dot(d, d));
    v = [v[0] + t * d[0], v[1] + t * d[1], v[2] + t * d[2]];
    for (const [i, w] of weight) weight.set(i, w * (1 - sign * t));
    const index = forward ? near : away;
    weight.set(index, (weight.get(index) ?? 0) + sign * t);
    for (const [i, w] of weight) if (w <= 1e-15) weight.delete(i);
  }
  return [low, Math.sqrt(dot(v, v))];
};

describe('random convex pairs', () => {
  it('agree with a quadratic programme', () => {
    const next = random(7);
    let apart = 0;
    for (let i = 0; i < 300; i++) {
      const p = cloud(next, 1 + Math.floor(9 * next()), 20, anyFrame(next, 40));
      const q = cloud(next, 1 + Math.floor(9 * next()), 20, anyFrame(next, 40));
      const found = measure(
        body('p', [{ kind: 'hulls', hulls: [p] }]),
        body('q', [{ kind: 'hulls', hulls: [q] }]),
      );
      if (found.state === 'beyond') throw new Error('no limit was given');
      const [low, high] = quadraticProgramme(p, q);
      expect(found.gap).toBeLessThanOrEqual(high + 1e-6);
      if (found.state === 'apart') {
        apart++;
        expect(found.gap).toBeGreaterThanOrEqual(low - 1e-4);
        const between = Math.hypot(...found.pointA.map((x, k) => x - (found.pointB[k] ?? 0)));
        expect(between).toBeCloseTo(found.gap, 3);
      } else expect(high).toBeLessThan(1e-3);
    }
    expect(apart).toBeGreaterThan(150);
  });

  it('hold on slivers, parallel and nearly parallel faces', () => {
    const next = random(11);
    for (let i = 0; i < 300; i++) {
      const at = anyFrame(next, 50);
      const thin = 10 ** (-8 * next());
      const gapWanted = 10 ** (2 - 5 * next());
      const tilt = i % 3 === 0 ? 0 : 10 ** (-9 * next());
      const p: Vec3[] = [
        [0, 0, 0],
        [100, 0, 0],
        [40, thin, 0],
      ];
      const q: Vec3[] = [
        [-50, -30, gapWanted],
        [150, -30, gapWanted + tilt],
        [30, 70, gapWanted],
      ];
      const found = measure(
        body('p', [{ kind: 'hulls', hulls: [p.map((x) => place(at, x))] }]),
        body('q', [{ kind: 'hulls', hulls: [q.map((x) => place(at, x))] }]),
      );
      const [low, high] = quadraticProgramme(p, q);
      if (found.state === 'beyond') throw new Error('no limit was given');
      expect(found.gap).toBeLessThanOrEqual(high + 1e-6);
      expect(found.gap).toBeGreaterThanOrEqual(low - 1e-4);
    }
  });
});

describe('meshes', () => {
  let solid: (m: Mesh, at: Frame) => Manifold;
  beforeAll(async () => {
    const module = await Module();
    module.setup();
    solid = (m, at) => {
      const made = new module.Manifold(
        new module.Mesh({
          numProp: 3,
          vertProperties: Float32Array.from(m.vertices),
          triVerts: m.triangles,
        }),
      );
      const matrix = [...at.x, 0, ...at.y, 0, ...at.z, 0, ...at.origin, 1];
      return made.transform(matrix as unknown as Mat4);
    };
  });

  it("agree with an independent library's least gap, and its overlap", () => {
    const next = random(23);
    let apart = 0;
    let hits = 0;
    for (let i = 0; i < 60; i++) {
      const shapes = [
        bumpyMesh(next, 10, 0.4, 8, 10),
        barMesh(8, -10, 10, 5 + Math.floor(30 * next())),
        blockMesh([-3, -8, -15], [3, 8, 15]),
      ];
      const m = shapes[i % 3] ?? shapes[0];
      const n = shapes[(i + 1 + (i % 2)) % 3] ?? shapes[0];
      if (!m || !n) throw new Error('no shapes');
      const [f, g] = [anyFrame(next, 20), anyFrame(next, 50)];
      const found = measure(
        body('m', [{ kind: 'mesh', mesh: m, frame: f }]),
        body('n', [{ kind: 'mesh', mesh: n, frame: g }]),
      );
      if (found.state === 'beyond') throw new Error('no limit was given');
      const [p, q] = [solid(m, f), solid(n, g)];
      const volume = p.intersect(q).volume();
      if (volume > 1e-3) {
        hits++;
        expect(found.state).toBe('hit');
      } else {
        apart++;
        // The library works in single precision: 1e-5 of 60 mm.
        const least = p.minGap(q, 200);
        expect(found.gap).toBeLessThanOrEqual(least + 6e-4);
        expect(found.gap).toBeGreaterThanOrEqual(least - 0.0016);
      }
    }
    expect(apart).toBeGreaterThan(15);
    expect(hits).toBeGreaterThan(10);
  });

  it('a common rigid motion and the order of the pair change nothing', () => {
    const next = random(31);
    for (let i = 0; i < 40; i++) {
      const m = bumpyMesh(next, 10, 0.3, 6, 8);
      const n = barMesh(4, -12, 12, 14);
      const f = anyFrame(next, 10);
      const g = anyFrame(next, 70);
      const common = anyFrame(next, 300);
      const at = (x: Mesh, y: Frame) => body('x', [{ kind: 'mesh', mesh: x, frame: y }]);
      const plain = gap(at(m, f), at(n, g));
      expect(Math.abs(gap(at(n, g), at(m, f)) - plain)).toBeLessThan(0.0011);
      const moved = gap(at(m, compose(common, f)), at(n, compose(common, g)));
      expect(Math.abs(moved - plain)).toBeLessThan(0.0011);
    }
  });

  it('mirrored configurations have the same gap', () => {
    const next = random(41);
    const flip = (m: Mesh): Mesh => ({
      vertices: m.vertices.map((value, i) => (i % 3 === 0 ? -value : value)),
      triangles: m.triangles.slice().reverse(),
    });
    for (let i = 0; i < 20; i++) {
      const m = bumpyMesh(next, 10, 0.3, 6, 8);
      const n = placedMesh(barMesh(4, -12, 12, 14), anyFrame(next, 50));
      const pair = (x: Mesh, y: Mesh) =>
        gap(body('x', [{ kind: 'mesh', mesh: x }]), body('y', [{ kind: 'mesh', mesh: y }]));
      expect(Math.abs(pair(flip(m), flip(n)) - pair(m, n))).toBeLessThan(0.0011);
    }
    // A blade flipped side for side is half a turn about an axis: a round bar cannot tell.
    const bar = body('bar', [{ kind: 'cylinder', from: [0, 20, -9], to: [0, 20, 9], radius: 5 }]);
    const block = { kind: 'mesh', mesh: blockMesh([-30, -2, -20], [30, 2, 20]) } as const;
    const one = gap(bar, body('b', [block]));
    const other = gap(
      bar,
      body('b', [{ ...block, frame: frame([0, 0, 0], [-1, 0, 0], [0, -1, 0]) }]),
    );
    expect(Math.abs(one - other)).toBeLessThan(0.0011);
    expect(one).toBeCloseTo(13, 3);
  });
});
