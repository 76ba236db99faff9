import { frame, place, localise, type Frame } from '../geometry/frame.ts';
import {
  add3,
  cross3,
  dot3,
  scale3,
  sub3,
  unit3,
  type Vec2,
  type Vec3,
} from '../geometry/vector.ts';
import type { Mesh } from './mesh.ts';
import { linkLoops, nested } from './section-loops.ts';
import { corner, trianglesOf } from './triangles.ts';
import { triangulate } from './triangulate.ts';

/** The half of space with normal . p <= offset; the normal is a unit vector, offset in mm. */
export interface HalfSpace {
  readonly normal: Vec3;
  readonly offset: number;
}

/** A flat section: polygons in the frame's x and y, material left of every edge. */
export interface Section {
  /** Its z axis is the plane's normal. */
  readonly frame: Frame;
  /** Outer contours anticlockwise, holes clockwise. */
  readonly loops: readonly (readonly Vec2[])[];
}

/**
 * Vertices nearer to the plane than this count as on it, mm: what single precision keeps apart at
 * the size of a fixture. A new vertex closer to an old one would fall together with it in a file.
 */
const ON_PLANE = 1e-5;

/** The half space on the inner side of a plane through a point; the normal need not be unit. */
export const halfSpace = (through: Vec3, normal: Vec3): HalfSpace => {
  const unit = unit3(normal);
  return { normal: unit, offset: dot3(unit, through) };
};

interface Clipped {
  readonly vertices: readonly Vec3[];
  readonly triangles: readonly (readonly [number, number, number])[];
  readonly frame: Frame;
  /** Contours of the open side, as vertex numbers, material to the left seen against the normal. */
  readonly loops: readonly (readonly number[])[];
}

/**
 * The part of a closed mesh in the half space, closed by a flat cap. Where the plane passes
 * exactly through the edge of a hole, the material on its two sides touches along that edge, and
 * four faces share it: the solid itself is like that, and an audit will say so.
 */
export const cutByPlane = (mesh: Mesh, half: HalfSpace): Mesh => {
  const { vertices, triangles, frame: plane, loops } = clipped(mesh, half);
  const flat = (i: number): Vec2 => inPlane(plane, vertices[i] ?? plane.origin);
  const cap = nested(loops, flat).flatMap((rings) => {
    const numbers = rings.flat();
    return triangulate(rings.map((ring) => ring.map(flat))).map((t) =>
      t.map((i) => numbers[i] ?? 0),
    );
  });
  return compact(vertices, [...triangles.flat(), ...cap.flat()]);
};

/**
 * The section of a closed mesh with the boundary plane of a half space. Faces lying in the plane
 * count as seen from inside the half space.
 */
export const sliceByPlane = (mesh: Mesh, half: HalfSpace): Section => {
  const { vertices, frame: plane, loops } = clipped(mesh, half);
  return {
    frame: plane,
    loops: loops.map((loop) => loop.map((i) => inPlane(plane, vertices[i] ?? plane.origin))),
  };
};

const inPlane = (plane: Frame, p: Vec3): Vec2 => {
  const [x, y] = localise(plane, p);
  return [x, y];
};

/** A point of a section in the coordinates of the mesh. */
export const fromSection = (section: Section, [x, y]: Vec2): Vec3 =>
  place(section.frame, [x, y, 0]);

/** A frame in the plane: x along the world axis that the normal is squarest to. */
const planeFrame = ({ normal, offset }: HalfSpace): Frame => {
  const [x, y, z] = normal.map(Math.abs);
  const axis: Vec3 =
    (x ?? 0) <= (y ?? 0) && (x ?? 0) <= (z ?? 0)
      ? [1, 0, 0]
      : (y ?? 0) <= (z ?? 0)
        ? [0, 1, 0]
        : [0, 0, 1];
  const along = unit3(sub3(axis, scale3(normal, dot3(axis, normal))));
  return frame(scale3(normal, offset), along, cross3(normal, along));
};

const clipped = (mesh: Mesh, half: HalfSpace): Clipped => {
  const vertices = Array.from({ length: mesh.vertices.length / 3 }, (_, i) =>
    corner(mesh.vertices, i),
  );
  const heights = vertices.map((p) => {
    const height = dot3(half.normal, p) - half.offset;
    return Math.abs(height) < ON_PLANE ? 0 : height;
  });
  const height = (i: number): number => heights[i] ?? 0;
  const cuts = new Map<string, number>();
  const cutAt = (i: number, k: number): number => {
    const [a, b] = i < k ? [i, k] : [k, i];
    const name = `${String(a)},${String(b)}`;
    const known = cuts.get(name);
    if (known !== undefined) return known;
    const [p, q] = [corner(mesh.vertices, a), corner(mesh.vertices, b)];
    const share = height(a) / (height(a) - height(b));
    vertices.push(add3(p, scale3(sub3(q, p), share)));
    cuts.set(name, vertices.length - 1);
    return vertices.length - 1;
  };
  const triangles = trianglesOf(mesh).flatMap((t): (readonly [number, number, number])[] => {
    // Faces in the plane go: the cap replaces them.
    if (!t.some((i) => height(i) < 0)) return [];
    if (t.every((i) => height(i) <= 0)) return [t];
    const kept = t.flatMap((i, n) => {
      const next = t[(n + 1) % 3] ?? i;
      const crosses = height(i) * height(next) < 0;
      return [...(height(i) <= 0 ? [i] : []), ...(crosses ? [cutAt(i, next)] : [])];
    });
    const [first = 0, ...rest] = kept;
    return rest.slice(1).map((b, n) => [first, rest[n] ?? 0, b] as const);
  });
  const plane = planeFrame(half);
  // A closed mesh is open after the cut in the plane alone.
  const loops = linkLoops(
    triangles,
    (i) => inPlane(plane, vertices[i] ?? plane.origin),
    (i) => i >= heights.length || heights[i] === 0,
  );
  return { vertices, triangles, frame: plane, loops };
};

/** A mesh without the vertices that no triangle uses. */
const compact = (vertices: readonly Vec3[], corners: readonly number[]): Mesh => {
  const numbers = new Map<number, number>();
  const kept: number[] = [];
  const renamed = corners.map((i) => {
    const known = numbers.get(i);
    if (known !== undefined) return known;
    kept.push(...(vertices[i] ?? []));
    numbers.set(i, numbers.size);
    return numbers.size - 1;
  });
  return { vertices: Float64Array.from(kept), triangles: Uint32Array.from(renamed) };
};
