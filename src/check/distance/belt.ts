import { atan, atan2, cos, sin } from '../../core/trigonometry.ts';
import { place, turn, type Frame } from '../../geometry/frame.ts';
import type { Vertex } from '../../geometry/loop.ts';
import type { Vec2, Vec3 } from '../../geometry/vector.ts';
import type { Round } from './pieces.ts';
import type { Belt } from './shape.ts';

/** Allowed fill between a sector's inner chord and its inner arc, mm. */
const FILL = 0.0005;
/** Corners of the path that turn by less than this are taken as smooth, radians. */
const SMOOTH = 1e-9;

/** The convex pieces of a belt; `fill` is how far they stand proud of its inner arcs, mm. */
export interface BeltPieces {
  readonly hulls: readonly (readonly Vec3[])[];
  readonly rounds: readonly Round[];
  readonly fill: number;
}

/** One segment of the path: its ends, the arc's included angle, the headings at both ends. */
interface Segment {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly included: number;
  readonly leaving: number;
  readonly arriving: number;
}

const segment = (from: Vertex, to: Vertex): Segment => {
  const chord = atan2(to.y - from.y, to.x - from.x);
  const included = 4 * atan(from.bulge);
  return {
    from: [from.x, from.y],
    to: [to.x, to.y],
    included,
    leaving: chord - included / 2,
    arriving: chord + included / 2,
  };
};

const direction = (f: Frame, angle: number): Vec3 => turn(f, [cos(angle), sin(angle), 0]);

/** Equal sectors of a ring between two radii, from one angle to another (radians). */
const sectors = (
  belt: Belt,
  centre: Vec2,
  radii: readonly [inner: number, outer: number],
  from: number,
  to: number,
): Round[] => {
  const [inner, outer] = radii;
  const widest = inner > 0 ? Math.min(Math.PI / 2, Math.sqrt((8 * FILL) / inner)) : Math.PI / 2;
  const count = Math.max(1, Math.ceil((to - from) / widest));
  const halfAngle = (to - from) / count / 2;
  return Array.from({ length: count }, (_, i): Round => {
    const middle = from + (2 * i + 1) * halfAngle;
    return {
      centre: place(belt.frame, [centre[0], centre[1], 0]),
      middle: direction(belt.frame, middle),
      side: direction(belt.frame, middle + Math.PI / 2),
      axis: belt.frame.z,
      outer,
      inner,
      halfAngle,
      halfWidth: belt.width / 2,
    };
  });
};

const run = (belt: Belt, { from, to, leaving }: Segment): Vec3[] => {
  // Outside is on the right of an anticlockwise path.
  const nx = sin(leaving) * belt.thickness;
  const ny = -cos(leaving) * belt.thickness;
  return [-belt.width / 2, belt.width / 2].flatMap((z) =>
    [from, to].flatMap(([x, y]) => [
      place(belt.frame, [x, y, z]),
      place(belt.frame, [x + nx, y + ny, z]),
    ]),
  );
};

const bend = (belt: Belt, { from, to, included, leaving }: Segment): Round[] => {
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const radius = chord / 2 / sin(Math.abs(included) / 2);
  // The centre lies on the left of the heading when the path turns left.
  const toCentre = leaving + (Math.sign(included) * Math.PI) / 2;
  const centre: Vec2 = [from[0] + radius * cos(toCentre), from[1] + radius * sin(toCentre)];
  const start = toCentre + Math.PI;
  return included > 0
    ? sectors(belt, centre, [radius, radius + belt.thickness], start, start + included)
    : sectors(
        belt,
        centre,
        [Math.max(0, radius - belt.thickness), radius],
        start + included,
        start,
      );
};

/** The wedge outside a corner of the path that turns left, as a pie. */
const corner = (belt: Belt, before: Segment, after: Segment): Round[] => {
  const whole = 2 * Math.PI;
  const angle = (((after.leaving - before.arriving) % whole) + whole) % whole;
  if (angle < SMOOTH || angle > Math.PI) return [];
  const start = before.arriving - Math.PI / 2;
  return sectors(belt, after.from, [0, belt.thickness], start, start + angle);
};

/**
 * Splits a belt into flat runs and sectors. The outer side of every sector is its exact arc;
 * its inner side is the chord, so arcs are cut small enough that the belt grows inwards by
 * `fill` at most, and a reported gap is never larger than the true one.
 */
export const beltPieces = (belt: Belt): BeltPieces => {
  const { vertices } = belt.path;
  const segments = vertices.map((vertex, i) =>
    segment(vertex, vertices[(i + 1) % vertices.length] ?? vertex),
  );
  const flat = segments.filter((s) => s.included === 0);
  const bent = segments.filter((s) => s.included !== 0);
  const corners = segments.flatMap((s, i) => {
    const before = segments[(i + segments.length - 1) % segments.length];
    return before ? corner(belt, before, s) : [];
  });
  return {
    hulls: flat.map((s) => run(belt, s)),
    rounds: [...bent.flatMap((s) => bend(belt, s)), ...corners],
    fill: bent.length > 0 ? FILL : 0,
  };
};
