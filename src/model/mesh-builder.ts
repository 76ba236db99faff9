import { fine } from '../core/units.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { Mesh } from './mesh.ts';

export interface MeshBuilder {
  readonly triangle: (a: Corner, b: Corner, c: Corner) => void;
  readonly mesh: () => Mesh;
}

export type Corner = readonly [Vec2, number];

/** Collects triangles; equal coordinates become one shared vertex. */
export const meshBuilder = (): MeshBuilder => {
  const numbers = new Map<string, number>();
  const vertices: number[] = [];
  const triangles: number[] = [];
  const vertex = ([[x, y], z]: Corner): number => {
    const name = `${String(x)},${String(y)},${String(z)}`;
    const known = numbers.get(name);
    if (known !== undefined) return known;
    numbers.set(name, numbers.size);
    vertices.push(x, y, z);
    return numbers.size - 1;
  };
  return {
    triangle: (a, b, c) => {
      triangles.push(vertex(a), vertex(b), vertex(c));
    },
    mesh: () => ({
      vertices: Float64Array.from(vertices, (value) => fine(value)),
      triangles: Uint32Array.from(triangles),
    }),
  };
};
