import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { ribbon } from '../../src/app/scene/ribbon.ts';
import { cross3, length3, sub3, type Vec3 } from '../../src/geometry/vector.ts';
import { sceneOf } from '../../src/worker/scene.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

describe('what the bench shows', () => {
  for (const family of Object.keys(registry.families)) {
    const examples = examplesOf(family);

    it.each(examples)(`holds every placed part and blade of ${family}, $file`, (example) => {
      const scene = valueOf(sceneOf(example.design, solved(example)));
      const meshes = new Map(scene.parts.map(({ id, mesh }) => [id, mesh]));
      for (const { placements } of Object.values(scene.settings))
        for (const { part } of placements)
          expect(meshes.get(part)?.triangles.length ?? 0, part).toBeGreaterThan(11);
      expect(scene.blades.map(({ name }) => name)).toEqual(
        example.design.blades.map(({ name }) => name),
      );
    });
  }
});

describe('the belt on the bench', () => {
  /** Area of a prism around a path: two faces and two sides along it, and two ends. */
  const areaOf = (path: readonly (readonly [number, number])[], width: number, thick: number) => {
    const { array } = ribbon(path, width, thick).getAttribute('position');
    let area = 0;
    for (let i = 0; i < array.length; i += 9) {
      const at = (k: number): Vec3 => [
        array[i + k] ?? NaN,
        array[i + k + 1] ?? NaN,
        array[i + k + 2] ?? NaN,
      ];
      const [a, b, c] = [at(0), at(3), at(6)];
      area += length3(cross3(sub3(b, a), sub3(c, a))) / 2;
    }
    return { area, array };
  };

  it('is a closed band of its width along a flat platen, drawn on at both ends', () => {
    const { area, array } = areaOf(
      [
        [0, 0],
        [0, 100],
      ],
      50,
      1.5,
    );
    const long = 100 + 45 + 80;
    expect(area).toBeCloseTo(2 * long * (50 + 1.5) + 2 * 50 * 1.5, 2);
    // Its abrasive is the foremost of it.
    expect(Math.max(...array.filter((_, i) => i % 3 === 1))).toBeCloseTo(0, 6);
  });

  it('goes on around the same wheel', () => {
    const radius = 100;
    const path = Array.from({ length: 21 }, (_, i): [number, number] => {
      const a = ((i - 10) * Math.PI) / 180;
      return [radius * Math.cos(a) - radius, radius * Math.sin(a)];
    });
    const { array } = areaOf(path, 50, 1.5);
    for (let i = 0; i < array.length; i += 3) {
      const far = Math.hypot((array[i + 1] ?? NaN) + radius, array[i + 2] ?? NaN);
      expect(far).toBeLessThan(radius + 0.05);
      expect(far).toBeGreaterThan(radius - 1.5 - 0.05);
    }
  });
});
