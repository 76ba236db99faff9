import { sin } from '../../core/trigonometry.ts';
import type { Shape } from '../../blade/shape.ts';
import { radians } from '../../core/units.ts';
import { columnFrom, shortOf, type Field } from '../field.ts';
import { addPoint, lineUnder, pointsFor } from '../hull.ts';
import type { Pose } from '../pose.ts';
import { acrossAt, cutterOf, depthAt, type Surface } from '../surface.ts';
import type { Faces, Hold, Stands } from './hold.ts';
import {
  SETTLED,
  spineSettler,
  type Settled,
  type SettleQuestion,
  type SpineRestBody,
} from './spine-settle.ts';
import type { Strip } from './strip.ts';
import { trailFrom } from './trail.ts';

export interface SpineHold {
  readonly field: Field;
  readonly faces: Faces;
  readonly shape: Shape;
  readonly body: SpineRestBody;
  readonly setoff: number;
  readonly surface: Surface;
  readonly beltWidth: number;
  /** Distance from the midplane at which the near edge is to stop, by column, mm. */
  readonly stop: Float64Array;
  readonly strip?: Strip | undefined;
}

/** Range of tilts a blade can stand at on a spine rest, degrees from the seat's normal. */
const TILT = { least: 0.02, most: 60 } as const;
/** Tilt from which the first pose is looked for, degrees. */
const FIRST_TILT = 4;
/** Looks at the edge before a stop is given up, and how closely it is met, mm. */
const LOOKS = 80;
const CLOSE = 1e-7;
/** Looks that settle the blade by one round each; later ones settle it fully. */
const QUICK = 24;
const FULL = 16;
/** Looks at a narrow step that go the whole way, and how far the later ones go. */
const WHOLE = 8;
const PART = 0.6;
/** Most by which one look changes tilt or yaw, radians. */
const STRIDE = 0.05;
/** Least change of tilt that tells what a change of tilt does, radians, and how far that is believed. */
const TELLS = 1e-7;
const BELIEVED = 0.3;

/** Edge under the belt at one pose: how much it still has to lose. */
interface Look {
  readonly pose: Pose;
  readonly settled: Settled;
  readonly moved: number;
  readonly stands: Stands;
  /** Least metal over the stop, or, at a narrow step, that of the line that bears, mm. */
  readonly over: number;
  /** Slope of the supporting line along the stroke: the yaw still to be taken up. */
  readonly slope: number;
  readonly at: number;
  /** Height of the edge there: what the edge loses for each radian of tilt. */
  readonly height: number;
}

/** What a change of tilt did between two looks; nothing to learn where it did something else. */
const effectOf = (was: Look, now: Look, by: number) => {
  const edge = (was.over - now.over) / (by * now.height);
  if (!(Math.abs(edge - 1) < BELIEVED)) return undefined;
  const rate = (from: number, to: number): number => (to - from) / by;
  return {
    edge,
    y: rate(was.settled.y, now.settled.y),
    z: rate(was.settled.z, now.settled.z),
  };
};

/**
 * A spine rest with a maker who leans the blade in until the edge under the belt is down to the
 * stop. The maker keeps the spine on nose and step, pushes opposite the middle of the metal that is
 * on the belt, and stops at the first place anywhere under the belt whose edge is down to its
 * thickness. A wide step squares the blade; at a narrow one it beds on the belt, so that its edge
 * reaches the stop on both sides of the push.
 */
export const spineHold = (given: SpineHold): Hold => {
  const { field, shape, body, setoff, surface, beltWidth, stop, strip } = given;
  const { us, rows, v } = field;
  const half = beltWidth / 2;
  const settle = spineSettler(field, given.faces, shape, body, strip);
  const under = pointsFor(us.length + 4);
  const short = shortOf(field);
  const highest = v.reduce((most, at) => Math.max(most, at), 0);
  const { step } = body;
  const narrow = step.kind === 'narrow';
  const trail = trailFrom({
    tilt: radians(FIRST_TILT + surface.lean),
    settled: { pitch: 0, yaw: 0, y: setoff - shape.thickness.value(0) / 2, z: 0 },
  });

  const look = (question: SettleQuestion, guess: Settled): Look | undefined => {
    const stood = settle(question, guess);
    if (stood === undefined) return undefined;
    const { pose, settled, moved, stands } = stood;
    const { m, load } = question;
    const cutter = cutterOf(pose, surface);
    const slack = 2 + highest * Math.abs(sin(settled.pitch));
    const first = Math.max(0, columnFrom(field, m - half - slack) - 1);
    const last = Math.min(us.length, columnFrom(field, m + half + slack) + 1);
    under.count = 0;
    let over = Infinity;
    let at = m;
    let lastX = NaN;
    let lastOver = 0;
    let lastU = m;
    const consider = (x: number, metal: number, u: number): void => {
      if (narrow) addPoint(under, x, metal);
      if (metal >= over) return;
      over = metal;
      at = u;
    };
    for (let i = first; i < last; i += 1) {
      const u = us[i] as number;
      const low = v[i * rows + rows - 1] as number;
      const n = depthAt(cutter, u, low);
      const x = acrossAt(cutter, u, low, n);
      const metal = n - (stop[i] as number);
      for (let end = -half; end <= half; end += beltWidth)
        if (lastX < end && x > end) {
          const k = (end - lastX) / (x - lastX);
          consider(end, lastOver + k * (metal - lastOver), lastU + k * (u - lastU));
        }
      if (Math.abs(x) <= half) consider(x, metal, u);
      lastX = x;
      lastOver = metal;
      lastU = u;
    }
    if (over === Infinity) return undefined;
    const heightAt = (u: number): number => Math.max(shape.edge.value(u) - shape.spine.value(u), 1);
    if (step.kind === 'wide')
      return { pose, settled, moved, stands, over, slope: 0, at, height: heightAt(at) };
    const line = lineUnder(under, load, short);
    if (line === undefined) return undefined;
    // The blade turns about the step while it takes up the slope: what counts is left there.
    const left = line.a + line.b * step.at;
    const height = heightAt(m + load);
    return { pose, settled, moved, stands, over: left, slope: line.b, at, height };
  };

  /** What a radian of tilt did last: to the edge, as a share of its height, and to the blade's place. */
  let effect = { edge: 1, y: 0, z: 0 };

  return (m) => {
    const [from, to] = [Math.max(m - half, us[0] ?? 0), Math.min(m + half, shape.length)];
    const load = (from + to) / 2 - m;
    let [lo, hi] = [radians(TILT.least), radians(TILT.most)];
    let { tilt, settled: guess } = trail.before(m);
    let last: { readonly look: Look; readonly by: number } | undefined;
    for (let i = 0; i < LOOKS; i += 1) {
      const now = look(
        { m, load, tilt, setoff, yaw: guess.yaw, rounds: i < QUICK ? 1 : FULL },
        guess,
      );
      if (now === undefined) return undefined;
      guess = now.settled;
      const still = now.moved < SETTLED * 10;
      if (still && Math.abs(now.over) < CLOSE && Math.abs(now.slope) < CLOSE) {
        trail.add({ m, tilt, settled: guess });
        return { pose: now.pose, stoppedAt: now.at, stands: now.stands };
      }
      if (still && !narrow) {
        if (now.over > 0) lo = tilt;
        else hi = tilt;
        if (hi - lo < 1e-13) return { pose: now.pose, stoppedAt: now.at, stands: now.stands };
      }
      if (last && Math.abs(last.by) > TELLS) effect = effectOf(last.look, now, last.by) ?? effect;
      // Under a round edge yaw and tilt answer one another: the later looks go part of the way.
      const whole = i < WHOLE;
      const part = narrow && !whole ? PART : 1;
      const lever = now.height * (whole ? effect.edge : 1);
      const next = tilt + Math.min(Math.max((part * now.over) / lever, -STRIDE), STRIDE);
      const kept = next > lo && next < hi ? next : (lo + hi) / 2;
      const by = kept - tilt;
      tilt = kept;
      const turn = Math.min(Math.max(part * now.slope, -STRIDE), STRIDE);
      const { pitch, yaw, y, z } = guess;
      const ahead = whole ? by : 0;
      guess = { pitch, yaw: yaw - turn, y: y + ahead * effect.y, z: z + ahead * effect.z };
      last = whole ? { look: now, by } : undefined;
    }
    return undefined;
  };
};
