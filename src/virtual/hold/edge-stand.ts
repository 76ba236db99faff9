import { atan, cos, sin } from '../../core/trigonometry.ts';
import type { Shape } from '../../blade/shape.ts';
import { columnFrom, shortOf, type Field } from '../field.ts';
import { addPoint, lineUnder, pointsFor, type Points } from '../hull.ts';
import type { Pose } from '../pose.ts';
import type { Faces } from './hold.ts';

/** Seat and lip of an edge rest, mm from the wheel's foremost point and the seat. */
export interface EdgeRestBody {
  /** Half width of the seat along the stroke. */
  readonly seatHalf: number;
  /** Where the lip holds the blade off, and how high it is. */
  readonly lip: number;
  readonly lipHeight: number;
  /** Where along the stroke the lip is, by distance from the belt's middle on either side. */
  readonly lipFrom: number;
  readonly lipTo: number;
}

/** How a blade is being placed: its point at the belt, sines and cosines of pitch and tilt, height. */
interface Placing {
  readonly m: number;
  readonly v0: number;
  readonly cp: number;
  readonly sp: number;
  readonly c: number;
  readonly s: number;
  readonly z: number;
}

/** A blade that is stood on an edge rest, and what standing it draws anew every time. */
export interface EdgeStanding {
  readonly field: Field;
  readonly faces: Faces;
  readonly shape: Shape;
  readonly body: EdgeRestBody;
  readonly short: number;
  readonly seat: Points;
  readonly lip: Points;
  /**
   * Nearest the wheel that a column's near face comes between the seat and the lip's top: Y, and X
   * with it; NaN where an edge that rises along the stroke stands over the lip. Number by number:
   * places thrown away took more than half of a grind.
   */
  readonly foremost: { X: number; Y: number };
}

export const edgeStanding = (
  field: Field,
  faces: Faces,
  shape: Shape,
  body: EdgeRestBody,
): EdgeStanding => ({
  ...{ field, faces, shape, body },
  short: shortOf(field),
  seat: pointsFor(field.us.length),
  lip: pointsFor(field.us.length),
  foremost: { X: NaN, Y: NaN },
});

/** Rounds in which the edge settles on the seat, and how closely. */
const ROUNDS = 12;
const CLOSE = 1e-10;

/** Seeks `foremost` of a column. */
const seekForemost = (
  { field, faces, foremost }: EdgeStanding,
  i: number,
  at: Placing,
  top: number,
): void => {
  const { us, rows, v } = field;
  const { near } = faces;
  const { m, v0, cp, sp, c, s, z } = at;
  const du = (us[i] as number) - m;
  const last = (i + 1) * rows - 1;
  foremost.Y = NaN;
  let [belowX, belowY, belowZ] = [0, 0, 0];
  for (let k = last; k >= i * rows; k -= 1) {
    const dv = (v[k] as number) - v0;
    const n = near[k] as number;
    const V = dv * cp - du * sp;
    const nextX = du * cp + dv * sp;
    const nextY = V * s - n * c;
    const nextZ = z - V * c - n * s;
    if (k === last) {
      if (nextZ > top + 1e-9) return;
      foremost.X = nextX;
      foremost.Y = nextY;
    } else {
      const share = nextZ > top ? (top - belowZ) / (nextZ - belowZ) : 1;
      const Y = belowY + share * (nextY - belowY);
      if (Y < foremost.Y) {
        foremost.X = belowX + share * (nextX - belowX);
        foremost.Y = Y;
      }
      if (share < 1) return;
    }
    belowX = nextX;
    belowY = nextY;
    belowZ = nextZ;
  }
};

/**
 * The blade at a tilt: on the seat the edge takes the pitch, on the lip the blade takes the yaw,
 * that bring the place of the push nearest to them. With du = u - m, dv = v - edge(m), pitch p,
 * tilt k, yaw f:
 *
 *     X = du cos p + dv sin p        V = dv cos p - du sin p
 *     Y = V sin k - n cos k          z = z0 - V cos k - n sin k
 *     x = X cos f - Y sin f          y = y0 + X sin f + Y cos f
 */
export const standOn = (
  on: EdgeStanding,
  m: number,
  load: number,
  tilt: number,
): Pose | undefined => {
  const { field, shape, body, short, seat, lip, foremost } = on;
  const { near, far } = on.faces;
  const { us, rows, v } = field;
  const [c, s] = [cos(tilt), sin(tilt)];
  const v0 = shape.edge.value(m);
  let [pitch, z] = [atan(shape.edge.slope(m)), 0];
  let [yaw, y] = [0, 0];
  const reach = Math.max(body.seatHalf, body.lipTo) + 2;
  for (let round = 0; round < ROUNDS; round += 1) {
    const [cp, sp] = [cos(pitch), sin(pitch)];
    [seat.count, lip.count] = [0, 0];
    const [first, end] = [columnFrom(field, m - reach), columnFrom(field, m + reach)];
    for (let i = first; i < end; i += 1) {
      const last = (i + 1) * rows - 1;
      const corner = s > 0 ? (near[last] as number) : -(far[last] as number);
      const du = (us[i] as number) - m;
      const dv = (v[last] as number) - v0;
      const X = du * cp + dv * sp;
      const foot = z - (dv * cp - du * sp) * c - corner * s;
      if (Math.abs(X) <= body.seatHalf) addPoint(seat, X, foot - z);
    }
    const under = lineUnder(seat, load, short);
    if (under === undefined) return undefined;
    const sunk = Math.abs(z + under.a);
    z = -under.a;
    const placing = { m, v0, cp, sp, c, s, z };
    for (let i = first; i < end; i += 1) {
      seekForemost(on, i, placing, body.lipHeight);
      const beside = Math.abs(foremost.X);
      if (!Number.isNaN(foremost.Y) && beside >= body.lipFrom && beside <= body.lipTo)
        addPoint(lip, foremost.X, foremost.Y);
    }
    const before = lineUnder(lip, load, short);
    if (before === undefined) return undefined;
    const turn = atan(before.b);
    const settled = { yaw: -turn, y: body.lip - before.a * cos(turn) };
    const moved = Math.max(
      Math.abs(under.b),
      Math.abs(settled.yaw - yaw),
      Math.abs(settled.y - y),
      sunk,
    );
    pitch -= atan(under.b / c);
    ({ yaw, y } = settled);
    if (moved < CLOSE) break;
  }
  const [cp, sp, cf, sf] = [cos(pitch), sin(pitch), cos(yaw), sin(yaw)];
  return {
    m,
    v0,
    x: [0, cp * cf + sp * s * sf, sp * cf - cp * s * sf, c * sf],
    y: [y, cp * sf - sp * s * cf, sp * sf + cp * s * cf, -c * cf],
    z: [z, sp * c, -cp * c, -s],
  };
};
