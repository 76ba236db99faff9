import { cross3, dot3, length3, sub3, type Vec3 } from '../geometry/vector.ts';
import { sharedVertices } from './mesh-builder.ts';
import type { Mesh } from './mesh.ts';
import { corner, trianglesOf } from './triangles.ts';
import { crossingPairs } from './self-intersection.ts';

/** What a mesh is after the float32 round trip of the mesh formats. */
export interface Audit {
  /** Edges without exactly one triangle on each side, opposed. */
  readonly openEdges: number;
  /** Triangles that have no area once rounded. */
  readonly degenerate: number;
  /** Pairs of triangles that pass through each other. */
  readonly crossings: number;
  /** Signed volume, mm^3: positive when the faces turn outward. */
  readonly volume: number;
  /** Surface area, mm^2. */
  readonly area: number;
  readonly min: Vec3;
  readonly max: Vec3;
  readonly triangles: number;
  readonly vertices: number;
  /** Connected surfaces: one for a body without inner cavities. */
  readonly shells: number;
  /** Vertices - edges + faces: 2 for each shell, less 2 for each through hole. */
  readonly euler: number;
  /** Through holes and handles, all shells together; meaningful for a closed mesh. */
  readonly genus: number;
  /** Closed, turned outward, without degenerate or crossing triangles. */
  readonly sound: boolean;
}

/**
 * The mesh as a float32 file gives it back: coordinates rounded to single precision, vertices
 * that became equal joined.
 */
const roundTrip = ({ vertices, triangles }: Mesh): Mesh => {
  const single = Float64Array.from(vertices, (value) => Math.fround(value) + 0);
  const shared = sharedVertices();
  const renamed = new Uint32Array(vertices.length / 3);
  for (let i = 0; i < renamed.length; i += 1) renamed[i] = shared.numberOf(...corner(single, i));
  return {
    vertices: Float64Array.from(shared.vertices),
    triangles: triangles.map((i) => renamed[i] ?? 0),
  };
};

/** Signed volume, mm^3, by the divergence theorem: the sum of a . (b x c) / 6. */
export const meshVolume = (mesh: Mesh): number => {
  // Measured from the first vertex, so that a mesh far from the origin keeps its digits.
  const origin = corner(mesh.vertices, 0);
  const at = (i: number): Vec3 => sub3(corner(mesh.vertices, i), origin);
  const sixfold = trianglesOf(mesh).reduce(
    (sum, [a, b, c]) => sum + dot3(at(a), cross3(at(b), at(c))),
    0,
  );
  return sixfold / 6;
};

const triangleArea = ({ vertices }: Mesh, [a, b, c]: readonly [number, number, number]): number => {
  const p = corner(vertices, a);
  return length3(cross3(sub3(corner(vertices, b), p), sub3(corner(vertices, c), p))) / 2;
};

/** Number of directed edges, and how many of them lack the one opposite edge. */
const edgeCount = (mesh: Mesh): { readonly edges: number; readonly open: number } => {
  const n = mesh.vertices.length / 3;
  const times = new Map<number, number>();
  const count = (from: number, to: number): void => {
    times.set(from * n + to, (times.get(from * n + to) ?? 0) + 1);
  };
  for (const [a, b, c] of trianglesOf(mesh)) {
    count(a, b);
    count(b, c);
    count(c, a);
  }
  let open = 0;
  for (const [name, count] of times) {
    const opposite = times.get((name % n) * n + Math.floor(name / n)) ?? 0;
    if (count !== 1 || opposite !== 1) open += 1;
  }
  return { edges: times.size / 2, open };
};

/** Number of sets of triangles connected by shared vertices. */
const shellCount = (mesh: Mesh): number => {
  const parent = Uint32Array.from({ length: mesh.vertices.length / 3 }, (_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at] ?? at] ?? at;
      at = parent[at] ?? at;
    }
    return at;
  };
  const used = new Set<number>();
  for (const [a, b, c] of trianglesOf(mesh)) {
    parent[root(b)] = root(a);
    parent[root(c)] = root(a);
    used.add(a).add(b).add(c);
  }
  return new Set([...used].map(root)).size;
};

/** Extreme coordinates of a mesh, mm. */
const meshBox = ({ vertices }: Mesh): { readonly min: Vec3; readonly max: Vec3 } => {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  vertices.forEach((value, i) => {
    const axis = (i % 3) as 0 | 1 | 2;
    min[axis] = Math.min(min[axis], value);
    max[axis] = Math.max(max[axis], value);
  });
  return { min, max };
};

/** Examines a mesh as a slicer will find it: after rounding to single precision. */
export const audit = (mesh: Mesh): Audit => {
  const rounded = roundTrip(mesh);
  const triangles = trianglesOf(rounded);
  const areas = triangles.map((t) => triangleArea(rounded, t));
  const degenerate = areas.filter((area) => !(area > 0)).length;
  const { edges, open } = edgeCount(rounded);
  const crossings = crossingPairs(rounded);
  const volume = meshVolume(rounded);
  const vertices = rounded.vertices.length / 3;
  const shells = shellCount(rounded);
  const euler = vertices - edges + triangles.length;
  return {
    openEdges: open,
    degenerate,
    crossings,
    volume,
    area: areas.reduce((sum, area) => sum + area, 0),
    ...meshBox(rounded),
    triangles: triangles.length,
    vertices,
    shells,
    euler,
    genus: shells - euler / 2,
    sound: open === 0 && degenerate === 0 && crossings === 0 && volume > 0,
  };
};
