import Module from 'manifold-3d';
import { describe, expect, it } from 'vitest';
import type { Body } from '../../src/check/distance/body.ts';
import { overlapVolume } from '../../src/check/distance/overlap-volume.ts';
import type { Shape } from '../../src/check/distance/shape.ts';
import { frame, WORLD, type Frame } from '../../src/geometry/frame.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import type { Mesh } from '../../src/model/mesh.ts';
import { body, random, turned } from './shapes.ts';

const wasm = await Module();
wasm.setup();

const shared = (a: Body, b: Body, poses = { a: WORLD, b: WORLD }): number =>
  overlapVolume(a, b, poses) ?? NaN;

const box = (name: string, at: Vec3, size: Vec3): Body =>
  body(name, [{ kind: 'box', frame: frame(at), size }]);

describe('the volume that two bodies share', () => {
  it('is the block that two boxes have in common, wherever they stand', () => {
    // 10 x 10 x 10 and 8 x 8 x 8 shifted by 6, 7, 8: 3 x 2 x 1 is common.
    const [one, other] = [box('a', [0, 0, 0], [10, 10, 10]), box('b', [6, 7, 8], [8, 8, 8])];
    expect(shared(one, other)).toBeCloseTo(3 * 2 * 1, 9);
    const pose = turned([1, 2, 3], 37, [40, -300, 12]);
    expect(shared(one, other, { a: pose, b: pose })).toBeCloseTo(6, 9);
    expect(shared(other, one)).toBeCloseTo(6, 9);
  });

  it('is the smaller one where that lies inside, and nothing where they only touch', () => {
    const one = box('a', [0, 0, 0], [10, 10, 10]);
    expect(shared(one, box('b', [1, 1, 1], [2, 3, 4]))).toBeCloseTo(24, 9);
    // Alike to the last corner: every face lies in a face of the other.
    expect(shared(one, box('b', [0, 0, 0], [10, 10, 10]))).toBeCloseTo(1000, 9);
    expect(shared(one, box('b', [10, 0, 0], [10, 10, 10]))).toBeCloseTo(0, 9);
    expect(shared(one, box('b', [30, 0, 0], [10, 10, 10]))).toBe(0);
  });

  it('is the segment that a plane cuts off a cylinder', () => {
    // Circular segment of height h: r² acos((r - h) / r) - (r - h) sqrt(2 r h - h²)
    // (Machinery's Handbook, areas of plane figures), times the length.
    const [r, h, length] = [20, 3, 50];
    const area = r ** 2 * Math.acos((r - h) / r) - (r - h) * Math.sqrt(2 * r * h - h ** 2);
    const bar = body('bar', [{ kind: 'cylinder', from: [0, 0, 0], to: [length, 0, 0], radius: r }]);
    const half = body('half', [{ kind: 'half-space', point: [0, 0, r - h], normal: [0, 0, -1] }]);
    const found = shared(bar, half);
    // 128 sides take up to r (1 - cos(180° / 128)) = 0.006 mm off the rim.
    const rim = r * (1 - Math.cos(Math.PI / 128)) * 2 * Math.sqrt(2 * r * h - h ** 2) * length;
    expect(found).toBeLessThan(area * length);
    expect(found).toBeGreaterThan(area * length - 1.5 * rim);
  });

  it('is told of a half space and a box either way round, each where it stands', () => {
    const half = body('half', [{ kind: 'half-space', point: [0, 0, 0], normal: [0, 0, 1] }]);
    const poses = { half: frame([0, 0, 3]), one: frame([50, 60, 5]) };
    // From 0 to 10 up in its own coordinates, 0 to 10 again where it stands: 3 are below the plane.
    const one = box('box', [0, 0, 0], [10, 10, 10]);
    expect(shared(half, one, { a: poses.half, b: poses.one })).toBeCloseTo(300, 9);
    expect(shared(one, half, { a: poses.one, b: poses.half })).toBeCloseTo(300, 9);
  });

  it('is the part of a ring between its two arcs', () => {
    // A quarter of a ring of radii 20 and 22, 10 wide, all of it in a block that holds the outer round.
    const belt = body('belt', [
      {
        kind: 'belt',
        frame: WORLD,
        path: {
          kind: 'path',
          vertices: [
            { x: 20, y: 0, bulge: Math.tan(Math.PI / 8) },
            { x: 0, y: 20, bulge: 0 },
            { x: 0, y: 0, bulge: 0 },
          ],
        },
        thickness: 2,
        width: 10,
      },
    ]);
    // Beyond 12 x 12 lies the round alone: the sector less the two triangles under its ends.
    const corner = box('corner', [22, 22, 0], [20, 20, 10]);
    const sliver = shared(belt, corner);
    const beyond = (r: number): number => {
      // Of a round the part with x and y more than 12: sector less two triangles.
      const [from, to] = [Math.asin(12 / r), Math.acos(12 / r)];
      const side = Math.sqrt(r * r - 144);
      return (r * r * (to - from)) / 2 - 12 * (side - 12);
    };
    expect(sliver).toBeLessThan(10 * (beyond(22) - beyond(20)) * 1.01);
    expect(sliver).toBeGreaterThan(10 * (beyond(22) - beyond(20)) * 0.98);
  });

  it('is what manifold-3d says of random boxes and of meshes with holes', () => {
    const next = random(11);
    const range = (low: number, high: number): number => low + (high - low) * next();
    const ring = (): { mesh: Mesh; solid: InstanceType<typeof wasm.Manifold> } => {
      const height = range(4, 12);
      const solid = wasm.Manifold.cylinder(height, range(8, 14), range(6, 12), 24).subtract(
        wasm.Manifold.cylinder(3 * height, range(2, 4), range(2, 4), 12).translate([0, 0, -height]),
      );
      const { vertProperties, numProp, triVerts } = solid.getMesh();
      expect(numProp).toBe(3);
      return {
        mesh: {
          vertices: Float64Array.from(vertProperties),
          triangles: Uint32Array.from(triVerts),
        },
        solid,
      };
    };
    const matrix = ({ x, y, z, origin }: Frame) =>
      [...x, 0, ...y, 0, ...z, 0, ...origin, 1] as Parameters<typeof solidOf.transform>[0];
    const solidOf = wasm.Manifold.cube([1, 1, 1], true);
    let tried = 0;
    for (let i = 0; i < 30; i += 1) {
      const place = (): Frame =>
        turned([range(-1, 1), range(-1, 1), range(0.1, 1)], range(0, 180), [
          range(-6, 6),
          range(-6, 6),
          range(-6, 6),
        ]);
      const [poseA, poseB] = [place(), place()];
      const a = ring();
      const size: Vec3 = [range(4, 20), range(4, 20), range(4, 20)];
      const b = i % 2 === 0 ? ring() : undefined;
      const shape: Shape = b ? { kind: 'mesh', mesh: b.mesh } : { kind: 'box', frame: WORLD, size };
      const reference = a.solid
        .transform(matrix(poseA))
        .intersect((b?.solid ?? solidOf.scale(size)).transform(matrix(poseB)))
        .volume();
      const found = shared(body('a', [{ kind: 'mesh', mesh: a.mesh }]), body('b', [shape]), {
        a: poseA,
        b: poseB,
      });
      // The library works in single precision: 1e-7 of 20 mm on every face.
      expect(Math.abs(found - reference)).toBeLessThan(2e-3);
      if (reference > 1) tried += 1;
    }
    expect(tried).toBeGreaterThan(20);
  });
});
