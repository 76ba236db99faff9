/**
 * The work of a rebuild and of a clearance check done by general-purpose libraries: solids by the
 * 3D booleans of @jscad/modeling and of manifold-3d, least distances by three-mesh-bvh and by
 * manifold-3d's minGap. Nothing here is used by the program.
 */
import modeling from '@jscad/modeling';
import type { Geom3 } from '@jscad/modeling/src/geometries/types.js';
import Module, { type Manifold, type Mat4 } from 'manifold-3d';
import { BufferAttribute, BufferGeometry, Matrix4, Vector3 } from 'three';
import { MeshBVH, type HitPointInfo } from 'three-mesh-bvh';
import type { Solid } from '../../src/check/distance/index.ts';
import { flatten, type Approximation } from '../../src/geometry/flatten.ts';
import type { Frame } from '../../src/geometry/frame.ts';
import { signedArea } from '../../src/geometry/loop-measure.ts';
import { polygon, type Loop } from '../../src/geometry/loop.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import type { Mesh } from '../../src/model/mesh.ts';
import type { Layer } from '../../src/model/part.ts';

const { primitives, booleans, extrusions, transforms, geometries } = modeling;
const manifold = await Module();
manifold.setup();

const ring = (loop: Loop, chord: number, how: Approximation): Vec2[] => {
  const points = flatten(loop, chord, how).map(([x, y]): Vec2 => [x, y]);
  return signedArea(polygon(points)) < 0 ? points.reverse() : points;
};

/** A part by jscad: every layer pulled up, its holes pulled up and taken off, the layers united. */
export const jscadSolid = (layers: readonly Layer[], chord: number): Geom3 => {
  const pulled = (loop: Loop, how: Approximation, from: number, to: number): Geom3 =>
    transforms.translate(
      [0, 0, from],
      extrusions.extrudeLinear(
        { height: to - from },
        primitives.polygon({
          points: ring(loop, chord, how).map(([x, y]): [number, number] => [x, y]),
        }),
      ),
    );
  const made = layers.map(({ profile, from, to }) =>
    profile.holes.reduce(
      (solid, hole) => booleans.subtract(solid, pulled(hole, 'circumscribed', from - 1, to + 1)),
      pulled(profile.outer, 'inscribed', from, to),
    ),
  );
  const [first, ...rest] = made;
  if (first === undefined) throw new Error('a part without layers');
  return rest.length === 0 ? first : booleans.union(first, ...rest);
};

/** Its triangles, as a screen or a distance query wants them. */
export const jscadTriangles = (solid: Geom3): Float32Array =>
  Float32Array.from(
    geometries.geom3
      .toPolygons(solid)
      .flatMap(({ vertices }) =>
        vertices.slice(2).flatMap((c, i) => [vertices[0] ?? c, vertices[i + 1] ?? c, c].flat()),
      ),
  );

/** A part by manifold-3d, the same way. */
export const manifoldSolid = (layers: readonly Layer[], chord: number): Manifold => {
  const pulled = (loop: Loop, how: Approximation, from: number, to: number): Manifold =>
    manifold.Manifold.extrude(
      [ring(loop, chord, how).map(([x, y]): [number, number] => [x, y])],
      to - from,
    ).translate([0, 0, from]);
  const made = layers.map(({ profile, from, to }) =>
    manifold.Manifold.difference([
      pulled(profile.outer, 'inscribed', from, to),
      ...profile.holes.map((hole) => pulled(hole, 'circumscribed', from - 1, to + 1)),
    ]),
  );
  return manifold.Manifold.union(made);
};

const CORNERS = 64;

/** The convex hulls a solid of the distance engine consists of, round ones cut into sectors. */
const hullsOf = (solid: Solid): Manifold[] => {
  if (solid.kind === 'plane') return [];
  const { start, count, points, rounds } = solid.pieces;
  return [...start].map((at, piece) => {
    if (at >= 0) {
      const corners = points.subarray(3 * at, 3 * (at + (count[piece] ?? 0)));
      return manifold.Manifold.hull(
        Array.from({ length: corners.length / 3 }, (_, i): [number, number, number] => [
          corners[3 * i] ?? 0,
          corners[3 * i + 1] ?? 0,
          corners[3 * i + 2] ?? 0,
        ]),
      );
    }
    const r = [...rounds.subarray(17 * ~at, 17 * ~at + 17)];
    const n = (i: number): number => r[i] ?? 0;
    const half = Math.atan2(n(15), n(14));
    const parts = Math.max(2, Math.ceil((CORNERS * half) / Math.PI));
    const corner = (turn: number, radius: number, width: number): [number, number, number] => {
      const [c, s] = [radius * Math.cos(turn), radius * Math.sin(turn)];
      const axis = (k: number): number => n(k) + c * n(3 + k) + s * n(6 + k) + width * n(9 + k);
      return [axis(0), axis(1), axis(2)];
    };
    return manifold.Manifold.union(
      Array.from({ length: parts }, (_, i) => {
        const [a, b] = [i, i + 1].map((k) => -half + (2 * half * k) / parts);
        return manifold.Manifold.hull(
          [a, b].flatMap((turn) =>
            [n(12), n(13)].flatMap((radius) =>
              [-n(16), n(16)].map((width) => corner(turn ?? 0, radius, width)),
            ),
          ),
        );
      }),
    );
  });
};

/** The triangle mesh of a body's solids; undefined for a body that holds a half space. */
export const meshOfSolids = (solids: readonly Solid[]): Mesh | undefined => {
  const corners: number[] = [];
  for (const solid of solids) {
    if (solid.kind === 'plane') return undefined;
    if (solid.of === 'facets') {
      corners.push(...solid.pieces.points);
      continue;
    }
    // No faces within: the library has to look at as few as bound the solid.
    const { vertProperties, triVerts, numProp } = manifold.Manifold.union(hullsOf(solid)).getMesh();
    for (const v of triVerts)
      corners.push(...vertProperties.subarray(numProp * v, numProp * v + 3));
  }
  const vertices = Float64Array.from(corners);
  return { vertices, triangles: Uint32Array.from({ length: vertices.length / 3 }, (_, i) => i) };
};

/** A triangle mesh with its tree, as three-mesh-bvh wants it. */
export interface Treed {
  readonly geometry: BufferGeometry;
  readonly tree: MeshBVH;
}

export const treed = (corners: Float32Array, triangles?: Uint32Array): Treed => {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(corners, 3));
  const index = triangles?.slice() ?? Uint32Array.from({ length: corners.length / 3 }, (_, i) => i);
  geometry.setIndex(new BufferAttribute(index, 1));
  const tree = new MeshBVH(geometry);
  (geometry as BufferGeometry & { boundsTree?: MeshBVH }).boundsTree = tree;
  return { geometry, tree };
};

export const matrixOf = (f: Frame): number[] => [...f.x, 0, ...f.y, 0, ...f.z, 0, ...f.origin, 1];

/** Least distance within a limit over relative places of `a`; Infinity beyond it. */
export const leastByTrees = (
  a: Treed,
  b: Treed,
  places: readonly (readonly [Frame, Frame])[],
  within: number,
): number => {
  const hit = (): HitPointInfo => ({ point: new Vector3(), distance: 0, faceIndex: 0 });
  const [one, two] = [hit(), hit()];
  let best = within;
  for (const [poseA, poseB] of places) {
    const relative = new Matrix4()
      .fromArray(matrixOf(poseB))
      .invert()
      .multiply(new Matrix4().fromArray(matrixOf(poseA)));
    const found = b.tree.closestPointToGeometry(a.geometry, relative, one, two, 0, best);
    if (found && found.distance < best) best = found.distance;
  }
  return best < within ? best : Infinity;
};

/** A mesh as a manifold; undefined where the library takes it for open. */
export const manifoldOf = (mesh: Mesh): Manifold | undefined => {
  const made = new manifold.Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(mesh.vertices),
    triVerts: mesh.triangles.slice(),
  });
  made.merge();
  try {
    return new manifold.Manifold(made);
  } catch {
    return undefined;
  }
};

/** The same least distance by minGap: both solids are placed anew for every pose. */
export const leastByMinGap = (
  a: Manifold,
  b: Manifold,
  places: readonly (readonly [Frame, Frame])[],
  within: number,
): number => {
  let best = within;
  for (const [poseA, poseB] of places) {
    const [placedA, placedB] = [
      a.transform(matrixOf(poseA) as unknown as Mat4),
      b.transform(matrixOf(poseB) as unknown as Mat4),
    ];
    best = Math.min(best, placedA.minGap(placedB, best));
    placedA.delete();
    placedB.delete();
  }
  return best < within ? best : Infinity;
};
