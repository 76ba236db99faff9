import { atan, cos, sin, tan } from '../../core/trigonometry.ts';
import type { Shape } from '../../blade/shape.ts';
import { radians } from '../../core/units.ts';
import { columnFrom, shortOf, type Field } from '../field.ts';
import { addPoint, lineUnder, pointsFor, type Points } from '../hull.ts';
import type { Pose } from '../pose.ts';
import type { Faces, Stands } from './hold.ts';
import { outerFace, type Strip } from './strip.ts';

/** Nose and step of a spine rest in the seat frame, mm and degrees. */
export interface SpineRestBody {
  /** Half width of the nose along the stroke. */
  readonly noseHalf: number;
  /** Distance of its front edge from the abrasive face. */
  readonly noseFront: number;
  readonly step: WideStep | NarrowStep;
  /** Top of the step above the seat. */
  readonly stepTop: number;
}

/** A straight step that squares the blade; turned by `yaw` about the belt's middle where u falls. */
export interface WideStep {
  readonly kind: 'wide';
  readonly half: number;
  readonly yaw: number;
}

/** A rounded step that the blade touches in one place: the belt squares the blade. */
export interface NarrowStep {
  readonly kind: 'narrow';
  readonly radius: number;
  /** Where along the stroke it stands, from the belt's middle; negative towards the plunge, mm. */
  readonly at: number;
}

/** What is not known of a pose until it has settled; radians and mm. */
export interface Settled {
  readonly pitch: number;
  readonly yaw: number;
  /** Offsets of the blade's point (m, v0) square to the face and above the seat. */
  readonly y: number;
  readonly z: number;
}

export interface SettleQuestion {
  readonly m: number;
  /** Where along the stroke the maker's push acts, mm from the belt's middle. */
  readonly load: number;
  /** Tilt of the edge towards the belt, radians. */
  readonly tilt: number;
  readonly setoff: number;
  /** Yaw to stand at, radians, where the step does not square the blade. */
  readonly yaw: number;
  /** Most rounds of settling; fewer when it has settled before. */
  readonly rounds: number;
}

/** A pose, and how far its last round of settling still moved it, radians and mm. */
export interface Stood {
  readonly pose: Pose;
  readonly settled: Settled;
  readonly moved: number;
  readonly stands: Stands;
}

/** A round that moves a blade by less than this has settled it, radians and mm. */
export const SETTLED = 1e-8;

/** Least number of columns looked at beside the parts, for the ends that lie between columns. */
const BESIDE = 2;

/** How far the foot of a place at the step may lie from it along a pitched blade, mm. */
const BESIDE_STEP = 3;

/** Adds the part of a polyline between two places, its ends interpolated. */
const clipped = (into: Points, line: Points, from: number, to: number): void => {
  into.count = 0;
  for (let i = 0; i < line.count; i += 1) {
    const x = line.x[i] ?? 0;
    const y = line.y[i] ?? 0;
    if (i > 0) {
      const px = line.x[i - 1] ?? 0;
      const py = line.y[i - 1] ?? 0;
      const rise = (y - py) / (x - px);
      if (px < from && x > from) addPoint(into, from, py + rise * (from - px));
      if (px < to && x > to) addPoint(into, to, py + rise * (to - px));
    }
    if (x >= from && x <= to) addPoint(into, x, y);
  }
};

/** What a blade is settled on, and the lines that settling it draws anew every time. */
interface Settling {
  readonly field: Field;
  readonly faces: Faces;
  readonly shape: Shape;
  readonly body: SpineRestBody;
  readonly strip: Strip | undefined;
  /** The outer face of the strip, by column. */
  readonly outer: Float64Array | undefined;
  readonly short: number;
  readonly seat: Points;
  readonly back: Points;
  readonly over: Points;
  readonly behind: Points;
}

/**
 * Settles the rigid blade at a given tilt: its spine comes down on the nose and back against the
 * step, with the load where the push acts. Solved on the nodes of the blade's faces.
 *
 * The blade is first turned in its own plane by the pitch p, then tilted by q about the stroke,
 * then turned by the yaw f about the vertical, with du = u - m, dv = v - v0:
 *
 *     X = du cos p + dv sin p        V = dv cos p - du sin p
 *     Y = - V sin q - n cos q        z = z0 + V cos q - n sin q
 *     x = X cos f - Y sin f          y = y0 + X sin f + Y cos f
 *
 * Seat: z >= 0 for every point over the nose; where the near corner stands before the nose, the
 * spine's underside bears on the nose's front edge. Step: y <= setoff for every point up to its top.
 */
const settled = (
  { field, faces, shape, body, strip, outer, short, seat, back, over, behind }: Settling,
  question: SettleQuestion,
  guess: Settled,
): Stood | undefined => {
  const { us, rows, spineRows, v } = field;
  const { near, far } = faces;
  const { noseHalf, noseFront, step, stepTop } = body;
  const stepHalf = step.kind === 'wide' ? step.half : 0;
  const middle = step.kind === 'narrow' ? step.at : 0;
  const reach = Math.max(noseHalf, stepHalf);
  const { m, load, tilt, setoff, rounds } = question;
  const [c, s] = [cos(tilt), sin(tilt)];
  const v0 = shape.spine.value(m);
  let { pitch, yaw, y, z } = guess;
  let moved = Infinity;
  let stands: Stands = { from: m, to: m, row: -1 };
  for (let round = 0; round < rounds && moved > SETTLED; round += 1) {
    const [cp, sp] = [cos(pitch), sin(pitch)];
    const wide = reach / Math.max(cp, 0.5);
    const first = Math.max(0, columnFrom(field, m - wide) - BESIDE);
    const last = Math.min(us.length, columnFrom(field, m + wide) + BESIDE);
    let row = -1;
    const beside = stepHalf / Math.max(cp, 0.5) + BESIDE_STEP;
    const firstBack = columnFrom(field, m + middle - beside) - BESIDE;
    const lastBack = columnFrom(field, m + middle + beside) + BESIDE;
    seat.count = 0;
    back.count = 0;
    for (let i = first; i < last; i += 1) {
      const du = (us[i] as number) - m;
      const base = i * rows;
      if (i >= firstBack && i < lastBack) {
        // Step: the farthest point of the far face, which is convex, or of the strip on it.
        let farthest = -Infinity;
        let fx = 0;
        let fz = 0;
        for (let j = 0; j < rows; j += 1) {
          const dv = (strip === undefined ? (v[base + j] as number) : strip.bottom) - v0;
          const V = dv * cp - du * sp;
          const n = -((outer === undefined ? far[base + j] : outer[i]) as number);
          const Y = -V * s - n * c;
          if (outer === undefined && j > row) row = j;
          if (Y <= farthest) break;
          farthest = Y;
          fx = du * cp + dv * sp;
          fz = z + V * c - n * s;
        }
        if (fz <= stepTop) addPoint(back, fx, -farthest);
      }
      // Seat: the lowest point of the near face, not before the nose's front edge.
      let lowest = Infinity;
      let lx = 0;
      for (let j = 0; j <= spineRows; j += 1) {
        const dv = (v[base + j] as number) - v0;
        const V = dv * cp - du * sp;
        const X = du * cp + dv * sp;
        const most = y + X * yaw - noseFront - V * s;
        const face = near[base + j] as number;
        const n = face * c <= most ? face : most / c;
        const Z = V * c - n * s;
        if (Z > lowest) break;
        lowest = Z;
        lx = X;
      }
      addPoint(seat, lx, lowest);
    }
    stands = { from: us[first] as number, to: us[last - 1] as number, row };
    clipped(over, seat, -noseHalf, noseHalf);
    const under = lineUnder(over, load, short);
    if (under === undefined) return undefined;
    let square: { yaw: number; y: number } | undefined;
    if (step.kind === 'wide') {
      clipped(behind, back, -stepHalf, stepHalf);
      const line = lineUnder(behind, load, short);
      if (line !== undefined) {
        const turn = atan(-line.b);
        const at = radians(step.yaw);
        square = {
          yaw: at - turn,
          y: setoff + (line.a * cos(turn)) / cos(at),
        };
      }
    } else square = against(back, question.yaw, step, setoff);
    if (square === undefined) return undefined;
    const turned = atan(under.b / c);
    moved = Math.max(
      Math.abs(turned),
      Math.abs(square.yaw - yaw),
      Math.abs(square.y - y),
      Math.abs(z + under.a),
    );
    pitch += turned;
    ({ yaw, y } = square);
    z = -under.a;
  }
  const [cp, sp, cf, sf] = [cos(pitch), sin(pitch), cos(yaw), sin(yaw)];
  const pose: Pose = {
    m,
    v0,
    x: [0, cp * cf - sp * s * sf, sp * cf + cp * s * sf, c * sf],
    y: [y, cp * sf + sp * s * cf, sp * sf - cp * s * cf, -c * cf],
    z: [z, -sp * c, cp * c, -s],
  };
  return { pose, settled: { pitch, yaw, y, z }, moved, stands };
};

/** Settles a blade again and again: see `settled`. */
export const spineSettler = (
  field: Field,
  faces: Faces,
  shape: Shape,
  body: SpineRestBody,
  strip?: Strip,
): ((question: SettleQuestion, guess: Settled) => Stood | undefined) => {
  const points = (): Points => pointsFor(field.us.length + 4);
  const settling: Settling = {
    ...{ field, faces, shape, body, strip },
    outer: strip && field.us.map((u) => outerFace(strip, u)),
    short: shortOf(field),
    ...{ seat: points(), back: points(), over: points(), behind: points() },
  };
  return (question, guess) => settled(settling, question, guess);
};

/**
 * A rounded step, the blade standing at a given yaw: a surface of slope k in the stroke's frame
 * touches a round of radius r at r (sqrt(1 + k^2) - 1) less than its own place.
 */
const against = (
  back: Points,
  yaw: number,
  { radius, at }: NarrowStep,
  setoff: number,
): { yaw: number; y: number } | undefined => {
  for (let i = 1; i < back.count; i += 1) {
    const [x0, x1] = [back.x[i - 1] ?? 0, back.x[i] ?? 0];
    // The last two points carry a blade that ends just before the step.
    const before = x1 < at && i < back.count - 1;
    if (before || x1 <= x0) continue;
    const [p, q] = [-(back.y[i - 1] ?? 0), -(back.y[i] ?? 0)];
    const slope = (q - p) / (x1 - x0);
    const Y = p - slope * x0;
    const k = tan(yaw + atan(slope));
    // The surface's own line, turned by the yaw, at x = at.
    const over = Y * cos(yaw) + (at + Y * sin(yaw)) * k;
    return { yaw, y: setoff - over - radius * (Math.hypot(1, k) - 1) };
  }
  return undefined;
};
