import { problem } from '../../core/issue.ts';
import { fail, ok, type Result } from '../../core/result.ts';
import type { Frame } from '../../geometry/frame.ts';
import type { Mesh } from '../../model/mesh.ts';
import { text } from '../../text/index.ts';
import { int, real } from './flat.ts';
import { pieceBounds, type Pieces } from './pieces.ts';
import type { TreeSolid } from './solid.ts';
import { fitTree, treeNodes } from './tree.ts';

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

/** A sound mesh, ready to be placed: what does not depend on where it stands is done. */
export interface MeshForm {
  readonly at: (frame: Frame) => TreeSolid;
}

/** The corners of a mesh in a frame. */
const placedCorners = (vertices: Mesh['vertices'], { origin, x, y, z }: Frame): Float64Array => {
  const placed = new Float64Array(vertices.length);
  for (let i = 0; i < vertices.length; i += 3) {
    const [u, v, w] = [vertices[i] as number, vertices[i + 1] as number, vertices[i + 2] as number];
    placed[i] = origin[0] + x[0] * u + y[0] * v + z[0] * w;
    placed[i + 1] = origin[1] + x[1] * u + y[1] * v + z[1] * w;
    placed[i + 2] = origin[2] + x[2] * u + y[2] * v + z[2] * w;
  }
  return placed;
};

/**
 * Looks through a mesh once. Fails on numbers that are not finite and on one that is not closed:
 * a solid whose inside cannot be told would let a hit pass as a distance.
 */
export const surveyed = (name: string, mesh: Mesh): Result<MeshForm> => {
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
  const anchors = Int32Array.from(firsts.values());
  const start = Int32Array.from({ length: count }, (_, i) => 3 * i);
  const counts = new Int32Array(count).fill(3);
  const corners = Int32Array.from(triangles);

  const piecesOf = (placed: Float64Array): Pieces => {
    const points = new Float64Array(corners.length * 3);
    for (let i = 0; i < corners.length; i++) {
      const from = 3 * int(corners, i);
      points[3 * i] = real(placed, from);
      points[3 * i + 1] = real(placed, from + 1);
      points[3 * i + 2] = real(placed, from + 2);
    }
    return { start, count: counts, points, rounds: new Float64Array(0) };
  };
  // Halved as the mesh comes: neighbours stay neighbours wherever it stands.
  const next = treeNodes(pieceBounds(piecesOf(Float64Array.from(vertices))));
  return ok({
    at: (frame) => {
      const placed = placedCorners(vertices, frame);
      const pieces = piecesOf(placed);
      const anchorPoints = new Float64Array(3 * anchors.length);
      anchors.forEach((v, i) => {
        anchorPoints.set(placed.subarray(3 * v, 3 * v + 3), 3 * i);
      });
      return {
        kind: 'tree',
        pieces,
        tree: fitTree(next, pieceBounds(pieces)),
        surface: true,
        anchors: anchorPoints,
        proud: 0,
      };
    },
  });
};
