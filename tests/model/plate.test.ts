import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rounded } from '../../src/geometry/fillet.ts';
import { circle, polygon, rectangle, slot, type Loop } from '../../src/geometry/loop.ts';
import { boundingBox, loopGap, perimeter, signedArea } from '../../src/geometry/loop-measure.ts';
import { reversed } from '../../src/geometry/loop-transform.ts';
import { offset } from '../../src/geometry/offset.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { kerfed } from '../../src/model/kerf.ts';
import { massOf, stackVolume } from '../../src/model/measure.ts';
import type { Hole } from '../../src/model/part.ts';
import { plate, type PlateSpec } from '../../src/model/plate.ts';
import { CrossSection } from './manifold.ts';
import { flatten } from '../../src/geometry/flatten.ts';

const made = <T>(result: { ok: true; value: T } | { ok: false; issues: readonly unknown[] }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};

const round = (id: string, at: Vec2, size: number): Hole => ({
  id,
  loop: circle(at, size / 2),
  at,
  size,
  purpose: 'test',
});

const spec = (holes: readonly Hole[], outline: Loop = rectangle([0, 0], [100, 50])): PlateSpec => ({
  id: 'base',
  name: 'Base',
  quantity: 1,
  material: 'mild steel',
  finish: '',
  density: 7.85,
  process: 'laser',
  thickness: 5,
  outline,
  holes,
});

describe('plates', () => {
  // Volume and masses computed from the closed form with the named densities (kg/m^3).
  it.each([
    [7.85, 195.3175],
    [2.7, 67.1793],
    [8, 199.0497],
    [1.24, 30.8527],
    [1.27, 31.5991],
    [0.935, 23.2639],
  ])('at %f g/cm^3 the smoke plate has its mass', (density, grams) => {
    const part = made(plate({ ...spec([round('a', [20, 25], 5.5)]), density }));
    expect(stackVolume(part.layers)).toBeCloseTo(24881.2085, 4);
    expect(massOf(part)).toBeCloseTo(grams, 3);
  });

  it('turns its contours as profiles want them', () => {
    const long: Hole = { ...round('s', [50, 25], 8), loop: slot([40, 25], [60, 25], 8) };
    const part = made(plate(spec([long], reversed(rectangle([0, 0], [100, 50])))));
    const [layer] = part.layers;
    expect(layer && signedArea(layer.profile.outer)).toBeCloseTo(5000, 9);
    expect(layer?.profile.holes.map(signedArea)[0]).toBeLessThan(0);
  });

  it.each([
    ['hole-outside', [round('a', [2, 25], 5.5)]],
    ['hole-outside', [round('a', [200, 25], 5.5)]],
    ['holes-overlap', [round('a', [20, 25], 5.5), round('b', [24, 25], 5.5)]],
    ['holes-overlap', [round('a', [20, 25], 5.5), round('b', [20, 25], 12)]],
    ['hole-repeated', [round('a', [20, 25], 5.5), round('a', [60, 25], 5.5)]],
    ['contour-fault', [round('a', [20, 25], 0)]],
    ['contour-fault', [round('a', [Number.NaN, 25], 5)]],
  ])('refuses %s, naming part and hole', (code, holes) => {
    const result = plate(spec(holes));
    expect(result.ok).toBe(false);
    expect(result.issues.map((issue) => issue.code)).toContain(code);
    expect(result.issues[0]?.message).toContain('base');
    expect(result.issues[0]?.message).toContain('"a"');
  });

  it('refuses outlines that cross themselves or have tiny edges, and no thickness', () => {
    const bow = polygon([
      [0, 0],
      [50, 50],
      [50, 0],
      [0, 50],
    ]);
    expect(plate(spec([], bow)).issues.map((i) => i.code)).toEqual(['contour-fault']);
    const tiny = polygon([
      [0, 0],
      [50, 0],
      [50, 0.05],
      [50, 50],
      [0, 50],
    ]);
    expect(plate(spec([], tiny)).issues[0]?.message).toContain('0.1 mm');
    expect(plate({ ...spec([]), thickness: 0 }).issues[0]?.code).toBe('plate-thickness');
  });
});

describe('kerf', () => {
  // Steiner's formula for a convex body: A + P d + pi d^2, corners being round.
  it.each([0.1, 0.2, 0.5])('grows a convex rounded outline exactly for a kerf of %f', (kerf) => {
    const outline = made(
      rounded(
        [
          [0, 0],
          [90, 10],
          [80, 60],
          [20, 70],
        ],
        6,
      ),
    );
    const grown = made(kerfed({ outer: outline, holes: [] }, kerf)).outer;
    const d = kerf / 2;
    expect(signedArea(grown)).toBeCloseTo(
      signedArea(outline) + perimeter(outline) * d + Math.PI * d * d,
      7,
    );
    expect(perimeter(grown)).toBeCloseTo(perimeter(outline) + 2 * Math.PI * d, 7);
    expect(grown.kind === 'path' && grown.vertices.length).toBe(8);
  });

  it('grows sizes and shrinks holes by exactly the kerf', () => {
    const profile = {
      outer: rectangle([0, 0], [100, 50]),
      holes: [circle([20, 25], 3.3), slot([50, 25], [70, 25], 8), rectangle([80, 20], [90, 30])],
    };
    const { outer, holes } = made(kerfed(profile, 0.2));
    expect(signedArea(outer)).toBeCloseTo(100.2 * 50.2, 9);
    expect(boundingBox(outer).min.map((v) => v.toFixed(9))).toEqual([
      '-0.100000000',
      '-0.100000000',
    ]);
    expect(boundingBox(outer).max.map((v) => v.toFixed(9))).toEqual([
      '100.100000000',
      '50.100000000',
    ]);
    const [bore, long, window] = holes;
    expect(bore && signedArea(bore)).toBeCloseTo(Math.PI * 3.2 ** 2, 9);
    expect(long && signedArea(long)).toBeCloseTo(20 * 7.8 + Math.PI * 3.9 ** 2, 9);
    expect(window && signedArea(window)).toBeCloseTo(9.8 ** 2, 9);
    expect(made(kerfed(profile, 0))).toEqual(profile);
  });

  it('agrees with the reference library on random polygons', () => {
    const radius = fc.double({ min: 20, max: 60, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(radius, { minLength: 5, maxLength: 9 }),
        fc.double({ min: -0.4, max: 0.4, noNaN: true }),
        (radii, by) => {
          if (Math.abs(by) < 0.01) return;
          const corners = radii.map((r, i): Vec2 => {
            const angle = (2 * Math.PI * i) / radii.length;
            return [r * Math.cos(angle), r * Math.sin(angle)];
          });
          const outline = rounded(corners, 1);
          if (!outline.ok) return;
          const moved = made(offset(outline.value, by));
          expect(loopGap(moved, outline.value)).toBeCloseTo(Math.abs(by), 6);
          const rings = flatten(outline.value, 1e-4).map(([x, y]): [number, number] => [x, y]);
          const flat = new CrossSection([rings]);
          const other = flat.offset(by, 'Round', 2, 4000);
          expect(Math.abs(signedArea(moved) - other.area())).toBeLessThan(0.05);
          flat.delete();
          other.delete();
        },
      ),
      { numRuns: 60, seed: 7 },
    );
  });

  it('rounds the outside of very sharp corners only', () => {
    const wedge = polygon([
      [0, 0],
      [60, 0],
      [60, 6],
    ]);
    const grown = made(offset(wedge, 0.2));
    expect(grown.kind === 'path' && grown.vertices.length).toBe(4);
    const shrunk = made(offset(wedge, -0.2));
    expect(shrunk.kind === 'path' && shrunk.vertices.length).toBe(3);
  });

  it('refuses features that are too small for the kerf', () => {
    const mouth = polygon([
      [0, 0],
      [10, 0],
      [10, 10],
      [5.1, 10],
      [5.1, 5],
      [4.95, 5],
      [4.95, 10],
      [0, 10],
    ]);
    expect(kerfed({ outer: mouth, holes: [] }, 0.2).issues[0]?.code).toBe('offset-vanishes');
    const outer = rectangle([0, 0], [20, 20]);
    expect(kerfed({ outer, holes: [circle([5, 5], 0.08)] }, 0.2).ok).toBe(false);
    expect(kerfed({ outer, holes: [slot([4, 4], [9, 4], 0.15)] }, 0.2).ok).toBe(false);
  });
});
