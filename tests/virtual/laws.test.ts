import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { place } from '../../src/geometry/frame.ts';
import { grindVirtually } from '../../src/virtual/grind.ts';
import { fieldMesh } from '../../src/virtual/measure/mesh.ts';
import { edgeOf } from '../../src/virtual/measure/line.ts';
import { volumeOf } from '../../src/virtual/measure/volume.ts';
import type { Field } from '../../src/virtual/field.ts';
import { frameOf } from '../../src/virtual/pose.ts';
import { toManifold } from '../model/manifold.ts';
import { bladeOf, passOf } from './blades.ts';

const rad = Math.PI / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Tapered blades with belly and falling tip, a setoff that grinds them, and the way they are stroked. */
const situation = fc
  .record({
    length: between(90, 200),
    height: between(28, 55),
    belly: between(0.3, 0.9),
    fall: between(0, 0.06),
    drop: between(0.4, 0.9),
    tip: between(0, 0.2),
    t: between(2, 4),
    taper: between(0.5, 1),
    radius: between(0, 0.3),
    angle: between(2.5, 5),
    overlap: between(3, 50),
    lean: between(-1, 3),
  })
  .map((r) => {
    const bellyHeight = r.height * (1 - r.fall);
    const blade = bladeOf({
      outline: {
        kind: 'dimensions',
        length: r.length,
        heelHeight: r.height,
        bellyStart: r.belly * r.length,
        bellyHeight,
        spineDropStart: r.drop * r.length,
        tipDrop: r.tip * bellyHeight,
        spineSagitta: 0,
      },
      thickness: [
        { u: 0, t: r.t },
        { u: r.length, t: r.t * r.taper },
      ],
      radius: r.radius,
    });
    const setoff = (r.t / 2 + 0.1) * Math.cos(r.angle * rad) + r.height * Math.sin(r.angle * rad);
    const pass = (side: 'left' | 'right') =>
      passOf(side, setoff, r.length, {
        overlap: Math.min(r.overlap, r.length - 50),
        lean: r.lean,
      });
    return { blade, passes: [pass('left'), pass('right')] };
  });

const resolution = { step: 2, rows: 24 };

/** Whether a column is at least half as high as the blade at its heel: not the last of the tip. */
const high = ({ us, rows, v }: Field, i: number): boolean => {
  const height = (k: number): number => (v[(k + 1) * rows - 1] ?? 0) - (v[k * rows] ?? 0);
  return height(i) >= height(us.indexOf(0)) / 2;
};

describe('whatever the blade', () => {
  it('keeps the sides mirror images until side one meets the step', () => {
    fc.assert(
      fc.property(situation, ({ blade, passes }) => {
        const each = passes.map((pass) =>
          grindVirtually({ blade, passes: [pass], start: { kind: 'bar' }, resolution }),
        );
        const [one, two] = each;
        expect(one?.finished.left).toEqual(two?.finished.right);
        expect(one?.finished.right).toEqual(two?.finished.left);
      }),
      { numRuns: 10, seed: 3 },
    );
  });

  it('takes nothing that no pose reaches, and leaves nothing that a pose reaches', () => {
    fc.assert(
      fc.property(situation, ({ blade, passes: [pass] }) => {
        if (pass === undefined) return;
        const done = grindVirtually({ blade, passes: [pass], start: { kind: 'bar' }, resolution });
        const { us, rows, v, stock, left } = done.finished;
        const { lean } = pass.surface;
        const [c, s] = [Math.cos(lean * rad), Math.sin(lean * rad)];
        const frames = done.passes.flatMap(({ reached, before }) =>
          [...reached, ...before].map(({ pose }) => frameOf(pose, 'left')),
        );
        us.forEach((u, i) => {
          for (let k = i * rows; k < (i + 1) * rows; k += 1) {
            const w = left[k] ?? 0;
            // How far each pose has this point of the finished face before the abrasive face.
            const before = (half: number): number =>
              frames.reduce((least, frame) => {
                const [x, y, z] = place(frame, [u, v[k] ?? 0, w]);
                return Math.abs(x) <= half ? Math.min(least, y * c + z * s) : least;
              }, Infinity);
            expect(before(25)).toBeGreaterThan(-1e-9);
            // A node passes the belt's end between two poses, here 2 mm apart, one of which has it
            // beside the belt: the face is between what those two would leave.
            if (w < (stock[k] ?? 0) - 1e-6) expect(before(27.5)).toBeLessThan(1e-6);
          }
        });
      }),
      { numRuns: 8, seed: 4 },
    );
  });

  it('takes as much as the solids before and after differ by', () => {
    fc.assert(
      fc.property(situation, ({ blade, passes }) => {
        const done = grindVirtually({ blade, passes, start: { kind: 'bar' }, resolution });
        const [bar, ground] = [done.start, done.finished].map((f) => toManifold(fieldMesh(f)));
        if (bar === undefined || ground === undefined) throw new Error('two solids');
        const taken = done.passes.reduce((sum, { volume }) => sum + volume, 0);
        expect(taken).toBeCloseTo(volumeOf(done.start) - volumeOf(done.finished), 6);
        // Single precision and the triangles' diagonals: a thousandth of the blade at this grid.
        const between = bar.subtract(ground).volume();
        expect(Math.abs(taken - between)).toBeLessThan(0.003 * taken + 0.2);
        expect(ground.subtract(bar).volume()).toBeLessThan(0.001 * bar.volume());
      }),
      { numRuns: 6, seed: 5 },
    );
  });

  it('never takes the edge below its stop by more than the step of the grid explains', () => {
    fc.assert(
      fc.property(situation, ({ blade, passes }) => {
        const done = grindVirtually({ blade, passes, start: { kind: 'bar' }, resolution });
        for (const side of ['left', 'right'] as const)
          edgeOf(done.finished, side).forEach((edge, i) => {
            // Poses are added until the way between them is straight to 1e-4 mm, give or take the grid.
            if (high(done.finished, i)) expect(edge).toBeGreaterThan(0.097);
          });
      }),
      { numRuns: 10, seed: 6 },
    );
  });
});

describe('a finer grid', () => {
  it('converges with the square of its step', () => {
    const blade = bladeOf({
      ricasso: 0,
      outline: {
        kind: 'dimensions',
        length: 160,
        heelHeight: 50,
        bellyStart: 64,
        bellyHeight: 48,
        spineDropStart: 80,
        tipDrop: 8,
        spineSagitta: 0,
      },
      thickness: [
        { u: 0, t: 3 },
        { u: 160, t: 2 },
      ],
    });
    const setoff = 1.6 * Math.cos(3.5 * rad) + 50 * Math.sin(3.5 * rad);
    const pass = passOf('left', setoff, 160, { overlap: 16 });
    const run = (step: number) =>
      grindVirtually({
        blade,
        passes: [pass],
        start: { kind: 'bar' },
        resolution: { step, rows: 32 },
      });
    // Common columns of all grids, every row of them.
    const at = [8, 24, 40, 56, 72, 88, 104, 120];
    const faces = (step: number): number[] => {
      const { us, rows, left } = run(step).finished;
      return at.flatMap((u) => {
        const i = us.indexOf(u);
        return Array.from(left.subarray(i * rows, (i + 1) * rows));
      });
    };
    const best = faces(0.25);
    const errors = [8, 4, 2, 1].map((step) => {
      const off = faces(step).map((n, k) => n - (best[k] ?? 0));
      return Math.sqrt(off.reduce((sum, d) => sum + d * d, 0) / off.length);
    });
    const orders = errors.slice(1).map((error, i) => Math.log2((errors[i] ?? 0) / error));
    const mean = orders.reduce((sum, order) => sum + order, 0) / orders.length;
    expect(mean).toBeGreaterThan(1.5);
    expect(errors.at(-1)).toBeLessThan(5e-4);
  });
});
