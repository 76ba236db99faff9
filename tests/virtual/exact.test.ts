import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeOn } from '../../src/blade/place.ts';
import { shapeOf } from '../../src/blade/shape.ts';
import { grindVirtually } from '../../src/virtual/grind.ts';
import { edgeOf, grindLine, lineHeight } from '../../src/virtual/measure/line.ts';
import { radiusedSurface } from '../../src/virtual/surface.ts';
import { withYawStep, yawStep } from '../../src/virtual/yaw-step.ts';
import { bladeOf, passOf } from './blades.ts';

const rad = Math.PI / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const coarse = { step: 5, rows: 30 };

/** Greatest of what a function of the columns gives. */
const most = (values: ArrayLike<number>, f: (value: number, i: number) => number): number =>
  Array.from(values).reduce((max, value, i) => Math.max(max, f(value, i)), -Infinity);

describe('a straight bar ground virtually', () => {
  it('gets the bevel of the closed form, square platen, rounded spine, unequal sides', () => {
    const bars = fc.record({
      t: between(1.5, 6),
      h: between(20, 70),
      e: between(0.1, 0.6),
      share: between(0.3, 0.7),
      radius: between(0, 0.45),
      a: between(2, 6),
    });
    fc.assert(
      fc.property(bars, ({ t, h, e, share, radius, a }) => {
        const r = radius * t;
        // Domain: below full height on both sides, so that side two finds the spine as it was.
        const rise = t / 2 - e * Math.min(share, 1 - share);
        fc.pre(rise / Math.tan(a * rad) < h - r - 1);
        const length = 120;
        const blade = bladeOf({
          length,
          height: h,
          thickness: [{ u: 0, t }],
          radius: r,
          shareLeft: share,
        });
        const sides = [
          ['left', share * e],
          ['right', (1 - share) * e],
        ] as const;
        const passes = sides.map(([side, edge]) => {
          // s = r + (T/2 + e_side - r) cos a + (H - r) sin a, derived from the rounded corners' centres.
          const s = r + (t / 2 + edge - r) * Math.cos(a * rad) + (h - r) * Math.sin(a * rad);
          return passOf(side, s, length, { edge: e });
        });
        const done = grindVirtually({ blade, passes, start: { kind: 'bar' }, resolution: coarse });
        for (const [side, edge] of sides) {
          const b = (t / 2 - edge) / Math.tan(a * rad);
          const line = grindLine(done.finished, side);
          for (const u of [1, length / 2, length - 4]) {
            const height = lineHeight(done.finished, line, placeOn(done.shape, u));
            expect(Math.abs(height - b)).toBeLessThan(0.005);
          }
          // Up to where the belt comes at the end of the stroke.
          const off = most(edgeOf(done.finished, side), (at, i) =>
            (done.finished.us[i] ?? 0) < 0 ? 0 : Math.abs(at - edge),
          );
          expect(off).toBeLessThan(1e-4);
        }
      }),
      { numRuns: 25, seed: 8 },
    );
  });

  it('gets the angle of the closed form on a leaning platen', () => {
    fc.assert(
      fc.property(between(-2, 6), between(2.5, 6), (lean, a) => {
        const [t, e, h, length] = [3, 0.2, 50, 120];
        fc.pre(a + lean > 1);
        const [q, tt] = [(a + lean) * rad, lean * rad];
        // Sharp corners, section 3 of the domain page, solved for s; derived again by hand.
        const s =
          ((t + e) / 2) * Math.cos(q) +
          h * Math.sin(q) -
          (h * Math.cos(q) + ((t - e) / 2) * Math.sin(q)) * Math.tan(tt);
        const done = grindVirtually({
          blade: bladeOf({ length, height: h }),
          passes: [passOf('left', s, length, { lean })],
          start: { kind: 'bar' },
          resolution: coarse,
        });
        const line = grindLine(done.finished, 'left');
        const height = lineHeight(done.finished, line, placeOn(done.shape, 60));
        expect(Math.abs(height - (t - e) / 2 / Math.tan(a * rad))).toBeLessThan(0.005);
      }),
      { numRuns: 25, seed: 9 },
    );
  });

  it('needs the step nearer on side two at full height: 2.646 and 2.294', () => {
    // T 3, e 0.2, H 30, 2 degrees: (T/2 + e/2) cos 2 + H sin 2; then 0.1 + 30 tan 2 for T/2.
    const length = 120;
    const one = 1.6 * Math.cos(2 * rad) + 30 * Math.sin(2 * rad);
    const two = (0.2 + 30 * Math.tan(2 * rad)) * Math.cos(2 * rad) + 30 * Math.sin(2 * rad);
    expect(one).toBeCloseTo(2.646, 3);
    expect(two).toBeCloseTo(2.294, 3);
    const done = grindVirtually({
      blade: bladeOf({ length, height: 30, ricasso: 0 }),
      passes: [passOf('left', one, length), passOf('right', two, length)],
      start: { kind: 'bar' },
      resolution: coarse,
    });
    // Both faces reach the spine at the same distance from the midplane: 0.1 + 30 tan 2.
    const { left, right, rows, us } = done.finished;
    us.forEach((_, i) => {
      const wanted = 0.1 + 30 * Math.tan(2 * rad);
      expect(Math.abs((left[i * rows] ?? 0) - wanted)).toBeLessThan(0.005);
      expect(Math.abs((right[i * rows] ?? 0) - wanted)).toBeLessThan(0.005);
    });
  });

  it('takes the volume of a wedge', () => {
    const [t, e, h, a, length] = [3, 0.2, 50, 3.5, 120];
    const s = ((t + e) / 2) * Math.cos(a * rad) + h * Math.sin(a * rad);
    const done = grindVirtually({
      blade: bladeOf({ length, height: h, ricasso: 0 }),
      passes: [passOf('left', s, length), passOf('right', s, length)],
      start: { kind: 'bar' },
      resolution: { step: 5, rows: 400 },
    });
    const b = (t - e) / 2 / Math.tan(a * rad);
    const wedge = (((t - e) / 2) * b * length) / 2;
    for (const { volume } of done.passes) expect(volume / wedge).toBeCloseTo(1, 4);
  });

  it('hollows by the sagitta of a radiused platen', () => {
    const [t, e, h, radius, length] = [3, 0.2, 50, 900, 120];
    const along = 40;
    const s = ((t + e) / 2) * Math.cos(3.5 * rad) + h * Math.sin(3.5 * rad);
    const done = grindVirtually({
      blade: bladeOf({ length, height: h, ricasso: 0 }),
      passes: [{ ...passOf('left', s, length), surface: radiusedSurface(0, radius, along) }],
      start: { kind: 'bar' },
      resolution: { step: 10, rows: 200 },
    });
    // In one column the ground face is an arc of that radius: sagitta over any chord c is c^2 / 8 R.
    const { left, stock, v, rows } = done.finished;
    const base = 4 * rows;
    const ground = Array.from({ length: rows }, (_, j) => base + j).filter(
      (k) => (left[k] ?? 0) < (stock[k] ?? 0) - 1e-6,
    );
    const [first, last] = [ground[0] ?? 0, ground.at(-1) ?? 0];
    const middle = Math.round((first + last) / 2);
    const at = (k: number): [number, number] => [v[k] ?? 0, left[k] ?? 0];
    const [[v0, n0], [v1, n1], [vm, nm]] = [at(first), at(last), at(middle)];
    const chord = Math.hypot(v1 - v0, n1 - n0);
    const onChord = n0 + ((n1 - n0) * (vm - v0)) / (v1 - v0);
    const half = ((vm - v0) * (v1 - vm)) / (v1 - v0) ** 2;
    const sagitta = (onChord - nm) * ((v1 - v0) / chord);
    expect(sagitta / ((chord * chord * half) / (2 * radius))).toBeCloseTo(1, 2);
    expect(chord).toBeGreaterThan(15);
  });
});

describe('a step turned by half the taper', () => {
  const thickness = [
    { u: 0, t: 3 },
    { u: 150, t: 1.5 },
  ];
  const blade = bladeOf({ ricasso: 0, thickness });
  const setoff = 1.2 * Math.cos(3.5 * rad) + 50 * Math.sin(3.5 * rad);
  // Just over the belt's width: the tip never leaves the belt.
  const straight = passOf('left', setoff, 150, { overlap: 50.5 });
  const edgeOver = (pass: typeof straight): number => {
    const { finished } = grindVirtually({
      blade,
      passes: [pass],
      start: { kind: 'bar' },
      resolution: { step: 2, rows: 20 },
    });
    return most(edgeOf(finished, 'left').subarray(1, -1), (edge) => Math.abs(edge - 0.1));
  };

  it('has the angle of the flank', () => {
    const step = yawStep(shapeOf(blade));
    if (!step.ok) throw new Error('tapered');
    // The flank falls by 0.75 over 150.
    expect(step.value.half).toBeCloseTo(Math.atan(0.75 / 150) / rad, 12);
    expect(yawStep(shapeOf(bladeOf())).ok).toBe(false);
  });

  it('evens the edge that a straight step leaves 0.25 thicker on each side', () => {
    const step = yawStep(shapeOf(blade));
    if (!step.ok) throw new Error('tapered');
    expect(edgeOver(straight)).toBeGreaterThan(0.23);
    expect(edgeOver(withYawStep(straight, step.value))).toBeLessThan(1e-3);
  });
});
