/** A line a + b x, mm and mm/mm. */
export interface Line {
  readonly a: number;
  readonly b: number;
}

const STEPS = 10_000;

/** `lineBelow` of the points (x, sign * y). */
const lineUnder = (
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  load: number,
  sign: 1 | -1,
): Line | undefined => {
  const { length } = xs;
  const height = (i: number): number => sign * (ys[i] as number);
  if (length === 0) return undefined;
  let at = 0;
  for (let i = 1; i < length; i += 1) if (height(i) < height(at)) at = i;
  let [x, y] = [xs[at] as number, height(at)];
  const way = x <= load ? 1 : -1;
  let line: Line = { a: y, b: 0 };
  for (let step = 0; step < STEPS; step += 1) {
    // The next hull point is the one seen at the flattest rise; of several in line, the farthest.
    let [bestX, bestY, bestRise] = [x, y, Infinity];
    for (let i = 0; i < length; i += 1) {
      const run = way * ((xs[i] as number) - x);
      if (run <= 1e-9) continue;
      const rise = (height(i) - y) / run;
      if (rise < bestRise - 1e-15 || (rise <= bestRise && run > way * (bestX - x))) {
        bestX = xs[i] as number;
        bestY = height(i);
        bestRise = rise;
      }
    }
    if (bestRise === Infinity) return line;
    const b = way * bestRise;
    line = { a: y - b * x, b };
    if (way * (bestX - load) >= 0) return line;
    [x, y] = [bestX, bestY];
  }
  return line;
};

/**
 * The line under all points (xs, ys) that is highest at x = `load`, where the load acts: what a
 * straight ledge below them comes to rest on. Found by wrapping round the lower hull from the
 * lowest point towards the load: it passes through the hull's edge under the load, or the hull's
 * nearest edge where the load lies beside all points; level through a single point. None for no
 * points.
 */
export const lineBelow = (
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  load: number,
): Line | undefined => lineUnder(xs, ys, load, 1);

/** The line above all points that is lowest at x = `load`. */
export const lineAbove = (
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  load: number,
): Line | undefined => {
  const line = lineUnder(xs, ys, load, -1);
  return line ? { a: -line.a, b: -line.b } : undefined;
};
