import { atan, cos, sin } from '../../core/trigonometry.ts';
import type { Shape } from '../../blade/shape.ts';
import { radians } from '../../core/units.ts';
import { root } from '../../grind/numeric/root.ts';
import { columnFrom, shortOf, type Field } from '../field.ts';
import { addPoint, lineUnder, pointsFor } from '../hull.ts';
import type { Pose } from '../pose.ts';
import { cutterOf, lieAt, OFF, type Surface } from '../surface.ts';
import type { Faces, Hold, Reached } from './hold.ts';
import { stretchesOf } from './stretches.ts';

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

export interface EdgeHold {
  readonly field: Field;
  readonly faces: Faces;
  /** The near face before anything was hollowed: depths are measured from it. */
  readonly flat: Float64Array;
  readonly shape: Shape;
  readonly body: EdgeRestBody;
  readonly surface: Surface;
  readonly beltWidth: number;
  /** Depth to stop at below that face, mm. */
  readonly depth: number;
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

/** Range of tilts, degrees, and rounds in which the edge settles on the seat. */
const TILT = 50;
const ROUNDS = 12;
const CLOSE = 1e-10;
/** How closely the depth must be met, mm. */
const MET = 1e-6;
/** Stands for metal that a wheel out of reach leaves, mm. */
const FAR = 1e3;

/**
 * An edge rest before a wheel: the blade stands on its edge, held off the wheel by the lip, and is
 * tipped against the wheel until, anywhere under the belt's width, the hollow is as deep as asked
 * for. On the seat the edge takes the pitch, on the lip the blade takes the yaw, that bring the
 * place of the push nearest to them. With du = u - m, dv = v - edge(m), pitch p, tilt k, yaw f:
 *
 *     X = du cos p + dv sin p        V = dv cos p - du sin p
 *     Y = V sin k - n cos k          z = z0 - V cos k - n sin k
 *     x = X cos f - Y sin f          y = y0 + X sin f + Y cos f
 */
export const edgeHold = (given: EdgeHold): Hold => {
  const { field, shape, body, surface, beltWidth, depth, flat } = given;
  const { near, far } = given.faces;
  const { us, rows, v } = field;
  const half = beltWidth / 2;
  const short = shortOf(field);
  // Depths are taken square to the face: the cosine of its slope against the midplane at each node.
  const square = flat.map((n, k) => {
    const before = k % rows > 0 ? k - 1 : k + 1;
    const rise = (n - (flat[before] ?? 0)) / ((v[k] ?? 0) - (v[before] ?? 0));
    return Number.isFinite(rise) ? 1 / Math.hypot(1, rise) : 1;
  });
  const [seat, lip] = [pointsFor(us.length), pointsFor(us.length)];

  /**
   * Nearest the wheel that a column's near face comes between the seat and the lip's top: Y, and X
   * with it; NaN where an edge that rises along the stroke stands over the lip. Number by number:
   * places thrown away took more than half of a grind.
   */
  const foremost = { X: NaN, Y: NaN };
  const seekForemost = (i: number, at: Placing, top: number): void => {
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

  const stand = (m: number, load: number, tilt: number): Pose | undefined => {
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
        seekForemost(i, placing, body.lipHeight);
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

  const stretches = stretchesOf(field, flat, square, depth, half);
  /** Where the least metal was found last: from one tilt to the next it hardly moves. */
  let guess = { i: 0, k: 0 };

  /** Least metal over the hollow's depth anywhere under the belt, mm, and where. */
  const over = (pose: Pose): { metal: number; at: number } => {
    const cutter = cutterOf(pose, surface);
    const { m } = pose;
    let metal = FAR;
    let at = m;
    const first = columnFrom(field, m - half - 20);
    const end = columnFrom(field, m + half + 20);
    const isNear = guess.i >= first && guess.i < end;
    const limit = isNear ? stretches.metalAt(cutter, guess.i, guess.k) : Infinity;
    for (let i = first; i < end; i += 1) {
      const u = us[i] as number;
      const [top, low] = [v[i * rows] as number, v[(i + 1) * rows - 1] as number];
      if (lieAt(cutter, u, top, low, half) === OFF) continue;
      const least = stretches.leastIn(cutter, i, metal, limit);
      if (least >= metal) continue;
      metal = least;
      at = u;
      guess = { i, k: stretches.found() };
    }
    return { metal, at };
  };

  return (m): Reached | undefined => {
    const [from, to] = [Math.max(m - half, us[0] ?? 0), Math.min(m + half, shape.length)];
    const load = (from + to) / 2 - m;
    // A blade that leans back until its edge clears the lip is nowhere near the wheel.
    const metalAt = (tilt: number): number => {
      const pose = stand(m, load, tilt);
      return pose === undefined ? FAR : over(pose).metal;
    };
    const [lo, hi] = [radians(-TILT), radians(TILT)];
    if (metalAt(lo) <= 0 || metalAt(hi) >= 0) return undefined;
    const pose = stand(m, load, root(metalAt, lo, hi));
    if (pose === undefined) return undefined;
    const { metal, at } = over(pose);
    return Math.abs(metal) < MET ? { pose, stoppedAt: at } : undefined;
  };
};
