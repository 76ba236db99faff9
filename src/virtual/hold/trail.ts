import type { Settled } from './spine-settle.ts';

/** A pose found at place m. */
export interface Found {
  readonly m: number;
  readonly tilt: number;
  readonly settled: Settled;
}

/** Farthest a pose is guessed ahead of the last one found, mm. */
const AHEAD = 5;

/**
 * Guesses the next pose along a stroke from the last two that were found: straight on while they
 * are near, else the last one. It only saves looks; what is found does not depend on it.
 */
export const trailFrom = (first: Omit<Found, 'm'>) => {
  let [older, last]: (Found | undefined)[] = [];
  const before = (m: number): Omit<Found, 'm'> => {
    if (last === undefined) return first;
    const span = older === undefined ? 0 : last.m - older.m;
    if (older === undefined || span === 0 || Math.abs(m - last.m) > AHEAD || Math.abs(span) > AHEAD)
      return last;
    const k = (m - last.m) / span;
    const on = (p: number, q: number): number => q + k * (q - p);
    const [a, b] = [older.settled, last.settled];
    return {
      tilt: on(older.tilt, last.tilt),
      settled: {
        pitch: on(a.pitch, b.pitch),
        yaw: on(a.yaw, b.yaw),
        y: on(a.y, b.y),
        z: on(a.z, b.z),
      },
    };
  };
  const add = (found: Found): void => {
    older = last;
    last = found;
  };
  return { before, add };
};
