import { atan2, cos, sin } from '../../core/trigonometry.ts';
import { place, type Frame } from '../../geometry/frame.ts';
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
import { int, real } from './flat.ts';
import { pieceBounds, ROUND, type Pieces } from './pieces.ts';
import type { Facet } from './shared-volume.ts';
import type { Filling, TreeSolid } from './solid.ts';

/** Lower and upper corner of an upright block. */
export type Block = readonly [Vec3, Vec3];

/** Sides of a whole turn where a round piece is taken as flat: a share of 4e-4 of its volume. */
const SIDES = 128;
/** Points nearer to a plane than this share of a hull's size lie on it. */
const FLAT = 1e-9;

const fan = (ring: readonly Vec3[]): Facet[] => {
  const [first] = ring;
  return first ? ring.slice(2).map((p, i): Facet => [first, ring[i + 1] ?? first, p]) : [];
};

/** Corners of a face in their order about its normal. */
const about = (corners: readonly Vec3[], normal: Vec3): Vec3[] => {
  const [origin = [0, 0, 0], second = origin] = corners;
  const middle = scale3(
    corners.reduce((sum, p) => add3(sum, p), [0, 0, 0] as Vec3),
    1 / corners.length,
  );
  const x = unit3(
    sub3(
      origin[0] === middle[0] && origin[1] === middle[1] && origin[2] === middle[2]
        ? second
        : origin,
      middle,
    ),
  );
  const y = cross3(normal, x);
  const angle = (p: Vec3): number => {
    const d = sub3(p, middle);
    return atan2(dot3(d, y), dot3(d, x));
  };
  return corners.toSorted((p, q) => angle(p) - angle(q));
};

/** The faces of the convex hull of a few points: the planes that have all of them on one side. */
const hullFacets = (points: readonly Vec3[]): Facet[] => {
  const size = Math.max(...points.map((p) => length3(sub3(p, points[0] ?? p))));
  const found = new Map<string, Facet[]>();
  points.forEach((p, i) =>
    points.slice(i + 1).forEach((q, j) => {
      for (const r of points.slice(i + j + 2)) {
        const across = cross3(sub3(q, p), sub3(r, p));
        if (length3(across) < FLAT * size * size) continue;
        const normal = unit3(across);
        const off = points.map((s) => dot3(normal, sub3(s, p)));
        const [low, high] = [Math.min(...off), Math.max(...off)];
        if (low < -FLAT * size && high > FLAT * size) continue;
        const on = points.flatMap((_, k) => (Math.abs(off[k] ?? 1) <= FLAT * size ? [k] : []));
        const out = high > FLAT * size ? scale3(normal, -1) : normal;
        const corners = on.flatMap((k) => points.slice(k, k + 1));
        found.set(on.join(' '), fan(about(corners, out)));
      }
    }),
  );
  return [...found.values()].flat();
};

const vector = (from: Float64Array, at: number): Vec3 => [
  real(from, at),
  real(from, at + 1),
  real(from, at + 2),
];

/** A round piece as a prism with flat sides. */
const roundFacets = (rounds: Float64Array, at: number): Facet[] => {
  const [centre, middle, side, axis] = [0, 3, 6, 9].map((k) => vector(rounds, at + k)) as [
    Vec3,
    Vec3,
    Vec3,
    Vec3,
  ];
  const [outer, inner, half] = [
    real(rounds, at + 12),
    real(rounds, at + 13),
    real(rounds, at + 16),
  ];
  const halfAngle = atan2(real(rounds, at + 15), real(rounds, at + 14));
  const isWhole = Math.abs(halfAngle) > Math.PI - 1e-9;
  const angle = isWhole ? Math.PI : halfAngle;
  const n = Math.max(1, Math.ceil((angle / Math.PI) * SIDES));
  const flat = (radius: number, turn: number): Vec3 =>
    add3(centre, add3(scale3(middle, radius * cos(turn)), scale3(side, radius * sin(turn))));
  const arc = Array.from({ length: isWhole ? n : n + 1 }, (_, i) =>
    flat(outer, -angle + (2 * angle * i) / n),
  );
  const inside = isWhole ? [] : inner > 0 ? [flat(inner, angle), flat(inner, -angle)] : [centre];
  const ring = [...arc, ...inside];
  const isLeft = dot3(cross3(middle, side), axis) > 0;
  const level = (by: number): Vec3[] => ring.map((p) => add3(p, scale3(axis, by)));
  const [low, high] = isLeft ? [level(-half), level(half)] : [level(half), level(-half)];
  const walls = ring.flatMap((_, i): Facet[] => {
    const next = (i + 1) % ring.length;
    const [a, b, c, d] = [low[i], low[next], high[next], high[i]];
    return a && b && c && d ? fan([a, b, c, d]) : [];
  });
  return [...fan(low.toReversed()), ...fan(high), ...walls];
};

const cornersOf = ({ start, count, points }: Pieces, piece: number): Vec3[] =>
  Array.from({ length: int(count, piece) }, (_, i) => vector(points, 3 * (int(start, piece) + i)));

/** The faces of a prism whose lower corners come first. */
const prismFacets = (corners: readonly Vec3[]): Facet[] => {
  const half = corners.length / 2;
  const [low, high] = [corners.slice(0, half), corners.slice(half)];
  const walls = low.flatMap((p, i): Facet[] => {
    const next = (i + 1) % half;
    return fan([p, ...low.slice(next, next + 1), ...high.slice(next, next + 1), high[i] ?? p]);
  });
  return [...fan(low.toReversed()), ...fan(high), ...walls];
};

/** The faces that the corners of a piece bound, by what the pieces are. */
const FACETS: Record<Filling, (corners: readonly Vec3[]) => Facet[]> = {
  facets: fan,
  prisms: prismFacets,
  bodies: hullFacets,
};

/** The closed surface of a solid where its body stands; of convex pieces those near a block alone. */
export const facetsOf = ({ pieces, of }: TreeSolid, pose: Frame, near: Block): Facet[] => {
  const bounds = of === 'facets' ? undefined : pieceBounds(pieces);
  const facets: Facet[] = [];
  for (let piece = 0; piece < pieces.start.length; piece += 1) {
    if (bounds && !isNear(blockOf(bounds, piece, pose), near)) continue;
    const start = int(pieces.start, piece);
    if (start < 0) facets.push(...roundFacets(pieces.rounds, ~start * ROUND));
    else {
      const corners = cornersOf(pieces, piece);
      facets.push(...FACETS[of](corners));
    }
  }
  return facets.map(([a, b, c]): Facet => [place(pose, a), place(pose, b), place(pose, c)]);
};

const around = (points: readonly Vec3[]): Block => {
  const of = (pick: (...values: number[]) => number): Vec3 => {
    const along = (k: 0 | 1 | 2): number =>
      points.reduce((m, p) => pick(m, p[k]), points[0]?.[k] ?? 0);
    return [along(0), along(1), along(2)];
  };
  return [of(Math.min), of(Math.max)];
};

const blockOf = (bounds: Float64Array, piece: number, pose: Frame): Block => {
  const ends = [0, 3].map((k) => vector(bounds, 6 * piece + k));
  const corners = ends.flatMap(([x]) =>
    ends.flatMap(([, y]) => ends.map(([, , z]) => place(pose, [x, y, z]))),
  );
  return around(corners);
};

export const isNear = (a: Block, b: Block): boolean =>
  ([0, 1, 2] as const).every((k) => a[0][k] <= b[1][k] && b[0][k] <= a[1][k]);

/** The upright block around a solid where its body stands. */
export const blockAround = ({ pieces }: TreeSolid, pose: Frame): Block => {
  const bounds = pieceBounds(pieces);
  const blocks = Array.from({ length: pieces.start.length }, (_, i) => blockOf(bounds, i, pose));
  return around(blocks.flat());
};

/** What a half space holds of a block, as a box that is larger: its free face is the plane. */
export const behind = (point: Vec3, normal: Vec3, [low, high]: Block): Facet[] => {
  const reach = 2 * (length3(sub3(high, low)) + 1);
  const middle = scale3(add3(low, high), 0.5);
  const foot = sub3(middle, scale3(normal, dot3(normal, sub3(middle, point))));
  const least = normal.map(Math.abs).indexOf(Math.min(...normal.map(Math.abs)));
  const u = unit3(cross3(normal, [least === 0 ? 1 : 0, least === 1 ? 1 : 0, least === 2 ? 1 : 0]));
  const v = cross3(normal, u);
  const deep = Math.max(0, dot3(normal, sub3(foot, middle))) + reach;
  return hullFacets(
    [-reach, reach].flatMap((x) =>
      [-reach, reach].flatMap((y) =>
        [0, -deep].map((z) =>
          add3(foot, add3(scale3(u, x), add3(scale3(v, y), scale3(normal, z)))),
        ),
      ),
    ),
  );
};
