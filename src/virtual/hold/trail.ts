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
 * Guesses the next pose along a stroke from those that were found: straight on from the last two
 * while they are near, else the nearest. It only saves looks; what is found does not depend on it.
 */
export const trailFrom = (first: Omit<Found, 'm'>) => {
  const found: Found[] = [];
  const nearest = (m: number): Omit<Found, 'm'> => {
    let [best, away] = [first, Infinity];
    for (const pose of found) {
      const far = Math.abs(pose.m - m);
      if (far < away) [best, away] = [pose, far];
    }
    return best;
  };
  const before = (m: number): Omit<Found, 'm'> => {
    const [older, last] = [found.at(-2), found.at(-1)];
    if (older === undefined || last === undefined) return last ?? first;
    const span = last.m - older.m;
    const ahead = m - last.m;
    if (span === 0 || Math.abs(ahead) > AHEAD || Math.abs(span) > AHEAD) return nearest(m);
    const k = ahead / span;
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
  const add = (pose: Found): void => {
    found.push(pose);
  };
  return { before, add };
};
