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

/**
 * Guesses the next pose along a stroke from those that were found: by a parabola through the nearest
 * three, or what there is of them, while they are near, else as the nearest stands. It only saves
 * looks; what is found does not depend on it.
 */
export const trailFrom = (first: Omit<Found, 'm'>) => {
  /** In order of their places. */
  const found: Found[] = [];
  /** Index of the first pose found beyond m. */
  const after = (m: number): number => {
    let [lo, hi] = [0, found.length];
    while (lo < hi) {
      const middle = (lo + hi) >> 1;
      if ((found[middle] as Found).m <= m) lo = middle + 1;
      else hi = middle;
    }
    return lo;
  };
  const before = (m: number): Omit<Found, 'm'> => {
    const away = (k: number): number => Math.abs((found[k]?.m ?? Infinity) - m);
    const right = after(m);
    let [from, to] = [right, right];
    while (to - from < 3) {
      const next = away(from - 1) <= away(to) ? from - 1 : to;
      if (away(next) > 3 * AHEAD) break;
      if (next < from) from = next;
      else to = next + 1;
    }
    const nearest = away(right - 1) <= away(right) ? found[right - 1] : found[right];
    const known = found.slice(from, to);
    if (nearest === undefined || known.length === 0) return nearest ?? first;
    if (known.some(({ m: at }, k) => k > 0 && at - (known[k - 1]?.m ?? at) > AHEAD)) return nearest;
    const weights = weightsAt(
      m,
      known.map(({ m: at }) => at),
    );
    const at = (value: (pose: Found) => number): number =>
      known.reduce((sum, pose, k) => sum + (weights[k] ?? 0) * value(pose), 0);
    return {
      tilt: at(({ tilt }) => tilt),
      settled: {
        pitch: at(({ settled }) => settled.pitch),
        yaw: at(({ settled }) => settled.yaw),
        y: at(({ settled }) => settled.y),
        z: at(({ settled }) => settled.z),
      },
    };
  };
  const add = (pose: Found): void => {
    found.splice(after(pose.m), 0, pose);
  };
  return { before, add };
};
