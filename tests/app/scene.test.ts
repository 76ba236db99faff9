import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
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
