import { cross3, dot3, length3, scale3, sub3, type Vec3 } from '../../geometry/vector.ts';

/** A triangle of a closed surface, its corners anticlockwise seen from outside. */
export type Facet = readonly [Vec3, Vec3, Vec3];

/** The cone from the apex over a facet: its corners, sides and base seen from the apex. */
interface Cone {
  readonly corners: Facet;
  /** Whether the facet is seen from behind, so that what is before it is inside. */
  readonly sign: 1 | -1;
  /** Normals of the planes through the apex and a side, to the inside. */
  readonly sides: Facet;
  /** Points p on the facet's plane have normal . p = level, both more than zero before it. */
  readonly normal: Vec3;
  readonly level: number;
  /** A round cone about it: unit axis, cosine and sine of its half angle. */
  readonly axis: Vec3;
  readonly cos: number;
  readonly sin: number;
}

const coneOf = (apex: Vec3, facet: Facet): Cone[] => {
  const seen = facet.map((p) => sub3(p, apex)) as unknown as Facet;
  const six = dot3(seen[0], cross3(seen[1], seen[2]));
  const size = Math.max(...seen.map(length3));
  // A cone as flat as rounding holds nothing.
  if (Math.abs(six) < 1e-15 * size ** 3) return [];
  const [a, b, c] = six > 0 ? seen : ([seen[0], seen[2], seen[1]] as const);
  const across = cross3(sub3(b, a), sub3(c, a));
  const normal = scale3(across, 1 / length3(across));
  const units = [a, b, c].map((p) => scale3(p, 1 / length3(p)));
  const sum = units.reduce<Vec3>((s, u) => [s[0] + u[0], s[1] + u[1], s[2] + u[2]], [0, 0, 0]);
  const axis = scale3(sum, 1 / Math.max(length3(sum), 1e-300));
  const cos = Math.min(...units.map((u) => dot3(u, axis)));
  return [
    {
      corners: [a, b, c],
      sign: six > 0 ? 1 : -1,
      sides: [cross3(a, b), cross3(b, c), cross3(c, a)],
      normal,
      level: dot3(normal, a),
      axis,
      cos,
      sin: Math.sqrt(Math.max(0, 1 - cos * cos)),
    },
  ];
};

/** The part of a convex polygon where normal . p >= level. */
const cut = (polygon: readonly Vec3[], normal: Vec3, level: number): Vec3[] => {
  const out: Vec3[] = [];
  polygon.forEach((p, i) => {
    const q = polygon[(i + 1) % polygon.length] ?? p;
    const [from, to] = [dot3(normal, p) - level, dot3(normal, q) - level];
    if (from >= 0) out.push(p);
    if (from > 0 !== to > 0 && from !== 0 && to !== 0) {
      const t = from / (from - to);
      out.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2])]);
    }
  });
  return out;
};

/** Six times the volume between the apex and a polygon. */
const sixOver = (polygon: readonly Vec3[]): number => {
  const [first] = polygon;
  if (!first) return 0;
  let sum = 0;
  for (let i = 2; i < polygon.length; i += 1)
    sum += dot3(first, cross3(polygon[i - 1] ?? first, polygon[i] ?? first));
  return Math.abs(sum);
};

/** Six times the volume that two cones share: under whichever base is nearer to the apex. */
const sixShared = (one: Cone, other: Cone): number => {
  let polygon: Vec3[] = [...one.corners];
  for (const side of other.sides) {
    polygon = cut(polygon, side, 0);
    if (polygon.length < 3) return 0;
  }
  const { normal, level } = other;
  const before = cut(polygon, scale3(normal, -1), -level);
  // Of a polygon that lies in the other's base all is before it: nothing counts twice.
  const beyond = polygon.some((p) => dot3(normal, p) > level) ? cut(polygon, normal, level) : [];
  const behind = beyond.map((p) => scale3(p, level / dot3(normal, p)));
  return sixOver(before) + sixOver(behind);
};

/**
 * Volume that two closed surfaces share, mm3; exact but for rounding. Each solid is the sum of the
 * cones from one apex over its facets, those counted as less than nothing that are seen from
 * outside; so what two solids share is the sum of what their cones share, two by two, and two cones
 * of one apex share a cone over a convex polygon. Nothing hangs on facets that lie in one plane:
 * they change the sum by nothing.
 *
 * Own code because the kernel of the page has no library of solids; held in the tests against
 * formulas and manifold-3d.
 */
export const sharedVolume = (a: readonly Facet[], b: readonly Facet[], apex: Vec3): number => {
  const [ofA, ofB] = [a, b].map((facets) => facets.flatMap((facet) => coneOf(apex, facet)));
  let six = 0;
  for (const one of ofA ?? [])
    for (const other of ofB ?? []) {
      // Round cones that lie apart: the angle between the axes is more than both half angles.
      const both = one.cos * other.cos - one.sin * other.sin;
      const isWide = one.cos < 0 || other.cos < 0 || one.sin * other.cos + one.cos * other.sin < 0;
      if (!isWide && dot3(one.axis, other.axis) < both - 1e-12) continue;
      six += one.sign * other.sign * sixShared(one, other);
    }
  return Math.max(0, six / 6);
};
