import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  acrossAt,
  cutterOf,
  depthAt,
  faceAt,
  flatSurface,
  radiusedSurface,
  riseAt,
  wheelSurface,
  type Surface,
} from '../../src/virtual/surface.ts';
import type { Pose, Row } from '../../src/virtual/pose.ts';

const rad = Math.PI / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A blade turned a little about each axis: rows of a constant, u, v and n, by matrices. */
const turned = (yaw: number, roll: number, tilt: number, at: readonly number[]): Pose => {
  const [a, b, c] = [yaw * rad, roll * rad, tilt * rad];
  // Columns: u along x, v along z upwards, n out of the blade towards -y; tilt about x, then roll
  // about y, then yaw about z.
  const start = [
    [1, 0, 0],
    [0, 0, 1],
    [0, -1, 0],
  ];
  const moved = start.map(([x = 0, y = 0, z = 0]) => {
    const [y1, z1] = [y * Math.cos(c) - z * Math.sin(c), y * Math.sin(c) + z * Math.cos(c)];
    const [x2, z2] = [x * Math.cos(b) + z1 * Math.sin(b), -x * Math.sin(b) + z1 * Math.cos(b)];
    return [x2 * Math.cos(a) - y1 * Math.sin(a), x2 * Math.sin(a) + y1 * Math.cos(a), z2];
  });
  const row = (k: number): Row => [
    at[k] ?? 0,
    moved[0]?.[k] ?? 0,
    moved[1]?.[k] ?? 0,
    moved[2]?.[k] ?? 0,
  ];
  return { m: 20, v0: 5, x: row(0), y: row(1), z: row(2) };
};

const placed = ({ m, v0, x, y, z }: Pose, u: number, v: number, n: number): number[] =>
  [x, y, z].map(([at, along, across, out]) => at + along * (u - m) + across * (v - v0) + out * n);

/** How far a place of the seat frame is before the face: by the face as it is described. */
const before = ({ lean, round }: Surface, y: number, z: number): number => {
  const [c, s] = [Math.cos(lean * rad), Math.sin(lean * rad)];
  const [out, along] = [y * c + z * s, z * c - y * s];
  return round ? Math.hypot(out - round.axis[0], along - round.axis[1]) - round.radius : out;
};

describe.each([
  ['a flat platen', flatSurface(0)],
  ['a platen that leans', flatSurface(4)],
  ['a radiused platen', radiusedSurface(-3, 900, 20)],
  ['a wheel', wheelSurface(120, 10)],
] as const)('the face of %s', (_, surface) => {
  it('over a placed blade is where the placed blade meets it', () => {
    const small = between(-6, 6);
    fc.assert(
      fc.property(
        fc.tuple(small, small, small),
        fc.tuple(between(-3, 3), between(1, 6), between(0, 20)),
        between(0, 40),
        between(0, 25),
        ([yaw, roll, tilt], at, u, v) => {
          const pose = turned(yaw, roll, tilt, at);
          const cutter = cutterOf(pose, surface);
          const n = depthAt(cutter, u, v);
          const [x = NaN, y = NaN, z = NaN] = placed(pose, u, v, n);
          expect(before(surface, y, z)).toBeCloseTo(0, 8);
          expect(acrossAt(cutter, u, v, n)).toBeCloseTo(x, 9);
          // And it rises across the blade as a near place of it tells.
          const h = 1e-4;
          const slope = (depthAt(cutter, u, v + h) - depthAt(cutter, u, v - h)) / (2 * h);
          expect(riseAt(cutter, u, v, n)).toBeCloseTo(slope, 6);
          expect(before(surface, faceAt(surface, z), z)).toBeCloseTo(0, 8);
        },
      ),
      { numRuns: 200, seed: 11 },
    );
  });
});
