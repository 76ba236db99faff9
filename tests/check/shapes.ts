import { frame, type Frame } from '../../src/geometry/frame.ts';
import { rectangle } from '../../src/geometry/loop.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import type { Mesh } from '../../src/model/mesh.ts';
import type { StockPart } from '../../src/model/part.ts';
import type { Body } from '../../src/check/distance/body.ts';
import { clearance, type ClearanceOptions } from '../../src/check/distance/clearance.ts';
import type { Clearance } from '../../src/check/distance/told.ts';
import type { Motion } from '../../src/check/distance/motion.ts';
import type { Shape } from '../../src/check/distance/shape.ts';
import { prepareAll } from '../../src/check/distance/prepare.ts';

/** Random numbers from 0 to 1 from a seed (Park and Miller's minimal standard, 1988). */
export const random = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
};

/** A body of shapes; throws where the shapes are not sound. */
export const body = (
  name: string,
  shapes: readonly Shape[],
  motion?: Motion,
  chordError = 0,
): Body => {
  const solids = prepareAll(name, shapes);
  if (!solids.ok) throw new Error(solids.issues.map((issue) => issue.message).join('\n'));
  const still: Body = { name, solids: solids.value, chordError };
  return motion ? { ...still, motion } : still;
};

/** The clearance of two bodies; throws where it could not be computed. */
export const measure = (a: Body, b: Body, options?: ClearanceOptions): Clearance => {
  const result = clearance(a, b, options);
  if (!result.ok) throw new Error(result.issues.map((issue) => issue.message).join('\n'));
  return result.value;
};

/** The gap of two bodies: NaN when none was found near enough. */
export const gap = (a: Body, b: Body, options?: ClearanceOptions): number => {
  const result = measure(a, b, options);
  return result.state === 'beyond' ? NaN : result.gap;
};

/** A rotation by an angle (degrees) about a direction, then a shift. */
export const turned = (axis: Vec3, degrees: number, origin: Vec3 = [0, 0, 0]): Frame => {
  const length = Math.hypot(...axis);
  const [x, y, z] = [axis[0] / length, axis[1] / length, axis[2] / length];
  const s = Math.sin((degrees * Math.PI) / 180);
  const c = 1 - Math.cos((degrees * Math.PI) / 180);
  return frame(
    origin,
    [1 - c * (y * y + z * z), c * x * y + s * z, c * x * z - s * y],
    [c * x * y - s * z, 1 - c * (x * x + z * z), c * y * z + s * x],
  );
};

export const mesh = (vertices: readonly Vec3[], triangles: readonly number[]): Mesh => ({
  vertices: Float64Array.from(vertices.flat()),
  triangles: Uint32Array.from(triangles),
});

/** A block as a mesh, from its lower to its upper corner. */
export const blockMesh = (low: Vec3, high: Vec3): Mesh =>
  mesh(
    [0, 1, 2, 3, 4, 5, 6, 7].map((i): Vec3 => [
      i & 1 ? high[0] : low[0],
      i & 2 ? high[1] : low[1],
      i & 4 ? high[2] : low[2],
    ]),
    [
      [0, 2, 1],
      [1, 2, 3],
      [4, 5, 6],
      [5, 7, 6],
      [0, 1, 4],
      [1, 5, 4],
      [2, 6, 3],
      [3, 6, 7],
      [0, 4, 2],
      [2, 4, 6],
      [1, 3, 5],
      [3, 7, 5],
    ].flat(),
  );

/** A bar along z with `sides` facets whose corners lie on the radius. */
export const barMesh = (radius: number, from: number, to: number, sides: number): Mesh => {
  const ring = (z: number): Vec3[] =>
    Array.from({ length: sides }, (_, i) => {
      const angle = (2 * Math.PI * i) / sides;
      return [radius * Math.cos(angle), radius * Math.sin(angle), z];
    });
  const low = 2 * sides;
  const triangles: number[] = [];
  for (let i = 0; i < sides; i++) {
    const j = (i + 1) % sides;
    triangles.push(
      i,
      j,
      sides + j,
      i,
      sides + j,
      sides + i,
      low,
      j,
      i,
      low + 1,
      sides + i,
      sides + j,
    );
  }
  return mesh([...ring(from), ...ring(to), [0, 0, from], [0, 0, to]], triangles);
};

/** A closed bumpy ball: a convex-ish to rough solid of about 2 * rows * columns triangles. */
export const bumpyMesh = (
  next: () => number,
  radius: number,
  bump: number,
  rows: number,
  columns: number,
): Mesh => {
  const vertices: Vec3[] = [[0, 0, -radius]];
  for (let r = 1; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const polar = (Math.PI * r) / rows;
      const angle = (2 * Math.PI * c) / columns;
      const size = radius * (1 + bump * (next() - 0.5));
      vertices.push([
        size * Math.sin(polar) * Math.cos(angle),
        size * Math.sin(polar) * Math.sin(angle),
        -size * Math.cos(polar),
      ]);
    }
  }
  vertices.push([0, 0, radius]);
  const at = (r: number, c: number): number =>
    r === 0 ? 0 : r === rows ? vertices.length - 1 : 1 + (r - 1) * columns + (c % columns);
  const triangles: number[] = [];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      if (r > 0) triangles.push(at(r, c), at(r, c + 1), at(r + 1, c));
      if (r < rows - 1) triangles.push(at(r, c + 1), at(r + 1, c + 1), at(r + 1, c));
    }
  }
  return mesh(vertices, triangles);
};

/** What every steel part says that is checked for its shape alone. */
export const steel = {
  quantity: 1,
  material: 'steel',
  finish: '',
  density: 7.85,
  notes: [],
  tight: [],
} as const;

/** A square bar of steel with a corner at the origin. */
export const bar = (id: string, x: number, y: number, z: number): StockPart => ({
  ...steel,
  kind: 'stock',
  id,
  name: id,
  section: '',
  holes: [],
  crossHoles: [],
  layers: [{ profile: { outer: rectangle([0, 0], [x, y]), holes: [] }, from: 0, to: z }],
});
