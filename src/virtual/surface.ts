import { cos, sin } from '../core/trigonometry.ts';
import { radians } from '../core/units.ts';
import type { Pose, Row } from './pose.ts';

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

/**
 * What a belt does to a placed blade: numbers, for it is asked about a million nodes of a stroke and
 * closures would each answer with a number of their own.
 */
export interface Cutter extends Pick<Pose, 'm' | 'v0' | 'x'> {
  /** Distance from the face out of the platen, and along it, as rows of the placed blade. */
  readonly out: Row;
  readonly along: Row;
  readonly round: Surface['round'];
  /** Depth of a plane: a + b (u - m) + g (v - v0). */
  readonly a: number;
  readonly b: number;
  readonly g: number;
}

/** The abrasive face as the placed blade sees it: exact, plane or circle. */
export const cutterOf = ({ m, v0, x, y, z }: Pose, { lean, round }: Surface): Cutter => {
  const [c, s] = [cos(radians(lean)), sin(radians(lean))];
  const out: Row = [
    y[0] * c + z[0] * s,
    y[1] * c + z[1] * s,
    y[2] * c + z[2] * s,
    y[3] * c + z[3] * s,
  ];
  const along: Row = [
    z[0] * c - y[0] * s,
    z[1] * c - y[1] * s,
    z[2] * c - y[2] * s,
    z[3] * c - y[3] * s,
  ];
  const on = out[3];
  return { m, v0, x, out, along, round, a: -out[0] / on, b: -out[1] / on, g: -out[2] / on };
};

/** Asked some million times: no lists on the way, which took longer than the numbers. */
const roundDepth = (
  { m, v0, out, along }: Cutter,
  { radius, axis }: NonNullable<Surface['round']>,
  u: number,
  v: number,
): number => {
  const du = u - m;
  const dv = v - v0;
  const on = out[3];
  const ln = along[3];
  const square = on * on + ln * ln;
  const p = out[0] + out[1] * du + out[2] * dv - axis[0];
  const q = along[0] + along[1] * du + along[2] * dv - axis[1];
  // |(p, q) + n (on, ln)| = radius: the first crossing on the way out of the blade.
  const half = p * on + q * ln;
  const root = half * half - square * (p * p + q * q - radius * radius);
  return root > 0 ? (-half - Math.sqrt(root)) / square : Infinity;
};

/** Where the abrasive face stands over the midplane at (u, v), mm; Infinity past a wheel. */
export const depthAt = (cutter: Cutter, u: number, v: number): number =>
  cutter.round === undefined
    ? cutter.a + cutter.b * (u - cutter.m) + cutter.g * (v - cutter.v0)
    : roundDepth(cutter, cutter.round, u, v);

/** How the face's depth grows across the blade, where it stands `n` over the midplane. */
export const riseAt = (cutter: Cutter, u: number, v: number, n: number): number => {
  const { m, v0, out, along, round } = cutter;
  if (round === undefined) return cutter.g;
  const du = u - m;
  const dv = v - v0;
  const p = out[0] + out[1] * du + out[2] * dv + out[3] * n - round.axis[0];
  const q = along[0] + along[1] * du + along[2] * dv + along[3] * n - round.axis[1];
  return -(p * out[2] + q * along[2]) / (p * out[3] + q * along[3]);
};

/** Where along the stroke a point of the placed blade is, mm from the belt's middle. */
export const acrossAt = ({ m, v0, x }: Cutter, u: number, v: number, n: number): number =>
  x[0] + x[1] * (u - m) + x[2] * (v - v0) + x[3] * n;

/** How a column lies to the belt in one pose. */
export const OFF = 1;
export const UNDER = 2;
export const PARTLY = 3;
export type Lie = typeof OFF | typeof UNDER | typeof PARTLY;

/** How far the axis of a round face is from a point of the midplane. */
const awayAt = (
  { m, v0, out, along }: Cutter,
  { axis }: NonNullable<Surface['round']>,
  u: number,
  v: number,
): number => {
  const p = out[0] + out[1] * (u - m) + out[2] * (v - v0) - axis[0];
  const q = along[0] + along[1] * (u - m) + along[2] * (v - v0) - axis[1];
  return Math.sqrt(p * p + q * q);
};

/**
 * How the face over the midplane of a column, from one v to another, lies to a belt of half a width:
 * `PARTLY` wherever that is not sure.
 */
export const lieAt = (cutter: Cutter, u: number, from: number, to: number, half: number): Lie => {
  const { x, out, along, round } = cutter;
  const p = acrossAt(cutter, u, from, round ? 0 : depthAt(cutter, u, from));
  const q = acrossAt(cutter, u, to, round ? 0 : depthAt(cutter, u, to));
  // No crossing is farther from the midplane than the axis is from there and the radius.
  const slack = round
    ? (Math.abs(x[3]) *
        (Math.max(awayAt(cutter, round, u, from), awayAt(cutter, round, u, to)) + round.radius)) /
      Math.sqrt(out[3] * out[3] + along[3] * along[3])
    : 0;
  const low = Math.min(p, q) - slack;
  const high = Math.max(p, q) + slack;
  if (low >= -half && high <= half) return UNDER;
  return low > half || high < -half ? OFF : PARTLY;
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
