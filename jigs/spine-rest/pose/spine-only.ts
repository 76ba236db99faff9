import type { Mesh } from '../../../src/family/index.ts';

/**
 * The triangles of a blade's mesh with a corner within `depth` mm (v) of the spine beside it: all
 * that seat and step can touch, in a mesh small enough to be settled many times. Not closed.
 */
export const spineOnly = ({ vertices, triangles }: Mesh, depth: number): Mesh => {
  const at = (i: number, k: number): number => vertices[3 * i + k] ?? 0;
  // Spine line: the least v at every u, by millimetre.
  const least = new Map<number, number>();
  for (let i = 0; i < vertices.length / 3; i += 1) {
    const u = Math.round(at(i, 0));
    least.set(u, Math.min(least.get(u) ?? Infinity, at(i, 1)));
  }
  const isLow = (i: number): boolean => at(i, 1) <= (least.get(Math.round(at(i, 0))) ?? 0) + depth;
  const numbers = new Map<number, number>();
  const kept: number[] = [];
  const corners: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const three = [triangles[t] ?? 0, triangles[t + 1] ?? 0, triangles[t + 2] ?? 0];
    if (!three.some(isLow)) continue;
    for (const i of three) {
      let number = numbers.get(i);
      if (number === undefined) {
        number = numbers.size;
        numbers.set(i, number);
        kept.push(at(i, 0), at(i, 1), at(i, 2));
      }
      corners.push(number);
    }
  }
  return { vertices: Float64Array.from(kept), triangles: Uint32Array.from(corners) };
};
