import type { Shape } from '../../blade/shape.ts';
import { radians } from '../../core/units.ts';
import { shortOf, type Field } from '../field.ts';
import { pointsFor } from '../hull.ts';
import type { Surface } from '../surface.ts';
import type { Faces, Hold, Reached } from './hold.ts';
import { lookAt, type Look, type Looking } from './spine-look.ts';
import { SETTLED, spineSettler, type SpineRestBody } from './spine-settle.ts';
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

/** What a radian of tilt did: to the edge, as a share of its height, and to the blade's place. */
interface Effect {
  readonly edge: number;
  readonly y: number;
  readonly z: number;
}

/** What a change of tilt did between two looks; nothing to learn where it did something else. */
const effectOf = (was: Look, now: Look, by: number): Effect | undefined => {
  const edge = (was.over - now.over) / (by * now.height);
  if (!(Math.abs(edge - 1) < BELIEVED)) return undefined;
  const rate = (from: number, to: number): number => (to - from) / by;
  return {
    edge,
    y: rate(was.settled.y, now.settled.y),
    z: rate(was.settled.z, now.settled.z),
  };
};

/** A maker who leans the blade in: what was found so far, and what the last change of tilt did. */
interface Leaning {
  readonly trail: ReturnType<typeof trailFrom>;
  effect: Effect;
}

/** Leans the blade in with place m before the belt's middle, until its edge is down to the stop. */
const leanIn = (
  looking: Looking,
  leaning: Leaning,
  setoff: number,
  m: number,
): Reached | undefined => {
  const { field, shape, step, beltWidth } = looking;
  const half = beltWidth / 2;
  const narrow = step.kind === 'narrow';
  const [from, to] = [Math.max(m - half, field.us[0] ?? 0), Math.min(m + half, shape.length)];
  const load = (from + to) / 2 - m;
  let [lo, hi] = [radians(TILT.least), radians(TILT.most)];
  let { tilt, settled: guess } = leaning.trail.before(m);
  let last: { readonly look: Look; readonly by: number } | undefined;
  for (let i = 0; i < LOOKS; i += 1) {
    const now = lookAt(
      looking,
      { m, load, tilt, setoff, yaw: guess.yaw, rounds: i < QUICK ? 1 : FULL },
      guess,
    );
    if (now === undefined) return undefined;
    guess = now.settled;
    const still = now.moved < SETTLED * 10;
    if (still && Math.abs(now.over) < CLOSE && Math.abs(now.slope) < CLOSE) {
      leaning.trail.add({ m, tilt, settled: guess });
      return { pose: now.pose, stoppedAt: now.at, stands: now.stands };
    }
    if (still && !narrow) {
      if (now.over > 0) lo = tilt;
      else hi = tilt;
      if (hi - lo < 1e-13) return { pose: now.pose, stoppedAt: now.at, stands: now.stands };
    }
    if (last && Math.abs(last.by) > TELLS)
      leaning.effect = effectOf(last.look, now, last.by) ?? leaning.effect;
    const { effect } = leaning;
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

/**
 * A spine rest with a maker who leans the blade in until the edge under the belt is down to the
 * stop. The maker keeps the spine on nose and step, pushes opposite the middle of the metal that is
 * on the belt, and stops at the first place anywhere under the belt whose edge is down to its
 * thickness. A wide step squares the blade; at a narrow one it beds on the belt, so that its edge
 * reaches the stop on both sides of the push.
 */
export const spineHold = (given: SpineHold): Hold => {
  const { field, shape, body, setoff, surface, beltWidth, stop, strip } = given;
  const looking: Looking = {
    ...{ field, shape, surface, beltWidth, stop },
    step: body.step,
    settle: spineSettler(field, given.faces, shape, body, strip),
    short: shortOf(field),
    highest: field.v.reduce((most, at) => Math.max(most, at), 0),
    under: pointsFor(field.us.length + 4),
  };
  const leaning: Leaning = {
    trail: trailFrom({
      tilt: radians(FIRST_TILT + surface.lean),
      settled: { pitch: 0, yaw: 0, y: setoff - shape.thickness.value(0) / 2, z: 0 },
    }),
    effect: { edge: 1, y: 0, z: 0 },
  };
  return (m) => leanIn(looking, leaning, setoff, m);
};
