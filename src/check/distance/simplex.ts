import { real } from './flat.ts';

/**
 * The point of a simplex nearest to the origin. `w` holds up to four corners (x y z each), the
 * weights of the nearest point go to `weight`. Follows the region tests of C. Ericson,
 * "Real-Time Collision Detection" (2005), 5.1; flat or sliver corners fall back to the edges,
 * so that the weights are always a convex combination.
 */

/** Squared distance of the origin to the edge i-j, its weights into `out` at i and j. */
export const nearestOnEdge = (w: Float64Array, i: number, j: number, out: Float64Array): number => {
  const ax = real(w, 3 * i);
  const ay = real(w, 3 * i + 1);
  const az = real(w, 3 * i + 2);
  const dx = real(w, 3 * j) - ax;
  const dy = real(w, 3 * j + 1) - ay;
  const dz = real(w, 3 * j + 2) - az;
  const along = -(ax * dx + ay * dy + az * dz);
  const whole = dx * dx + dy * dy + dz * dz;
  const t = along <= 0 ? 0 : along >= whole ? 1 : along / whole;
  out[i] = 1 - t;
  out[j] = t;
  const x = ax + t * dx;
  const y = ay + t * dy;
  const z = az + t * dz;
  return x * x + y * y + z * z;
};

/** The same for the triangle i-j-k. */
export const nearestOnTriangle = (
  w: Float64Array,
  i: number,
  j: number,
  k: number,
  out: Float64Array,
): number => {
  const ax = real(w, 3 * i);
  const ay = real(w, 3 * i + 1);
  const az = real(w, 3 * i + 2);
  const bx = real(w, 3 * j) - ax;
  const by = real(w, 3 * j + 1) - ay;
  const bz = real(w, 3 * j + 2) - az;
  const cx = real(w, 3 * k) - ax;
  const cy = real(w, 3 * k + 1) - ay;
  const cz = real(w, 3 * k + 2) - az;
  const nx = by * cz - bz * cy;
  const ny = bz * cx - bx * cz;
  const nz = bx * cy - by * cx;
  const nn = nx * nx + ny * ny + nz * nz;
  if (nn > 0) {
    // Barycentric coordinates of the origin's projection: areas over the normal.
    const b = (az * cy - ay * cz) * nx + (ax * cz - az * cx) * ny + (ay * cx - ax * cy) * nz;
    const c = (ay * bz - az * by) * nx + (az * bx - ax * bz) * ny + (ax * by - ay * bx) * nz;
    if (b >= 0 && c >= 0 && b + c <= nn) {
      const u = b / nn;
      const v = c / nn;
      out[i] = 1 - u - v;
      out[j] = u;
      out[k] = v;
      const x = ax + u * bx + v * cx;
      const y = ay + u * by + v * cy;
      const z = az + u * bz + v * cz;
      return x * x + y * y + z * z;
    }
  }
  // Outside the prism over the triangle (or no triangle at all): the nearest of the edges.
  let best = nearestOnEdge(w, i, j, out);
  let wi = real(out, i);
  let wj = real(out, j);
  let wk = 0;
  const second = nearestOnEdge(w, j, k, out);
  if (second < best) {
    best = second;
    wi = 0;
    wj = real(out, j);
    wk = real(out, k);
  }
  const third = nearestOnEdge(w, i, k, out);
  if (third < best) {
    best = third;
    wi = real(out, i);
    wj = 0;
    wk = real(out, k);
  }
  out[i] = wi;
  out[j] = wj;
  out[k] = wk;
  return best;
};

/**
 * On which side of the face i-j-k the origin lies: positive on the side of corner l, negative
 * away from it, zero when it cannot be told (a flat tetrahedron).
 */
const side = (w: Float64Array, i: number, j: number, k: number, l: number): number => {
  const ax = real(w, 3 * i);
  const ay = real(w, 3 * i + 1);
  const az = real(w, 3 * i + 2);
  const bx = real(w, 3 * j) - ax;
  const by = real(w, 3 * j + 1) - ay;
  const bz = real(w, 3 * j + 2) - az;
  const cx = real(w, 3 * k) - ax;
  const cy = real(w, 3 * k + 1) - ay;
  const cz = real(w, 3 * k + 2) - az;
  const nx = by * cz - bz * cy;
  const ny = bz * cx - bx * cz;
  const nz = bx * cy - by * cx;
  const dx = real(w, 3 * l) - ax;
  const dy = real(w, 3 * l + 1) - ay;
  const dz = real(w, 3 * l + 2) - az;
  const apex = dx * nx + dy * ny + dz * nz;
  const size =
    (bx * bx + by * by + bz * bz) * (cx * cx + cy * cy + cz * cz) * (dx * dx + dy * dy + dz * dz);
  // A volume within rounding of zero (14 digits of its edges' product) has no inside.
  if (apex * apex <= 1e-28 * size) return 0;
  const origin = -(ax * nx + ay * ny + az * nz);
  return apex > 0 ? origin : -origin;
};

const FACES = [0, 1, 2, 3, 0, 1, 3, 2, 0, 2, 3, 1, 1, 2, 3, 0] as const;

/** The same for the tetrahedron 0-1-2-3; -1 when the origin is strictly inside it (weights too). */
export const nearestOnTetrahedron = (w: Float64Array, out: Float64Array): number => {
  let best = Infinity;
  let w0 = 0;
  let w1 = 0;
  let w2 = 0;
  let w3 = 0;
  let inside0 = 0;
  let inside1 = 0;
  let inside2 = 0;
  let inside3 = 0;
  for (let f = 0; f < 16; f += 4) {
    const i = FACES[f] as number;
    const j = FACES[f + 1] as number;
    const k = FACES[f + 2] as number;
    const l = FACES[f + 3] as number;
    const height = side(w, i, j, k, l);
    if (height > 0) {
      if (l === 0) inside0 = height;
      else if (l === 1) inside1 = height;
      else if (l === 2) inside2 = height;
      else inside3 = height;
      continue;
    }
    out[l] = 0;
    const d = nearestOnTriangle(w, i, j, k, out);
    if (d >= best) continue;
    best = d;
    w0 = real(out, 0);
    w1 = real(out, 1);
    w2 = real(out, 2);
    w3 = real(out, 3);
  }
  if (best === Infinity) {
    // Heights times face areas: each is a share of the whole volume.
    const whole = inside0 + inside1 + inside2 + inside3;
    out[0] = inside0 / whole;
    out[1] = inside1 / whole;
    out[2] = inside2 / whole;
    out[3] = inside3 / whole;
    return -1;
  }
  out[0] = w0;
  out[1] = w1;
  out[2] = w2;
  out[3] = w3;
  return best;
};
