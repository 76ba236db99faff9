import { cos, sin } from '../core/trigonometry.ts';
import { radians } from '../core/units.ts';
import type { Pose } from './pose.ts';

/**
 * The abrasive face across the stroke, the same over the belt's width. Measured along and square to
 * the face, which leans back by `lean` degrees: (0, 0) is where it meets the seat of a spine rest.
 */
export interface Surface {
  readonly lean: number;
  /** None for a plane; for a convex face its radius and axis (square to the face, along it), mm. */
  readonly round?: {
    readonly radius: number;
    readonly axis: readonly [out: number, along: number];
  };
}

/** The plane of a flat platen. */
export const flatSurface = (lean: number): Surface => ({ lean });

/**
 * A radiused platen whose middle stands `along` the face above the seat: the face still meets the
 * seat at its origin, from where setoffs are measured.
 */
export const radiusedSurface = (lean: number, radius: number, along: number): Surface => ({
  lean,
  round: { radius, axis: [-Math.sqrt(Math.max(radius ** 2 - along ** 2, 0)), along] },
});

/** A contact wheel, belt included, its foremost point at y = 0 and its axis `above` the seat. */
export const wheelSurface = (radius: number, above: number): Surface => ({
  lean: 0,
  round: { radius, axis: [-radius, above] },
});

/** What a belt does to a placed blade. */
export interface Cutter {
  /** Where the abrasive face stands over the midplane at (u - m, v - v0), mm; Infinity past a wheel. */
  readonly depth: (du: number, dv: number) => number;
  /** Where along the stroke a point of the placed blade is, mm from the belt's middle. */
  readonly across: (du: number, dv: number, n: number) => number;
  /**
   * Between what places along the stroke the face stands over the midplane of a column, from one dv
   * to another: as wide at least as it is.
   */
  readonly span: (du: number, from: number, to: number) => readonly [number, number];
  /** The depth of a plane, a + b du + g dv: a million nodes of a stroke are not asked one by one. */
  readonly plane?: { readonly a: number; readonly b: number; readonly g: number };
}

/** The abrasive face as the placed blade sees it: exact, plane or circle. */
export const cutterOf = ({ x, y, z }: Pose, { lean, round }: Surface): Cutter => {
  const [c, s] = [cos(radians(lean)), sin(radians(lean))];
  const out = y.map((_, k) => (y[k] ?? 0) * c + (z[k] ?? 0) * s);
  const [o0 = 0, ou = 0, ov = 0, on = 0] = out;
  const across = (du: number, dv: number, n: number): number =>
    x[0] + x[1] * du + x[2] * dv + x[3] * n;
  if (round === undefined) {
    const [a, b, g] = [-o0 / on, -ou / on, -ov / on];
    const depth = (du: number, dv: number): number => a + b * du + g * dv;
    const span = (du: number, from: number, to: number): readonly [number, number] => {
      const [p, q] = [across(du, from, depth(du, from)), across(du, to, depth(du, to))];
      return p < q ? [p, q] : [q, p];
    };
    return { depth, across, span, plane: { a, b, g } };
  }
  const along = y.map((_, k) => (z[k] ?? 0) * c - (y[k] ?? 0) * s);
  const [l0 = 0, lu = 0, lv = 0, ln = 0] = along;
  const { radius, axis } = round;
  const square = on * on + ln * ln;
  const depth = (du: number, dv: number): number => {
    const p = o0 + ou * du + ov * dv - axis[0];
    const q = l0 + lu * du + lv * dv - axis[1];
    // |(p, q) + n (on, ln)| = radius: the first crossing on the way out of the blade.
    const half = p * on + q * ln;
    const root = half * half - square * (p * p + q * q - radius * radius);
    return root > 0 ? (-half - Math.sqrt(root)) / square : Infinity;
  };
  // No crossing is farther from the midplane than the axis is from there and the radius.
  const awayAt = (du: number, dv: number): number =>
    Math.hypot(o0 + ou * du + ov * dv - axis[0], l0 + lu * du + lv * dv - axis[1]);
  const span = (du: number, from: number, to: number): readonly [number, number] => {
    const [p, q] = [across(du, from, 0), across(du, to, 0)];
    const away = Math.max(awayAt(du, from), awayAt(du, to)) + radius;
    const slack = Math.abs(x[3]) * (away / Math.sqrt(square));
    return [Math.min(p, q) - slack, Math.max(p, q) + slack];
  };
  return { depth, across, span };
};

/** Rounds in which a leaning round face is met at a height. */
const ROUNDS = 40;

/** Where the abrasive face is at a height z over the seat, y; for a round face its front. */
export const faceAt = ({ lean, round }: Surface, z: number): number => {
  const [c, s] = [cos(radians(lean)), sin(radians(lean))];
  if (round === undefined) return (-z * s) / c;
  const { radius, axis } = round;
  let y = 0;
  for (let i = 0; i < ROUNDS; i += 1) {
    const along = z * c - y * s - axis[1];
    const out = axis[0] + Math.sqrt(Math.max(radius ** 2 - along ** 2, 0));
    y = (out - z * s) / c;
  }
  return y;
};
