import type { Curve } from './curve.ts';

type Points = readonly (readonly [number, number])[];

/**
 * The monotone piecewise cubic through points of increasing u (F. N. Fritsch, J. Butland, "A
 * method for constructing local monotone piecewise cubic interpolants", 1984): continuous slope,
 * straight where three neighbours are straight, never beyond the points between which it runs.
 */
export const interpolate = (points: Points): Curve => {
  const us = points.map((p) => p[0]);
  const vs = points.map((p) => p[1]);
  const at = (list: readonly number[], i: number): number => list[i] ?? 0;
  const secants = us.slice(1).map((u, i) => (at(vs, i + 1) - at(vs, i)) / (u - at(us, i)));
  const slopes = us.map((_, i) => nodeSlope(us, secants, i));
  const piece = (u: number): number => {
    let low = 0;
    let high = us.length - 2;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (at(us, middle) <= u) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  // Hermite form on one piece: t from 0 to 1 over the width h.
  const local = (u: number) => {
    const i = piece(u);
    const h = at(us, i + 1) - at(us, i);
    const t = (u - at(us, i)) / h;
    const [v, d0, d1, k] = [at(vs, i), at(slopes, i), at(slopes, i + 1), at(secants, i)];
    return { t, h, v, d0, c: 3 * k - 2 * d0 - d1, d: d0 + d1 - 2 * k };
  };
  return {
    value: (u) => {
      const { t, h, v, d0, c, d } = local(u);
      return v + h * t * (d0 + t * (c + t * d));
    },
    slope: (u) => {
      const { t, d0, c, d } = local(u);
      return d0 + t * (2 * c + 3 * t * d);
    },
    breaks: us.slice(1, -1),
  };
};

/** Slope at a node: the weighted harmonic mean of its two secants, the secant at an end. */
const nodeSlope = (us: readonly number[], secants: readonly number[], i: number): number => {
  const before = secants[i - 1];
  const after = secants[i];
  if (before === undefined) return endSlope(us, secants, 0, 1);
  if (after === undefined) return endSlope(us, secants, secants.length - 1, -1);
  if (before * after <= 0) return 0;
  const h0 = (us[i] ?? 0) - (us[i - 1] ?? 0);
  const h1 = (us[i + 1] ?? 0) - (us[i] ?? 0);
  const w0 = 2 * h1 + h0;
  const w1 = h1 + 2 * h0;
  return (w0 + w1) / (w0 / before + w1 / after);
};

/** Three-point end slope, held back so that the end piece stays monotone. */
const endSlope = (
  us: readonly number[],
  secants: readonly number[],
  end: number,
  inward: 1 | -1,
): number => {
  const k0 = secants[end] ?? 0;
  const k1 = secants[end + inward];
  if (k1 === undefined) return k0;
  const width = (i: number): number => (us[i + 1] ?? 0) - (us[i] ?? 0);
  const [h0, h1] = [width(end), width(end + inward)];
  const slope = ((2 * h0 + h1) * k0 - h0 * k1) / (h0 + h1);
  if (slope * k0 <= 0) return 0;
  return k0 * k1 <= 0 && Math.abs(slope) > 3 * Math.abs(k0) ? 3 * k0 : slope;
};
