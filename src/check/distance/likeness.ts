import { int, real } from './flat.ts';
import { ROUND } from './pieces.ts';
import type { Solid, TreeSolid } from './solid.ts';

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

/** Three numbers as one of 32 bits. */
const three = (f: Factors, steps: number, x: number, y: number, z: number): number =>
  stirred(
    Math.imul(f[0], rounded(x, steps)) +
      Math.imul(f[1], rounded(y, steps)) +
      Math.imul(f[2], rounded(z, steps)) +
      f[3],
  );

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

const cornerAt = (points: Float64Array, at: number, f: Factors, [x, y, z]: Signs): number =>
  three(f, STEPS, x * real(points, at), y * real(points, at + 1), z * real(points, at + 2));

/**
 * A closed surface as a sum over the edges of its triangles, each with its direction and the side its
 * face is on: edges within a flat face cancel, so that it does not matter how the face was cut into
 * triangles, and those that are left bound all faces, which makes the solid.
 */
const surfaceSum = ({ pieces: { points } }: TreeSolid, f: Factors, signs: Signs): number => {
  const [sx, sy, sz] = signs;
  const turned = sx * sy * sz;
  let sum = 0;
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
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    const face = three(f, TURNS, (sx * nx) / length, (sy * ny) / length, (sz * nz) / length);
    const a = cornerAt(points, i, f, signs);
    const b = cornerAt(points, i + 3, f, signs);
    const c = cornerAt(points, i + 6, f, signs);
    // Seen in a mirror a face is walked about the other way.
    sum += turned * (edge(f, a, b, face) + edge(f, b, c, face) + edge(f, c, a, face));
  }
  return sum | 0;
};

/** A direction of the other sense stands for the same bar. */
const eitherWay = (f: Factors, x: number, y: number, z: number): number =>
  three(f, FINE_TURNS, x, y, z) + three(f, FINE_TURNS, -x, -y, -z);

const roundSum = (rounds: Float64Array, at: number, f: Factors, [x, y, z]: Signs): number => {
  const way = (k: number): [number, number, number] => [
    x * real(rounds, at + k),
    y * real(rounds, at + k + 1),
    z * real(rounds, at + k + 2),
  ];
  const cosine = real(rounds, at + 14);
  // A whole bar has no middle of its arc.
  const middle = cosine <= -1 ? 0 : three(f, FINE_TURNS, ...way(3));
  const sizes =
    three(f, STEPS, real(rounds, at + 12), real(rounds, at + 13), real(rounds, at + 16)) ^
    three(f, FINE_TURNS, cosine, 0, 0);
  return stirred(
    Math.imul(f[0], three(f, STEPS, ...way(0))) +
      Math.imul(f[1], middle) +
      Math.imul(f[2], eitherWay(f, ...way(9))) +
      sizes,
  );
};

/** Convex pieces as a sum over their corners in any order, and over bars. */
const piecesSum = ({ pieces }: TreeSolid, f: Factors, signs: Signs): number => {
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
      corners += cornerAt(points, 3 * i, f, signs);
    }
    sum += stirred(corners);
  }
  return sum | 0;
};

const sumOf = (solid: Solid, f: Factors, signs: Signs): number => {
  if (solid.kind === 'tree') return (solid.surface ? surfaceSum : piecesSum)(solid, f, signs);
  const [x, y, z] = solid.normal;
  const [sx, sy, sz] = signs;
  return stirred(
    three(f, FINE_TURNS, sx * x, sy * y, sz * z) + three(f, STEPS, solid.offset, 0, 0),
  );
};

/** The sums of a solid as it is, and as seen in one mirror after the other. */
type Sums = (readonly [number, number] | undefined)[];
const known = new WeakMap<Solid, Sums>();

const sumsOf = (solid: Solid, axis: Axis | 3): readonly [number, number] => {
  const sums = known.get(solid) ?? [];
  known.set(solid, sums);
  const signs = SIGNS[axis] ?? AS_IT_IS;
  return (sums[axis] ??= [sumOf(solid, FACTORS[0], signs), sumOf(solid, FACTORS[1], signs)]);
};

/**
 * Whether solids that move as one are, taken together, their own mirror image in the plane through
 * their origin at right angles to an axis, within 1.4e-5 mm. Told by two sums of 32 bits over all that
 * bounds them: solids that are not would have to agree in both by chance.
 */
export const isMirrorImage = (solids: readonly Solid[], axis: Axis): boolean => {
  let [one, other] = [0, 0];
  for (const solid of solids) {
    const [a, b] = sumsOf(solid, 3);
    const [c, d] = sumsOf(solid, axis);
    one += a - c;
    other += b - d;
  }
  return (one | 0) === 0 && (other | 0) === 0;
};
