import { extrusions, geometries, measurements, primitives } from '@jscad/modeling';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circle, polygon, rectangle, slot, type Loop } from '../../src/geometry/loop.ts';
import { rotated, translated } from '../../src/geometry/loop-transform.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { audit, meshVolume } from '../../src/model/audit.ts';
import { stackBox, stackVolume } from '../../src/model/measure.ts';
import type { Layer } from '../../src/model/part.ts';
import { meshOf } from '../../src/model/solid.ts';
import { toManifold } from './manifold.ts';

const layer = (outer: Loop, holes: readonly Loop[], from: number, to: number): Layer => ({
  profile: { outer, holes },
  from,
  to,
});

const made = <T>(result: { ok: true; value: T } | { ok: false; issues: readonly unknown[] }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};

/** n corners on a circle, the first at angle 0. */
const ngon = (n: number, radius: number, [x, y]: Vec2): Loop =>
  polygon(
    Array.from({ length: n }, (_, i) => [
      x + radius * Math.cos((2 * Math.PI * i) / n),
      y + radius * Math.sin((2 * Math.PI * i) / n),
    ]),
  );

describe('meshes of stacks', () => {
  // 100 x 50 x 5 less a 256-gon of diameter 5.5 at (20, 25): the values of manifold-3d 3.5.4.
  it('gives the smoke plate', () => {
    const layers = [layer(rectangle([0, 0], [100, 50]), [ngon(256, 2.75, [20, 25])], 0, 5)];
    const seen = audit(made(meshOf(layers)));
    expect(seen.volume).toBeCloseTo(24881.220454, 2);
    expect(stackVolume(layers)).toBeCloseTo(
      25000 - 5 * 128 * 2.75 ** 2 * Math.sin((2 * Math.PI) / 256),
      6,
    );
    expect(seen.area).toBeCloseTo(11538.879811, 2);
    expect(seen).toMatchObject({ sound: true, genus: 1, shells: 1, triangles: 1040 });
    expect([...seen.min, ...seen.max]).toEqual([0, 0, 0, 100, 50, 5]);
    const round = [layer(rectangle([0, 0], [100, 50]), [circle([20, 25], 2.75)], 0, 5)];
    expect(stackVolume(round)).toBeCloseTo(24881.208528, 6);
  });

  it('is watertight across steps, bosses and blind holes', () => {
    const bore = circle([20, 20], 3);
    const layers = [
      layer(rectangle([0, 0], [40, 40]), [bore, slot([5, 5], [30, 5], 4)], 0, 5),
      layer(circle([20, 20], 10), [bore], 5, 9),
      layer(circle([20, 20], 10), [circle([20, 20], 6)], 9, 12),
      layer(rectangle([2, 15], [6, 25]), [], 5, 20),
    ];
    const mesh = made(meshOf(layers));
    const seen = audit(mesh);
    expect(seen).toMatchObject({ sound: true, genus: 2, shells: 1 });
    expect(Math.abs(seen.volume / stackVolume(layers) - 1)).toBeLessThan(1e-3);
    const solid = toManifold(mesh);
    expect(solid.status()).toBe('NoError');
    expect(solid.genus()).toBe(2);
    expect(solid.volume()).toBeCloseTo(seen.volume, 2);
    expect(solid.surfaceArea()).toBeCloseTo(seen.area, 2);
    solid.delete();
    const box = stackBox(layers);
    expect(seen.min).toEqual(box.min);
    expect(seen.max).toEqual(box.max);
  });

  it('agrees with an extrusion of the modelling library', () => {
    // Cut in 2D by listing the sides, because the library's 2D booleans snap their corners.
    const { geom2, geom3, poly3 } = geometries;
    const disc = (n: number, radius: number, [x, y]: Vec2): [Vec2, Vec2][] =>
      Array.from({ length: n }, (_, i): [Vec2, Vec2] => {
        const on = (k: number): Vec2 => [
          x + radius * Math.cos((2 * Math.PI * k) / n),
          y + radius * Math.sin((2 * Math.PI * k) / n),
        ];
        return [on((i + 1) % n), on(i)];
      });
    const plate = geom2.toSides(primitives.rectangle({ size: [80, 30], center: [40, 15] }));
    const flat = geom2.create([
      ...plate,
      ...[...disc(64, 4, [20, 15]), ...disc(64, 6, [55, 12])].map(
        ([p, q]): [[number, number], [number, number]] => [[...p], [...q]],
      ),
    ]);
    const solid = extrusions.extrudeLinear({ height: 6 }, flat);
    const mesh = made(
      meshOf([
        layer(rectangle([0, 0], [80, 30]), [ngon(64, 4, [20, 15]), ngon(64, 6, [55, 12])], 0, 6),
      ]),
    );
    // Our corners lie on the output grid of 1e-6 mm.
    expect(meshVolume(mesh)).toBeCloseTo(measurements.measureVolume(solid), 3);
    expect(audit(mesh).area).toBeCloseTo(
      geom3.toPolygons(solid).reduce((sum, p) => sum + poly3.measureArea(p), 0),
      2,
    );
  });

  it('leaves room for a pin of the nominal size in every hole', () => {
    const mesh = made(
      meshOf([layer(rectangle([-20, -20], [20, 20]), [circle([1, 2], 3.3)], 0, 5)]),
    );
    const { vertices, triangles } = mesh;
    let least = Infinity;
    for (let i = 0; i < triangles.length; i += 3)
      for (const [a, b] of [
        [0, 1],
        [1, 2],
        [2, 0],
      ] as const) {
        const [p, q] = [triangles[i + a] ?? 0, triangles[i + b] ?? 0];
        const [px, py] = [(vertices[3 * p] ?? 0) - 1, (vertices[3 * p + 1] ?? 0) - 2];
        const [qx, qy] = [(vertices[3 * q] ?? 0) - 1, (vertices[3 * q + 1] ?? 0) - 2];
        if (Math.hypot(px, py) > 4 || Math.hypot(qx, qy) > 4) continue;
        least = Math.min(least, Math.hypot((px + qx) / 2, (py + qy) / 2));
      }
    expect(least).toBeGreaterThanOrEqual(3.3 - 1e-6);
    expect(least).toBeLessThan(3.3 + 0.02);
  });

  it('divides small round parts finely enough for their volume', () => {
    for (const radius of [0.5, 1, 2, 3, 6, 40]) {
      const pin = [layer(circle([0, 0], radius), [], 0, 10)];
      const share = Math.abs(meshVolume(made(meshOf(pin))) / (Math.PI * radius ** 2 * 10) - 1);
      expect(share).toBeLessThan(1e-3);
    }
    const coarse = made(meshOf([layer(circle([0, 0], 2), [], 0, 10)], { volumeShare: Infinity }));
    const fine = made(meshOf([layer(circle([0, 0], 2), [], 0, 10)]));
    expect(fine.triangles.length).toBeGreaterThan(coarse.triangles.length);
  });

  it('is sound for random plates with holes and a boss', () => {
    const at = fc.integer({ min: 0, max: 3 });
    const size = fc.double({ min: 0.8, max: 4.5, noNaN: true });
    const angle = fc.double({ min: 0, max: 360, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(at, at, size, angle, fc.boolean()), { maxLength: 10 }),
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        angle,
        (features, height, turn) => {
          const cells = new Map(features.map((f) => [f[0] * 4 + f[1], f]));
          const holes = [...cells.values()].map(([x, y, r, a, long]): Loop => {
            const where: Vec2 = [10 + 12 * x, 10 + 12 * y];
            return long
              ? translated(rotated(slot([-1, 0], [1, 0], r), a), where)
              : circle(where, r);
          });
          const round = (loop: Loop): Loop => rotated(loop, turn, [20, 30]);
          const layers = [
            layer(round(rectangle([0, 0], [56, 56])), holes.map(round), 0, height),
            layer(round(circle([28, 28], 0.4)), [], height, 2 * height),
          ];
          const seen = audit(made(meshOf(layers)));
          expect(seen).toMatchObject({ sound: true, shells: 1, genus: holes.length });
          expect(Math.abs(seen.volume / stackVolume(layers) - 1)).toBeLessThan(1e-3);
        },
      ),
      { numRuns: 25, seed: 4 },
    );
  });

  it('refuses stacks whose contours touch, naming level and contours', () => {
    const base = layer(rectangle([0, 0], [40, 40]), [circle([20, 20], 5)], 0, 5);
    const crossing = meshOf([base, layer(circle([24, 20], 5), [], 5, 9)]);
    expect(crossing.issues.map((i) => i.code)).toEqual(['layers-touch']);
    expect(crossing.issues[0]?.message).toContain('5 mm');
    const plug = meshOf([base, layer(circle([20, 20], 5), [], 5, 9)]);
    expect(plug.issues.map((i) => i.code)).toEqual(['layers-touch']);
    const double = meshOf([base, layer(rectangle([30, 30], [38, 38]), [], 2, 9)]);
    expect(double.issues.map((i) => i.code)).toEqual(['layers-overlap']);
    expect(meshOf([]).ok).toBe(false);
    expect(meshOf([{ ...base, to: 0 }]).issues[0]?.code).toBe('layer-without-height');
  });
});

describe('the audit', () => {
  const cube = made(meshOf([layer(rectangle([0, 0], [10, 10]), [], 0, 10)]));

  it('measures a cube', () => {
    expect(audit(cube)).toMatchObject({
      openEdges: 0,
      degenerate: 0,
      crossings: 0,
      volume: 1000,
      area: 600,
      triangles: 12,
      vertices: 8,
      shells: 1,
      euler: 2,
      genus: 0,
      sound: true,
    });
  });

  it('finds a missing triangle, a turned one and an inside-out body', () => {
    const missing = { ...cube, triangles: cube.triangles.slice(3) };
    expect(audit(missing)).toMatchObject({ openEdges: 3, sound: false });
    const turned = { ...cube, triangles: cube.triangles.slice() };
    turned.triangles.set([cube.triangles[1] ?? 0, cube.triangles[0] ?? 0], 0);
    expect(audit(turned).openEdges).toBeGreaterThan(0);
    const reversed = { ...cube, triangles: cube.triangles.slice().reverse() };
    expect(audit(reversed)).toMatchObject({ openEdges: 0, volume: -1000, sound: false });
  });

  it('finds triangles that vanish in single precision', () => {
    const thin = made(meshOf([layer(rectangle([0, 0], [10, 10]), [], 0, 10)]));
    const vertices = thin.vertices.slice();
    // 1000 and 1000.00001 are one number in single precision.
    const squeezed = vertices.map((v, i) => (i % 3 === 0 ? 1000 + v * 1e-6 : v));
    expect(audit({ ...thin, vertices: squeezed })).toMatchObject({ sound: false });
    expect(audit({ ...thin, vertices: squeezed }).degenerate).toBeGreaterThan(0);
  });

  it('finds bodies that pass through each other, and not those that stand apart', () => {
    const both = (dx: number, dy: number, dz: number): ReturnType<typeof audit> => {
      const moved = cube.vertices.map((v, i) => v + ([dx, dy, dz][i % 3] ?? 0));
      return audit({
        vertices: Float64Array.from([...cube.vertices, ...moved]),
        triangles: Uint32Array.from([...cube.triangles, ...cube.triangles.map((i) => i + 8)]),
      });
    };
    expect(both(20, 0, 0)).toMatchObject({ shells: 2, crossings: 0, sound: true, volume: 2000 });
    expect(both(5, 4, 3).crossings).toBeGreaterThan(0);
    // Pushed into each other along an axis, so that side faces lie in one plane.
    expect(both(5, 0, 0).crossings).toBeGreaterThan(0);
  });
});
