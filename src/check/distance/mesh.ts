import { problem } from '../../core/issue.ts';
import { fail, ok, type Result } from '../../core/result.ts';
import type { Mesh } from '../../model/mesh.ts';
import { text } from '../../text/index.ts';
import { formOf, type Form } from './form.ts';

const words = text.check.distance;

/** Numbers of the mesh's connected parts, by vertex; and whether every edge is matched. */
const survey = (mesh: Mesh): { part: Int32Array; closed: boolean } => {
  const { triangles } = mesh;
  const count = mesh.vertices.length / 3;
  const part = Int32Array.from({ length: count }, (_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while (part[at] !== at) {
      part[at] = part[part[at] as number] as number;
      at = part[at] as number;
    }
    return at;
  };
  // Edges from low to high vertex minus edges from high to low: zero on a closed surface.
  const edges = new Map<number, number>();
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const a = triangles[i + k] as number;
      const b = triangles[i + ((k + 1) % 3)] as number;
      part[root(a)] = root(b);
      const key = a < b ? a * count + b : b * count + a;
      edges.set(key, (edges.get(key) ?? 0) + (a < b ? 1 : -1));
    }
  }
  let closed = true;
  for (const excess of edges.values()) if (excess !== 0) closed = false;
  for (let i = 0; i < count; i++) part[i] = root(i);
  return { part, closed };
};

/**
 * Looks through a mesh once. Fails on numbers that are not finite and on one that is not closed:
 * a solid whose inside cannot be told would let a hit pass as a distance.
 */
export const surveyed = (name: string, mesh: Mesh): Result<Form> => {
  const { vertices, triangles } = mesh;
  const count = triangles.length / 3;
  if (count < 4) return fail(problem('mesh-empty', name, words.meshEmpty(name)));
  if (!vertices.every((value) => Number.isFinite(value))) {
    return fail(problem('shape-not-finite', name, words.notFinite(name)));
  }
  if (triangles.some((v) => v * 3 + 2 >= vertices.length)) {
    return fail(problem('mesh-corner-missing', name, words.meshCorner(name)));
  }
  const { part, closed } = survey(mesh);
  if (!closed) return fail(problem('mesh-open', name, words.meshOpen(name)));
  const firsts = new Map<number, number>();
  for (const v of triangles) if (!firsts.has(part[v] as number)) firsts.set(part[v] as number, v);
  const cornersAt = (list: ArrayLike<number> & Iterable<number>): Float64Array => {
    const points = new Float64Array(list.length * 3);
    let to = 0;
    for (const v of list) {
      for (let k = 0; k < 3; k++) points[to++] = vertices[3 * v + k] as number;
    }
    return points;
  };
  const pieces = {
    start: Int32Array.from({ length: count }, (_, i) => 3 * i),
    count: new Int32Array(count).fill(3),
    points: cornersAt(triangles),
    rounds: new Float64Array(0),
  };
  return ok(formOf('facets', pieces, cornersAt([...firsts.values()])));
};
