import { int, real } from './flat.ts';
import { ROUND } from './pieces.ts';
import type { PlaneSolid, Solid, TreeSolid } from './solid.ts';

/** An axis of a body: it stands for the plane through the body's origin at right angles to it. */
export type Axis = 0 | 1 | 2;

/**
 * Steps a millimetre to which corners are rounded, a power of two: numbers of a few decimals never
 * lie halfway between two steps. Corners that are rounded alike are within 1.4e-5 mm of each other.
 */
const STEPS = 2 ** 17;
/** Steps of a direction. A face's only tells which side of its edges it is on. */
const TURNS = 2 ** 10;
const FINE_TURNS = 2 ** 27;

/** The finish of MurmurHash3 (A. Appleby, public domain): every bit sways every other. */
const stirred = (value: number): number => {
  let h = Math.imul(value ^ (value >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
};

/** Odd factors that tell places in a sum apart, for each of two sums of 32 bits. */
const FACTORS = [
  [0x9e3779b1, 0x7feb352d, 0x27d4eb2f, 0x165667b1],
  [0x846ca68b, 0x6c8e9cf5, 0x2c1b3c6d, 0x5bd1e995],
] as const;
type Factors = (typeof FACTORS)[number];

/** Rounded alike on both sides of zero. */
const rounded = (value: number, steps: number): number =>
  value < 0 ? -Math.round(-value * steps) : Math.round(value * steps);

/** Three whole numbers as one of 32 bits. */
const three = (f: Factors, x: number, y: number, z: number): number =>
  stirred(Math.imul(f[0], x) + Math.imul(f[1], y) + Math.imul(f[2], z) + f[3]);

const vector = (f: Factors, steps: number, x: number, y: number, z: number): number =>
  three(f, rounded(x, steps), rounded(y, steps), rounded(z, steps));

/** An edge of a face in its direction as one number; the same the other way round is its opposite. */
const edge = (f: Factors, from: number, to: number, face: number): number =>
  stirred(Math.imul(f[0], from) + Math.imul(f[1], to) + face) -
  stirred(Math.imul(f[0], to) + Math.imul(f[1], from) + face);

/** How a mirror turns the three coordinates about. */
type Signs = readonly [number, number, number];
const SIGNS: readonly Signs[] = [
  [-1, 1, 1],
  [1, -1, 1],
  [1, 1, -1],
];
const AS_IT_IS: Signs = [1, 1, 1];

/** The rounded corners of triangles, nine numbers each, and the rounded directions of their faces. */
interface Faces {
  readonly corners: Int32Array;
  readonly normals: Int32Array;
}

const facesOf = ({ pieces: { points } }: TreeSolid): Faces => {
  const corners = new Int32Array(points.length);
  const normals = new Int32Array(points.length / 3);
  for (let i = 0; i < points.length; i += 9) {
    const ux = real(points, i + 3) - real(points, i);
    const uy = real(points, i + 4) - real(points, i + 1);
    const uz = real(points, i + 5) - real(points, i + 2);
    const vx = real(points, i + 6) - real(points, i);
    const vy = real(points, i + 7) - real(points, i + 1);
    const vz = real(points, i + 8) - real(points, i + 2);
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const scale = 1 / Math.sqrt(nx * nx + ny * ny + nz * nz);
    normals[i / 3] = rounded(nx * scale, TURNS);
    normals[i / 3 + 1] = rounded(ny * scale, TURNS);
    normals[i / 3 + 2] = rounded(nz * scale, TURNS);
    for (let k = i; k < i + 9; k++) corners[k] = rounded(real(points, k), STEPS);
  }
  return { corners, normals };
};

/**
 * A closed surface as a sum over the edges of its triangles, each with its direction and the side its
 * face is on: edges within a flat face cancel, so that it does not matter how the face was cut into
 * triangles, and those that are left bound all faces, which makes the solid.
 */
const surfaceSum = ({ corners, normals }: Faces, f: Factors, [x, y, z]: Signs): number => {
  const at = (list: Int32Array, i: number): number =>
    three(f, x * int(list, i), y * int(list, i + 1), z * int(list, i + 2));
  // Seen in a mirror a face is walked about the other way.
  const turned = x * y * z;
  let sum = 0;
  for (let i = 0; i < corners.length; i += 9) {
    const face = at(normals, i / 3);
    const [a, b, c] = [at(corners, i), at(corners, i + 3), at(corners, i + 6)];
    sum += turned * (edge(f, a, b, face) + edge(f, b, c, face) + edge(f, c, a, face));
  }
  return sum | 0;
};

/**
 * Prisms as a sum over the edges of their lower and upper faces, as of a surface: edges between two
 * prisms of one layer cancel, so that it does not matter how a layer was cut into prisms.
 */
const prismsSum = ({ pieces }: TreeSolid, f: Factors, [x, y, z]: Signs): number => {
  const { start, count, points } = pieces;
  const turned = x * y * z;
  const corner = (i: number): number =>
    vector(
      f,
      STEPS,
      x * real(points, 3 * i),
      y * real(points, 3 * i + 1),
      z * real(points, 3 * i + 2),
    );
  let sum = 0;
  for (let piece = 0; piece < start.length; piece++) {
    const first = int(start, piece);
    const half = int(count, piece) / 2;
    for (let upper = 0; upper < 2; upper++) {
      const from = upper === 0 ? first : first + half;
      const to = 3 * (upper === 0 ? first + half : first);
      // Which of both faces it is: how far the other lies from it, and where.
      const face = vector(
        f,
        STEPS,
        x * (real(points, 3 * from) - real(points, to)),
        y * (real(points, 3 * from + 1) - real(points, to + 1)),
        z * (real(points, 3 * from + 2) - real(points, to + 2)),
      );
      const side = upper === 0 ? -turned : turned;
      let last = corner(from + half - 1);
      for (let i = from; i < from + half; i++) {
        const here = corner(i);
        sum += side * edge(f, last, here, face);
        last = here;
      }
    }
  }
  return sum | 0;
};

/** A direction of the other sense stands for the same bar. */
const eitherWay = (f: Factors, x: number, y: number, z: number): number =>
  vector(f, FINE_TURNS, x, y, z) + vector(f, FINE_TURNS, -x, -y, -z);

const roundSum = (rounds: Float64Array, at: number, f: Factors, [x, y, z]: Signs): number => {
  const way = (k: number): [number, number, number] => [
    x * real(rounds, at + k),
    y * real(rounds, at + k + 1),
    z * real(rounds, at + k + 2),
  ];
  const cosine = real(rounds, at + 14);
  // A whole bar has no middle of its arc.
  const middle = cosine <= -1 ? 0 : vector(f, FINE_TURNS, ...way(3));
  const sizes =
    vector(f, STEPS, real(rounds, at + 12), real(rounds, at + 13), real(rounds, at + 16)) ^
    vector(f, FINE_TURNS, cosine, 0, 0);
  return stirred(
    Math.imul(f[0], vector(f, STEPS, ...way(0))) +
      Math.imul(f[1], middle) +
      Math.imul(f[2], eitherWay(f, ...way(9))) +
      sizes,
  );
};

/** Convex pieces as a sum over their corners in any order, and over bars. */
const piecesSum = ({ pieces }: TreeSolid, f: Factors, signs: Signs): number => {
  const [x, y, z] = signs;
  const { start, count, points, rounds } = pieces;
  let sum = 0;
  for (let piece = 0; piece < start.length; piece++) {
    const first = int(start, piece);
    if (first < 0) {
      sum += roundSum(rounds, ~first * ROUND, f, signs);
      continue;
    }
    let corners = 0;
    for (let i = first; i < first + int(count, piece); i++) {
      corners += vector(
        f,
        STEPS,
        x * real(points, 3 * i),
        y * real(points, 3 * i + 1),
        z * real(points, 3 * i + 2),
      );
    }
    sum += stirred(corners);
  }
  return sum | 0;
};

const planeSum = ({ normal: [nx, ny, nz], offset }: PlaneSolid, f: Factors, s: Signs): number =>
  stirred(vector(f, FINE_TURNS, s[0] * nx, s[1] * ny, s[2] * nz) + vector(f, STEPS, offset, 0, 0));

/** Two sums, which both would have to agree by chance. */
type Sums = readonly [number, number];

/** The sums of a solid seen in a mirror. */
type Seen = (signs: Signs) => Sums;

const seenIn = (solid: Solid): Seen => {
  const both = (sum: (f: Factors, signs: Signs) => number): Seen => {
    const [one, other] = FACTORS;
    return (signs) => [sum(one, signs), sum(other, signs)];
  };
  if (solid.kind === 'plane') return both((f, signs) => planeSum(solid, f, signs));
  if (solid.of === 'bodies') return both((f, signs) => piecesSum(solid, f, signs));
  if (solid.of === 'prisms') return both((f, signs) => prismsSum(solid, f, signs));
  const faces = facesOf(solid);
  return both((f, signs) => surfaceSum(faces, f, signs));
};

/** Of a solid by itself and in a mirror: its sums less those of its image, asked for once. */
const known = new WeakMap<Solid, (Sums | undefined)[]>();

const unlikeness = (solid: Solid, axis: Axis): Sums => {
  const found = known.get(solid) ?? [];
  known.set(solid, found);
  const last = found[axis];
  if (last) return last;
  const seen = seenIn(solid);
  const [a, b] = seen(AS_IT_IS);
  const [c, d] = seen(SIGNS[axis] ?? AS_IT_IS);
  return (found[axis] = [a - c, b - d]);
};

/**
 * Whether solids that move as one are, taken together, their own mirror image in the plane through
 * their origin at right angles to an axis, within 1.4e-5 mm. Told by two sums of 32 bits over all that
 * bounds them: solids that are not would have to agree in both by chance.
 */
export const isMirrorImage = (solids: readonly Solid[], axis: Axis): boolean => {
  let [one, other] = [0, 0];
  for (const solid of solids) {
    const [a, b] = unlikeness(solid, axis);
    one += a;
    other += b;
  }
  return (one | 0) === 0 && (other | 0) === 0;
};
