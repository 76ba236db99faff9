import { root } from '../../grind/numeric/root.ts';
import type { Shape } from '../../blade/shape.ts';
import { radians } from '../../core/units.ts';
import { columnFrom, type Field } from '../field.ts';
import type { Pose } from '../pose.ts';
import { cutterOf, lieAt, OFF, type Surface } from '../surface.ts';
import { edgeStanding, standOn, type EdgeRestBody, type EdgeStanding } from './edge-stand.ts';
import type { Faces, Hold, Reached } from './hold.ts';
import { leastIn, metalAt, stretchesOf, type Stretches } from './stretches.ts';

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

/** Range of tilts, degrees. */
const TILT = 50;
/** How far the tilt is looked for first about that of the pose before, degrees. */
const NEAR = 0.25;
/** How closely the depth must be met, mm. */
const MET = 1e-6;
/** Stands for metal that a wheel out of reach leaves, mm. */
const FAR = 1e3;

/** A blade on an edge rest before a wheel. */
interface Tipping {
  readonly on: EdgeStanding;
  readonly surface: Surface;
  readonly half: number;
  readonly stretches: Stretches;
  /** Where the least metal was found last: from one tilt to the next it hardly moves. */
  guess: { readonly i: number; readonly k: number };
  /** The tilt that was found last, radians: from one pose to the next it hardly changes. */
  tilt: number;
}

/** Least metal over the hollow's depth anywhere under the belt, mm, and where. */
const over = (tipping: Tipping, pose: Pose): { metal: number; at: number } => {
  const { surface, half, stretches, guess } = tipping;
  const { field } = tipping.on;
  const { us, rows, v } = field;
  const cutter = cutterOf(pose, surface);
  const { m } = pose;
  let metal = FAR;
  let at = m;
  const first = columnFrom(field, m - half - 20);
  const end = columnFrom(field, m + half + 20);
  const isNear = guess.i >= first && guess.i < end;
  const limit = isNear ? metalAt(stretches, cutter, guess.i, guess.k) : Infinity;
  for (let i = first; i < end; i += 1) {
    const u = us[i] as number;
    const [top, low] = [v[i * rows] as number, v[(i + 1) * rows - 1] as number];
    if (lieAt(cutter, u, top, low, half) === OFF) continue;
    const least = leastIn(stretches, cutter, i, metal, limit);
    if (least >= metal) continue;
    metal = least;
    at = u;
    tipping.guess = { i, k: stretches.found };
  }
  return { metal, at };
};

/** Tips the blade with place m before the wheel, until the hollow is as deep as asked for. */
const tipIn = (tipping: Tipping, m: number): Reached | undefined => {
  const { on, half } = tipping;
  const [from, to] = [Math.max(m - half, on.field.us[0] ?? 0), Math.min(m + half, on.shape.length)];
  const load = (from + to) / 2 - m;
  // A blade that leans back until its edge clears the lip is nowhere near the wheel.
  const leftAt = (tilt: number): number => {
    const pose = standOn(on, m, load, tilt);
    return pose === undefined ? FAR : over(tipping, pose).metal;
  };
  const within = (lo: number, hi: number): number | undefined => {
    const ends = [leftAt(lo), leftAt(hi)] as const;
    return ends[0] > 0 && ends[1] < 0 ? root(leftAt, lo, hi, ends) : undefined;
  };
  const near = radians(NEAR);
  const tilt =
    within(tipping.tilt - near, tipping.tilt + near) ?? within(radians(-TILT), radians(TILT));
  const pose = tilt === undefined ? undefined : standOn(on, m, load, tilt);
  if (tilt === undefined || pose === undefined) return undefined;
  tipping.tilt = tilt;
  const { metal, at } = over(tipping, pose);
  return Math.abs(metal) < MET ? { pose, stoppedAt: at } : undefined;
};

/**
 * An edge rest before a wheel: the blade stands on its edge, held off the wheel by the lip, and is
 * tipped against the wheel until, anywhere under the belt's width, the hollow is as deep as asked
 * for.
 */
export const edgeHold = (given: EdgeHold): Hold => {
  const { field, faces, flat, shape, body, surface, beltWidth, depth } = given;
  const { rows, v } = field;
  const half = beltWidth / 2;
  // Depths are taken square to the face: the cosine of its slope against the midplane at each node.
  const square = flat.map((n, k) => {
    const before = k % rows > 0 ? k - 1 : k + 1;
    const rise = (n - (flat[before] ?? 0)) / ((v[k] ?? 0) - (v[before] ?? 0));
    return Number.isFinite(rise) ? 1 / Math.hypot(1, rise) : 1;
  });
  const tipping: Tipping = {
    on: edgeStanding(field, faces, shape, body),
    ...{ surface, half },
    stretches: stretchesOf(field, flat, square, depth, half),
    guess: { i: 0, k: 0 },
    tilt: 0,
  };
  return (m) => tipIn(tipping, m);
};
