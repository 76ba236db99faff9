/** A stroke: how far the blade moves past a belt of `width`, mm along the blade. */
export interface Stroke {
  readonly width: number;
  /** Least and greatest place at the belt's middle. */
  readonly from: number;
  readonly to: number;
}

/** A place along a blade and the angle at which its own face would be reached, degrees. */
export interface LocalAngle {
  readonly u: number;
  readonly angle: number;
}

/**
 * The stroke of a blade: the belt's heel-side edge stops `plungeStop` short of the plunge, and at
 * the other end `tipOverlap` of blade stays on the belt. A blade shorter than that keeps its
 * plunge at the stop.
 */
export const strokeOf = (
  width: number,
  length: number,
  plungeStop: number,
  tipOverlap: number,
): Stroke => {
  const from = plungeStop + width / 2;
  return { width, from, to: Math.max(from, length - tipOverlap + width / 2) };
};

/** The least angle under the belt while `middle` is at its middle: where the blade stops leaning. */
export const leastUnderBelt = (
  places: readonly LocalAngle[],
  { width }: Stroke,
  middle: number,
): number => {
  let least = Infinity;
  for (const { u, angle } of places)
    if (Math.abs(u - middle) <= width / 2 + 1e-9 && angle < least) least = angle;
  return least;
};

/** Places that are under the belt together, by their first and last index. */
export type Window = readonly [first: number, last: number];

/**
 * Every set of places (ascending) that a stroke can bring under the belt together. The places under
 * the belt change only where an edge of the belt passes one, so the stroke is looked at where that
 * happens, at its ends, and halfway between neighbours: exact for the places given.
 */
export const windowsOf = (us: readonly number[], stroke: Stroke): Window[] => {
  const half = stroke.width / 2;
  const events = [stroke.from, stroke.to, ...us.flatMap((u) => [u - half, u + half])]
    .filter((middle) => middle >= stroke.from - 1e-9 && middle <= stroke.to + 1e-9)
    .sort((p, q) => p - q);
  const middles = events.flatMap((middle, i) => [middle, (middle + (events[i + 1] ?? middle)) / 2]);
  const windows: Window[] = [];
  let [first, next] = [0, 0];
  for (const middle of middles) {
    while (first < us.length && middle - (us[first] ?? 0) > half + 1e-9) first += 1;
    while (next < us.length && (us[next] ?? 0) - middle <= half + 1e-9) next += 1;
    const last = windows.at(-1);
    if (next > first && (first !== last?.[0] || next - 1 !== last[1]))
      windows.push([first, next - 1]);
  }
  return windows;
};

/**
 * The angle the belt really reaches at each place, degrees, from the angles of the places' own
 * faces. One tilt serves the whole width of the belt, and the blade leans until the first place
 * under it touches: the one of least angle. So a place reaches its own face only if it has the
 * least angle in some window; else it is left at the greatest of the windows' least angles.
 * -Infinity where no window comes.
 */
export const reachedAngles = (angles: readonly number[], windows: readonly Window[]): number[] => {
  const reached = angles.map(() => -Infinity);
  for (const [first, last] of windows) {
    let least = Infinity;
    for (let i = first; i <= last; i += 1) {
      const own = angles[i] as number;
      if (own < least) least = own;
    }
    for (let i = first; i <= last; i += 1) if ((reached[i] as number) < least) reached[i] = least;
  }
  return reached;
};
