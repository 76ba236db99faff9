import type { Vec3 } from '../geometry/vector.ts';
import type { Mesh } from './mesh.ts';

/** Coordinates of vertex i. */
export const corner = (vertices: Float64Array, i: number): Vec3 => [
  vertices[3 * i] ?? NaN,
  vertices[3 * i + 1] ?? NaN,
  vertices[3 * i + 2] ?? NaN,
];

/** Every triangle as its three corner numbers. */
export const trianglesOf = ({ triangles }: Mesh): [number, number, number][] =>
  Array.from({ length: triangles.length / 3 }, (_, i) => [
    triangles[3 * i] ?? 0,
    triangles[3 * i + 1] ?? 0,
    triangles[3 * i + 2] ?? 0,
  ]);
