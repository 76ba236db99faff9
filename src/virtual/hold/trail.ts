import type { Settled } from './spine-settle.ts';

/** A pose found at place m. */
export interface Found {
  readonly m: number;
  readonly tilt: number;
  readonly settled: Settled;
}

/** Farthest apart that places guess for one another, mm. */
const AHEAD = 5;

/** Weights by which the values at places make that of the parabola (or line) through them at m. */
const weightsAt = (m: number, places: readonly number[]): number[] =>
  places.map((own) =>
    places.reduce((weight, at) => (at === own ? weight : (weight * (m - at)) / (own - at)), 1),
  );

/** Index of the first pose beyond m among poses in order of their places. */
const after = (found: readonly Found[], m: number): number => {
  let [lo, hi] = [0, found.length];
  while (lo < hi) {
    const middle = (lo + hi) >> 1;
    if ((found[middle] as Found).m <= m) lo = middle + 1;
    else hi = middle;
  }
  return lo;
};

const away = (found: readonly Found[], k: number, m: number): number =>
  Math.abs((found[k]?.m ?? Infinity) - m);

const guessAt = (found: readonly Found[], m: number): Omit<Found, 'm'> | undefined => {
  const right = after(found, m);
  let [from, to] = [right, right];
  while (to - from < 3) {
    const next = away(found, from - 1, m) <= away(found, to, m) ? from - 1 : to;
    if (away(found, next, m) > 3 * AHEAD) break;
    if (next < from) from = next;
    else to = next + 1;
  }
  const nearest = found[away(found, right - 1, m) <= away(found, right, m) ? right - 1 : right];
  const known = found.slice(from, to);
  if (nearest === undefined || known.length === 0) return nearest;
  if (known.some(({ m: at }, k) => k > 0 && at - (known[k - 1]?.m ?? at) > AHEAD)) return nearest;
  const weights = weightsAt(
    m,
    known.map(({ m: at }) => at),
  );
  const [guess, settled] = [{ tilt: 0 }, { pitch: 0, yaw: 0, y: 0, z: 0 }];
  known.forEach((pose, k) => {
    const weight = weights[k] ?? 0;
    guess.tilt += weight * pose.tilt;
    settled.pitch += weight * pose.settled.pitch;
    settled.yaw += weight * pose.settled.yaw;
    settled.y += weight * pose.settled.y;
    settled.z += weight * pose.settled.z;
  });
  return { ...guess, settled };
};

/**
 * Guesses the next pose along a stroke from those that were found: by a parabola through the nearest
 * three, or what there is of them, while they are near, else as the nearest stands. It only saves
 * looks; what is found does not depend on it.
 */
export const trailFrom = (first: Omit<Found, 'm'>) => {
  /** In order of their places. */
  const found: Found[] = [];
  const before = (m: number): Omit<Found, 'm'> => guessAt(found, m) ?? first;
  const add = (pose: Found): void => {
    found.splice(after(found, pose.m), 0, pose);
  };
  return { before, add };
};
