import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { hollowDepth } from '../../src/grind/backing/hollow.ts';
import { softened, type SoftPress } from '../../src/grind/backing/soft.ts';

const press = fc.record({
  thickness: fc.double({ min: 1, max: 10, noNaN: true }),
  modulus: fc.double({ min: 2, max: 200, noNaN: true }),
  tension: fc.double({ min: 0.5, max: 10, noNaN: true }),
  push: fc.double({ min: 0.1, max: 5, noNaN: true }),
  height: fc.double({ min: 3, max: 40, noNaN: true }),
});

/**
 * The same belt by finite differences: nodes h apart over the bevel's half and far beyond it, sunk
 * by `sink` under the bevel, -T w'' + k w = 0 beside it, solved by elimination (tridiagonal).
 * Returns the force that foundation and belt then carry, N/mm. Shares no formula with the source.
 */
const carriedBy = (p: SoftPress, sink: number): number => {
  const k = p.modulus / p.thickness;
  const far = 12 * Math.sqrt(p.tension / k);
  const count = 4000;
  const h = far / count;
  // Unknowns w1 .. w(count - 1) between w0 = sink and w(count) = 0.
  const [off, on] = [-p.tension / h ** 2, (2 * p.tension) / h ** 2 + k];
  const c: number[] = [];
  const d: number[] = [];
  for (let i = 0; i < count - 1; i += 1) {
    const m = on - off * (c[i - 1] ?? 0);
    c.push(off / m);
    d.push(((i === 0 ? -off * sink : 0) - off * (d[i - 1] ?? 0)) / m);
  }
  const w: number[] = [];
  for (let i = count - 2; i >= 0; i -= 1) w[i] = (d[i] ?? 0) - (c[i] ?? 0) * (w[i + 1] ?? 0);
  const beside = (sink / 2 + w.reduce((sum, one) => sum + one, 0)) * h * k;
  return k * p.height * sink + 2 * beside;
};

describe('bevel on a soft backing', () => {
  it('carries the push, by the pressure under bevel and belt summed numerically', () => {
    fc.assert(
      fc.property(press, (p) => {
        const { sink } = softened(p);
        expect(Math.abs(carriedBy(p, sink) / p.push - 1)).toBeLessThan(1e-3);
      }),
      { numRuns: 30, seed: 3 },
    );
  });

  it('is the strip alone with a slack belt: w0 = q / (k b), Winkler', () => {
    const p = { thickness: 6, modulus: 30, tension: 1e-12, push: 1, height: 20 };
    expect(softened(p).sink).toBeCloseTo(1 / (5 * 20), 6);
  });

  it('gives way more where it is softer, thicker or pushed harder, less where the belt is tight', () => {
    const p = { thickness: 5, modulus: 20, tension: 3, push: 0.8, height: 20 };
    const { sink } = softened(p);
    expect(softened({ ...p, modulus: 10 }).sink).toBeGreaterThan(sink);
    expect(softened({ ...p, thickness: 8 }).sink).toBeGreaterThan(sink);
    expect(softened({ ...p, push: 1.6 }).sink).toBeCloseTo(2 * sink, 12);
    expect(softened({ ...p, tension: 9 }).roll).toBeLessThan(softened(p).roll);
  });
});

describe('hollow of a convex face', () => {
  // CRC circle segment, h = r - sqrt(r^2 - c^2 / 4): r = 1, c = 2 sin 30 deg, h = 1 - cos 30 deg.
  it('is the height of the segment', () => {
    expect(hollowDepth(1, 1)).toBeCloseTo(1 - Math.cos(Math.PI / 6), 12);
  });

  it('lies on the circle through both ends and the deepest point', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 300, max: 5000, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        (radius, chord) => {
          const h = hollowDepth(radius, chord);
          // Circumradius of the triangle of both ends and the deepest point: a b c / (4 area).
          const side = Math.hypot(chord / 2, h);
          expect((side * side * chord) / (2 * chord * h) / radius).toBeCloseTo(1, 6);
        },
      ),
      { numRuns: 50, seed: 4 },
    );
  });
});
