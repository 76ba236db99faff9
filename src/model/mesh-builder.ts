import { fineAll } from '../core/units.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { Mesh } from './mesh.ts';

export interface MeshBuilder {
  readonly triangle: (a: Corner, b: Corner, c: Corner) => void;
  readonly mesh: () => Mesh;
}

export type Corner = readonly [Vec2, number];

/** Vertices of which equal coordinates become one. */
export interface SharedVertices {
  /** Coordinates of the vertices so far, one after the other. */
  readonly vertices: readonly number[];
  /** The number of the vertex with these coordinates. */
  readonly numberOf: (x: number, y: number, z: number) => number;
}

export const sharedVertices = (): SharedVertices => {
  // By height, x and y: names made of numbers would cost more than the triangles.
  const levels = new Map<number, Map<number, Map<number, number>>>();
  const vertices: number[] = [];
  const numberOf = (x: number, y: number, z: number): number => {
    const level = levels.get(z) ?? new Map<number, Map<number, number>>();
    if (level.size === 0) levels.set(z, level);
    const column = level.get(x) ?? new Map<number, number>();
    if (column.size === 0) level.set(x, column);
    const known = column.get(y);
    if (known !== undefined) return known;
    const number = vertices.length / 3;
    column.set(y, number);
    vertices.push(x, y, z);
    return number;
  };
  return { vertices, numberOf };
};

/** Collects triangles; equal coordinates become one shared vertex. */
export const meshBuilder = (): MeshBuilder => {
  const { vertices, numberOf } = sharedVertices();
  const triangles: number[] = [];
  const vertex = ([[x, y], z]: Corner): number => numberOf(x, y, z);
  return {
    triangle: (a, b, c) => {
      triangles.push(vertex(a), vertex(b), vertex(c));
    },
    mesh: () => ({
      vertices: fineAll(vertices),
      triangles: new Uint32Array(triangles),
    }),
  };
};
