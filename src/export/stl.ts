import { serializeBinary } from '@jscad/stl-serializer/CSGToStlb.js';
import { hasError, type Issue } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { quantise } from '../core/units.ts';
import type { Mesh } from '../model/mesh.ts';
import { joined } from './bytes.ts';
import { lintPrintMesh } from './lint/mesh.ts';

const IDENTITY = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];

/**
 * A printed part as binary STL, in mm as it lies on the bed. The library's binary writer is used
 * without its preparation step: that one snaps and triangulates again, and the mesh that was
 * audited would not be the mesh that is written. `issues` is what the lint says of the mesh.
 */
export const stl = (
  mesh: Mesh,
  issues: readonly Issue[] = lintPrintMesh(mesh),
): Result<Uint8Array> => {
  if (hasError(issues)) return fail(...issues);
  const corner = (index: number): number[] =>
    [0, 1, 2].map((axis) => quantise(mesh.vertices[3 * index + axis] ?? Number.NaN));
  const polygons = Array.from({ length: mesh.triangles.length / 3 }, (_, t) => ({
    vertices: [...mesh.triangles.subarray(3 * t, 3 * t + 3)].map(corner),
  }));
  const parts = serializeBinary([{ polygons, transforms: IDENTITY }], {});
  return ok(joined(parts.map((part) => new Uint8Array(part))), issues);
};

/** STL states no unit, so its name does. */
export const stlName = (id: string): string => `${id}_mm.stl`;
