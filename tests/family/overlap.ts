import { place } from '../../src/geometry/frame.ts';
import type { Mesh } from '../../src/geometry/mesh.ts';
import type { Placement } from '../../src/model/part.ts';
import { toManifold } from '../model/manifold.ts';

const moved = (mesh: Mesh, { frame }: Placement): Mesh => {
  const vertices = new Float64Array(mesh.vertices.length);
  for (let i = 0; i < mesh.vertices.length; i += 3)
    vertices.set(
      place(frame, [mesh.vertices[i] ?? 0, mesh.vertices[i + 1] ?? 0, mesh.vertices[i + 2] ?? 0]),
      i,
    );
  return { vertices, triangles: mesh.triangles };
};

/**
 * Pairs of placements that share more than `allowed` mm^3 without being said to touch, by a
 * reference library for solids. Screws in threads and angles without their cross holes are said
 * to touch what they pass.
 */
export const sharedVolumes = (
  placements: readonly Placement[],
  meshes: ReadonlyMap<string, Mesh>,
  allowed: number,
): string[] => {
  const solids = placements.flatMap((p) => {
    const mesh = meshes.get(p.part);
    return mesh ? [{ p, solid: toManifold(moved(mesh, p)) }] : [];
  });
  const boxes = solids.map(({ solid }) => solid.boundingBox());
  const apart = (i: number, k: number): boolean =>
    [0, 1, 2].some(
      (axis) =>
        (boxes[i]?.max[axis] ?? 0) <= (boxes[k]?.min[axis] ?? 0) ||
        (boxes[k]?.max[axis] ?? 0) <= (boxes[i]?.min[axis] ?? 0),
    );
  return solids.flatMap(({ p, solid }, i) =>
    solids.slice(i + 1).flatMap(({ p: q, solid: other }, n) => {
      if (p.touches.includes(q.name) || apart(i, i + 1 + n)) return [];
      const volume = solid.intersect(other).volume();
      return volume > allowed ? [`${p.name} and ${q.name}: ${volume.toFixed(3)}`] : [];
    }),
  );
};
