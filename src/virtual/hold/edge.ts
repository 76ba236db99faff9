import { atan, cos, sin } from '../../core/trigonometry.ts';
import type { Shape } from '../../blade/shape.ts';
import { radians } from '../../core/units.ts';
import { root } from '../../grind/numeric/root.ts';
import { columnFrom, shortOf, type Field } from '../field.ts';
import { addPoint, lineUnder, pointsFor } from '../hull.ts';
import type { Pose } from '../pose.ts';
import { cutterOf, type Surface } from '../surface.ts';
import type { Faces, Hold, Reached } from './hold.ts';

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
   * Nearest the wheel that a column's near face comes between the seat and the lip's top: Y and X;
   * none where an edge that rises along the stroke stands over the lip.
   */
  const foremost = (
    i: number,
    at: (k: number, n: number) => { X: number; Y: number; z: number },
    top: number,
  ): { X: number; Y: number } | undefined => {
    const last = (i + 1) * rows - 1;
    let best = at(last, near[last] ?? 0);
    if (best.z > top + 1e-9) return undefined;
    let below = best;
    for (let k = last - 1; k >= i * rows; k -= 1) {
      const next = at(k, near[k] ?? 0);
      const share = next.z > top ? (top - below.z) / (next.z - below.z) : 1;
      const Y = below.Y + share * (next.Y - below.Y);
      if (Y < best.Y) best = { X: below.X + share * (next.X - below.X), Y, z: top };
      if (share < 1) break;
      below = next;
    }
    return best;
  };

  const stand = (m: number, load: number, tilt: number): Pose | undefined => {
    const [c, s] = [cos(tilt), sin(tilt)];
    const v0 = shape.edge.value(m);
    let [pitch, z] = [atan(shape.edge.slope(m)), 0];
    let [yaw, y] = [0, 0];
    const reach = Math.max(body.seatHalf, body.lipTo) + 2;
    for (let round = 0; round < ROUNDS; round += 1) {
      const [cp, sp] = [cos(pitch), sin(pitch)];
      const place = (k: number, u: number, n: number): { X: number; Y: number; z: number } => {
        const [du, dv] = [u - m, (v[k] ?? 0) - v0];
        const V = dv * cp - du * sp;
        return { X: du * cp + dv * sp, Y: V * s - n * c, z: z - V * c - n * s };
      };
      [seat.count, lip.count] = [0, 0];
      const [first, end] = [columnFrom(field, m - reach), columnFrom(field, m + reach)];
      for (let i = first; i < end; i += 1) {
        const last = (i + 1) * rows - 1;
        const corner = s > 0 ? (near[last] ?? 0) : -(far[last] ?? 0);
        const foot = place(last, us[i] ?? 0, corner);
        if (Math.abs(foot.X) <= body.seatHalf) addPoint(seat, foot.X, foot.z - z);
      }
      const under = lineUnder(seat, load, short);
      if (under === undefined) return undefined;
      const sunk = Math.abs(z + under.a);
      z = -under.a;
      for (let i = first; i < end; i += 1) {
        const touch = foremost(i, (k, n) => place(k, us[i] ?? 0, n), body.lipHeight);
        if (touch === undefined) continue;
        const beside = Math.abs(touch.X);
        if (beside >= body.lipFrom && beside <= body.lipTo) addPoint(lip, touch.X, touch.Y);
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

  /** Least metal over the hollow's depth anywhere under the belt, mm, and where. */
  const over = (pose: Pose): { metal: number; at: number } => {
    const cutter = cutterOf(pose, surface);
    let best = { metal: FAR, at: pose.m };
    for (
      let i = columnFrom(field, pose.m - half - 20);
      i < columnFrom(field, pose.m + half + 20);
      i += 1
    ) {
      const du = (us[i] ?? 0) - pose.m;
      for (let k = i * rows; k < (i + 1) * rows; k += 1) {
        const dv = (v[k] ?? 0) - pose.v0;
        const n = cutter.depth(du, dv);
        const metal = (n - (flat[k] ?? 0)) * (square[k] ?? 1) + depth;
        if (metal >= best.metal || Math.abs(cutter.across(du, dv, n)) > half) continue;
        best = { metal, at: us[i] ?? 0 };
      }
    }
    return best;
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
