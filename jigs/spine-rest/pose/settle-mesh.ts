import {
  cross3,
  place,
  radians,
  shift,
  unit3,
  type Frame,
  type Mesh,
  type Side,
  type Vec2,
  type Vec3,
} from '../../../src/family/index.ts';
import { lineAbove, lineBelow } from './support-line.ts';

/** The real contact geometry: nose and step as parts, seat frame, mm. */
export interface Contacts {
  readonly noseHalf: number;
  readonly stepHalf: number;
  readonly stepTop: number;
  /** Front face of the step. */
  readonly setoff: number;
}

const ROUNDS = 60;
const FINE = 1e-10;

/** Axes of a blade whose ground side faces the belt, spine along the stroke, tilted by `tilt`. */
const upright = (side: Side, tilt: number): Frame => {
  const [s, c] = [Math.sin(radians(tilt)), Math.cos(radians(tilt))];
  const away = side === 'left' ? -1 : 1;
  const y: Vec3 = [0, -s, c];
  const z: Vec3 = [0, away * c, away * s];
  return { origin: [0, 0, 0], x: cross3(y, z), y, z };
};

/** Turns the frame's axes by a small slope in the plane of x and the given axis (1: y, 2: z). */
const levelled = (f: Frame, slope: number, axis: 1 | 2): Frame => {
  const norm = Math.hypot(1, slope);
  const [c, s] = [1 / norm, -slope / norm];
  const turn = (v: Vec3): Vec3 =>
    axis === 1
      ? [c * v[0] - s * v[1], s * v[0] + c * v[1], v[2]]
      : [c * v[0] - s * v[2], v[1], s * v[0] + c * v[2]];
  const x = unit3(turn(f.x));
  const y = turn(f.y);
  const z = unit3(cross3(x, y));
  return { origin: turn(f.origin), x, y: cross3(z, x), z };
};

/** Where edges of the mesh cross the plane x = at, after placing. */
const crossingsAt = (points: readonly Vec3[], mesh: Mesh, at: number): Vec3[] => {
  const { triangles } = mesh;
  const found: Vec3[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k += 1) {
      const p = points[triangles[i + k] ?? 0];
      const q = points[triangles[i + ((k + 1) % 3)] ?? 0];
      if (!p || !q || p[0] >= at || q[0] < at) continue;
      const t = (at - p[0]) / (q[0] - p[0]);
      found.push([at, p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2])]);
    }
  }
  return found;
};

/**
 * Settles a blade's mesh at one tilt: its spine comes down on the flat nose and back against the
 * step, with the load at the middle of the belt (or at x = `load`), and the station `u` of its spine line stands
 * at x = 0. Found on the mesh's own corners (and where its edges leave nose and step), turning
 * it level and square until nothing changes; no formula of the solver enters. None when the
 * blade has no point over the nose or before the step.
 */
export const settleMesh = (
  mesh: Mesh,
  side: Side,
  u: number,
  tilt: number,
  contacts: Contacts,
  load = 0,
): Frame | undefined => {
  let frame = upright(side, tilt);
  const { vertices } = mesh;
  const count = vertices.length / 3;
  for (let round = 0; round < ROUNDS; round += 1) {
    frame = shift(frame, [-place(frame, [u, 0, 0])[0], 0, 0]);
    const points = Array.from({ length: count }, (_, i) =>
      place(frame, [vertices[3 * i] ?? 0, vertices[3 * i + 1] ?? 0, vertices[3 * i + 2] ?? 0]),
    );
    const within = (half: number): Vec3[] => [
      ...points.filter(([x]) => Math.abs(x) <= half),
      ...crossingsAt(points, mesh, half),
      ...crossingsAt(points, mesh, -half),
    ];
    const below = lineBelow(
      within(contacts.noseHalf).map(([x, , z]): Vec2 => [x, z]),
      load,
    );
    if (!below) return undefined;
    const low = within(contacts.stepHalf).filter(
      ([x, , z]) => z - below.a - below.b * x <= contacts.stepTop,
    );
    const behind = lineAbove(
      low.map(([x, y]): Vec2 => [x, y]),
      load,
    );
    if (!behind) return undefined;
    frame = levelled(shift(frame, [0, 0, -below.a]), below.b, 2);
    frame = levelled(shift(frame, [0, -behind.a, 0]), behind.b, 1);
    frame = shift(frame, [0, contacts.setoff, 0]);
    const moved = Math.max(
      Math.abs(below.a),
      Math.abs(behind.a - contacts.setoff),
      100 * Math.abs(below.b),
      100 * Math.abs(behind.b),
    );
    if (moved < FINE) break;
  }
  return shift(frame, [-place(frame, [u, 0, 0])[0], 0, 0]);
};
