import { real } from './flat.ts';
import { support, type Placed } from './placed.ts';
import { nearestOnEdge, nearestOnTetrahedron, nearestOnTriangle } from './simplex.ts';

/** Width between the certified bounds at which the search stops, mm. */
const FINE = 1e-7;
/** Below this the pieces are taken to touch, mm. */
const TOUCH = 1e-10;
const ROUNDS = 60;

/** What the distance search leaves behind, and the room it works in. */
export interface Gjk {
  /** No points of the two pieces are nearer than this, mm: a separating plane proves it. */
  lower: number;
  /** Distance of the two witness points, mm. */
  upper: number;
  /** Witness points: of the first piece (3), of the second (3). */
  readonly witness: Float64Array;
  /** Unit direction, from the second piece to the first, along which `lower` separates them. */
  readonly direction: Float64Array;
  /** Share of the first piece's second copy in its witness, 0 to 1. */
  share: number;
  readonly w: Float64Array;
  readonly first: Float64Array;
  readonly second: Float64Array;
  readonly weight: Float64Array;
  /** Copy of the first piece each corner came from. */
  readonly copy: Float64Array;
}

export const createGjk = (): Gjk => ({
  lower: 0,
  upper: 0,
  witness: new Float64Array(6),
  direction: new Float64Array(3),
  share: 0,
  w: new Float64Array(12),
  first: new Float64Array(12),
  second: new Float64Array(12),
  weight: new Float64Array(4),
  copy: new Float64Array(4),
});

const addCorner = (g: Gjk, size: number, a: Placed, ia: number, b: Placed, ib: number): void => {
  const at = 3 * size;
  for (let k = 0; k < 3; k++) {
    const p = real(a.points, 3 * ia + k);
    const q = real(b.points, 3 * ib + k);
    g.first[at + k] = p;
    g.second[at + k] = q;
    g.w[at + k] = p - q;
  }
  g.copy[size] = ia >= a.count ? 1 : 0;
};

/** Keeps the corners that carry weight; returns how many. */
const compress = (g: Gjk, size: number): number => {
  let kept = 0;
  for (let i = 0; i < size; i++) {
    const weight = real(g.weight, i);
    if (weight <= 0) continue;
    if (kept !== i) {
      for (let k = 0; k < 3; k++) {
        g.w[3 * kept + k] = real(g.w, 3 * i + k);
        g.first[3 * kept + k] = real(g.first, 3 * i + k);
        g.second[3 * kept + k] = real(g.second, 3 * i + k);
      }
      g.copy[kept] = real(g.copy, i);
      g.weight[kept] = weight;
    }
    kept++;
  }
  return kept;
};

const finish = (g: Gjk, size: number): void => {
  let share = 0;
  for (let k = 0; k < 3; k++) {
    let p = 0;
    let q = 0;
    for (let i = 0; i < size; i++) {
      p += real(g.weight, i) * real(g.first, 3 * i + k);
      q += real(g.weight, i) * real(g.second, 3 * i + k);
    }
    g.witness[k] = p;
    g.witness[3 + k] = q;
  }
  for (let i = 0; i < size; i++) share += real(g.weight, i) * real(g.copy, i);
  g.share = share;
};

/**
 * Distance between two placed convex pieces by their support functions (E. Gilbert, D. Johnson,
 * S. Keerthi 1988, "A fast procedure for computing the distance between complex objects").
 * Every step's separating plane gives a lower bound that holds whatever the rounding of the
 * simplex did, so `lower` is certified even where the search stops early: when it reaches
 * `enough` (the caller cares for nothing beyond) or makes no more progress. Overlap gives 0.
 * `guess` is a direction from b to a in which they may be nearest, or zero.
 */
export const distance = (
  g: Gjk,
  a: Placed,
  b: Placed,
  enough: number,
  guess: Float64Array,
): void => {
  const w = g.w;
  g.lower = 0;
  const gx = real(guess, 0);
  const gy = real(guess, 1);
  const gz = real(guess, 2);
  addCorner(g, 0, a, support(a, -gx, -gy, -gz), b, support(b, gx, gy, gz));
  g.weight[0] = 1;
  let size = 1;
  let vx = real(w, 0);
  let vy = real(w, 1);
  let vz = real(w, 2);
  let vv = vx * vx + vy * vy + vz * vz;
  for (let round = 0; round < ROUNDS; round++) {
    if (vv <= TOUCH * TOUCH) {
      g.lower = 0;
      vv = 0;
      break;
    }
    const ia = support(a, -vx, -vy, -vz);
    const ib = support(b, vx, vy, vz);
    const wx = real(a.points, 3 * ia) - real(b.points, 3 * ib);
    const wy = real(a.points, 3 * ia + 1) - real(b.points, 3 * ib + 1);
    const wz = real(a.points, 3 * ia + 2) - real(b.points, 3 * ib + 2);
    const v = Math.sqrt(vv);
    const lower = (vx * wx + vy * wy + vz * wz) / v;
    if (lower > g.lower) {
      g.lower = lower;
      g.direction[0] = vx / v;
      g.direction[1] = vy / v;
      g.direction[2] = vz / v;
    }
    if (g.lower >= enough || v - g.lower <= FINE) break;
    let known = false;
    for (let i = 0; i < size; i++) {
      if (real(w, 3 * i) === wx && real(w, 3 * i + 1) === wy && real(w, 3 * i + 2) === wz) {
        known = true;
      }
    }
    if (known) break;
    addCorner(g, size, a, ia, b, ib);
    size++;
    const next =
      size === 2
        ? nearestOnEdge(w, 0, 1, g.weight)
        : size === 3
          ? nearestOnTriangle(w, 0, 1, 2, g.weight)
          : nearestOnTetrahedron(w, g.weight);
    if (next < 0) {
      // The origin lies within the difference of the pieces: they overlap.
      g.lower = 0;
      vv = 0;
      break;
    }
    size = compress(g, size);
    vx = vy = vz = 0;
    for (let i = 0; i < size; i++) {
      const weight = real(g.weight, i);
      vx += weight * real(w, 3 * i);
      vy += weight * real(w, 3 * i + 1);
      vz += weight * real(w, 3 * i + 2);
    }
    const before = vv;
    vv = vx * vx + vy * vy + vz * vz;
    if (vv >= before) break;
  }
  g.upper = Math.sqrt(vv);
  if (g.lower > g.upper) g.lower = g.upper;
  finish(g, size);
};
