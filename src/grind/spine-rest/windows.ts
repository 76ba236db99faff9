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

/**
 * The angle the belt really reaches at each place, degrees. One tilt serves the whole width of the
 * belt, and the blade leans until the first place under it touches: the one of least angle. So a
 * place reaches its own face only if it has the least angle in some window the stroke can bring to
 * the belt; else it is left at the greatest of the windows' least angles. -Infinity where no
 * window comes.
 *
 * The places under the belt change only where an edge of the belt passes one, so the stroke is
 * tried at all those events, at its ends, and halfway between neighbours: exact for the places
 * given.
 */
export const reachedAngles = (places: readonly LocalAngle[], stroke: Stroke): number[] => {
  const half = stroke.width / 2;
  const events = [stroke.from, stroke.to, ...places.flatMap(({ u }) => [u - half, u + half])]
    .filter((middle) => middle >= stroke.from - 1e-9 && middle <= stroke.to + 1e-9)
    .sort((p, q) => p - q);
  const middles = events
    .flatMap((middle, i) => [middle, (middle + (events[i + 1] ?? middle)) / 2])
    .map((middle) => ({ middle, least: leastUnderBelt(places, stroke, middle) }));
  return places.map(({ u, angle }) => {
    let best = -Infinity;
    for (const { middle, least } of middles)
      if (Math.abs(u - middle) <= half + 1e-9 && least > best) best = least;
    return Math.min(best, angle);
  });
};
