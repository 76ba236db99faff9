import { all, fail, ok, type Result } from '../../core/result.ts';
import { place, WORLD, type Frame } from '../../geometry/frame.ts';
import {
  add3,
  cross3,
  dot3,
  length3,
  scale3,
  sub3,
  unit3,
  type Vec3,
} from '../../geometry/vector.ts';
import type { Mesh } from '../../model/mesh.ts';
import { text } from '../../text/index.ts';
import { beltPieces } from './belt.ts';
import { real } from './flat.ts';
import { problem } from './issues.ts';
import { packPieces, pieceBounds, type Pieces, type Round } from './pieces.ts';
import type { Box, Cylinder, Shape } from './shape.ts';
import { buildTree, type Tree } from './tree.ts';

/** A bounded solid ready for distance queries: build it once, use it in every check. */
export interface TreeSolid {
  readonly kind: 'tree';
  readonly pieces: Pieces;
  readonly tree: Tree;
  /** The pieces are the closed surface of a solid (a mesh), not solids themselves. */
  readonly surface: boolean;
  /** One point of every connected part (x y z each). */
  readonly anchors: Float64Array;
  /** How far the pieces may stand proud of the shape asked for, mm: makes a gap smaller. */
  readonly proud: number;
}

export interface PlaneSolid {
  readonly kind: 'plane';
  /** Unit normal out of the solid, and its offset: points p with n.p > offset are outside. */
  readonly normal: Vec3;
  readonly offset: number;
}

export type Solid = TreeSolid | PlaneSolid;

const words = text.check.distance;

const finite = (values: Iterable<number>): boolean => {
  for (const value of values) if (!Number.isFinite(value)) return false;
  return true;
};

const ofPieces = (
  pieces: Pieces,
  surface: boolean,
  anchors: Float64Array,
  proud = 0,
): TreeSolid => ({
  kind: 'tree',
  pieces,
  tree: buildTree(pieceBounds(pieces)),
  surface,
  anchors,
  proud,
});

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

const meshSolid = (name: string, mesh: Mesh, frame: Frame): Result<Solid> => {
  const { vertices, triangles } = mesh;
  const count = triangles.length / 3;
  if (count < 4) return fail(problem('mesh-empty', name, words.meshEmpty(name)));
  if (!finite(vertices)) return fail(problem('shape-not-finite', name, words.notFinite(name)));
  if (triangles.some((v) => v * 3 + 2 >= vertices.length)) {
    return fail(problem('mesh-corner-missing', name, words.meshCorner(name)));
  }
  const { part, closed } = survey(mesh);
  if (!closed) return fail(problem('mesh-open', name, words.meshOpen(name)));
  const corner = (v: number): Vec3 =>
    place(frame, [real(vertices, 3 * v), real(vertices, 3 * v + 1), real(vertices, 3 * v + 2)]);
  const placed = new Float64Array(vertices.length);
  for (let v = 0; v < vertices.length / 3; v++) placed.set(corner(v), 3 * v);
  const points = new Float64Array(triangles.length * 3);
  const anchors = new Map<number, number>();
  triangles.forEach((v, i) => {
    points[3 * i] = real(placed, 3 * v);
    points[3 * i + 1] = real(placed, 3 * v + 1);
    points[3 * i + 2] = real(placed, 3 * v + 2);
    const of = part[v] as number;
    if (!anchors.has(of)) anchors.set(of, v);
  });
  const pieces: Pieces = {
    start: Int32Array.from({ length: count }, (_, i) => 3 * i),
    count: new Int32Array(count).fill(3),
    points,
    rounds: new Float64Array(0),
  };
  const anchorPoints = [...anchors.values()].flatMap((v) => [...placed.subarray(3 * v, 3 * v + 3)]);
  return ok(ofPieces(pieces, true, Float64Array.from(anchorPoints)));
};

const boxCorners = ({ frame, size }: Box): Vec3[] =>
  [-0.5, 0.5].flatMap((x) =>
    [-0.5, 0.5].flatMap((y) =>
      [-0.5, 0.5].map((z) => place(frame, [x * size[0], y * size[1], z * size[2]])),
    ),
  );

const bar = ({ from, to, radius }: Cylinder): Round => {
  const along = sub3(to, from);
  const axis = unit3(along);
  const least = axis.map(Math.abs).indexOf(Math.min(...axis.map(Math.abs)));
  const middle = unit3(
    cross3(axis, [least === 0 ? 1 : 0, least === 1 ? 1 : 0, least === 2 ? 1 : 0]),
  );
  return {
    centre: scale3(add3(from, to), 0.5),
    middle,
    side: cross3(axis, middle),
    axis,
    outer: radius,
    inner: 0,
    halfAngle: Math.PI,
    halfWidth: length3(along) / 2,
  };
};

/**
 * Makes a shape ready for distance queries, in the coordinates of the body it belongs to.
 *
 * Fails on numbers that are not finite, sizes that are not positive and meshes that are not
 * closed: a solid whose inside cannot be told would let a hit pass as a distance.
 */
export const prepare = (name: string, shape: Shape): Result<Solid> => {
  const convex = (hulls: readonly (readonly Vec3[])[], rounds: readonly Round[], proud = 0) => {
    const pieces = packPieces(hulls, rounds);
    if (!finite(pieces.points) || !finite(pieces.rounds)) {
      return fail(problem('shape-not-finite', name, words.notFinite(name)));
    }
    const anchor = hulls[0]?.[0] ?? rounds[0]?.centre;
    if (!anchor) return fail(problem('shape-empty', name, words.shapeEmpty(name)));
    return ok<Solid>(ofPieces(pieces, false, Float64Array.from(anchor), proud));
  };
  const positive = (...sizes: readonly number[]) => sizes.every((size) => size > 0);
  const flat = () => fail(problem('shape-without-size', name, words.noSize(name)));
  switch (shape.kind) {
    case 'half-space': {
      const length = length3(shape.normal);
      if (!finite([...shape.point, length])) {
        return fail(problem('shape-not-finite', name, words.notFinite(name)));
      }
      if (!positive(length)) return flat();
      const normal = scale3(shape.normal, 1 / length);
      return ok({ kind: 'plane', normal, offset: dot3(normal, shape.point) });
    }
    case 'box':
      return positive(...shape.size) ? convex([boxCorners(shape)], []) : flat();
    case 'cylinder':
      return positive(shape.radius, length3(sub3(shape.to, shape.from)))
        ? convex([], [bar(shape)])
        : flat();
    case 'hull':
      return convex([shape.points], []);
    case 'belt': {
      if (!positive(shape.thickness, shape.width)) return flat();
      const { hulls, rounds, fill } = beltPieces(shape);
      return convex(hulls, rounds, fill);
    }
    case 'mesh':
      return meshSolid(name, shape.mesh, shape.frame ?? WORLD);
  }
};

/** Prepares several shapes of one body. */
export const prepareAll = (name: string, shapes: readonly Shape[]): Result<Solid[]> =>
  all(shapes.map((shape) => prepare(name, shape)));
