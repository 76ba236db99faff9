/** A line a + b x, mm and mm/mm. */
export interface Line {
  readonly a: number;
  readonly b: number;
}

const STEPS = 10_000;

/** A point so little below a line lies on it, mm. */
const ON = 1e-13;

/**
 * A corner of the lower hull before the load, from which the hull's next side runs under it. `from`
 * and `past` lie before and beyond it; as long as points lie below the line through both, the
 * deepest takes the place of the one on its side, so that the line falls at the load each time. The
 * hull of a curve is wrapped from there in one step, not in one for each of its corners.
 */
const cornerBefore = (
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  load: number,
  sign: 1 | -1,
  from: number,
  past: number,
): number => {
  const way = (xs[from] as number) < load ? 1 : -1;
  let [p, q] = [from, past];
  for (let step = 0; step < STEPS; step += 1) {
    const [x, y] = [xs[p] as number, sign * (ys[p] as number)];
    const slope = (sign * (ys[q] as number) - y) / ((xs[q] as number) - x);
    let deepest = -1;
    let depth = ON;
    for (let i = 0; i < xs.length; i += 1) {
      const below = y + slope * ((xs[i] as number) - x) - sign * (ys[i] as number);
      if (below <= depth) continue;
      depth = below;
      deepest = i;
    }
    if (deepest < 0) return p;
    if (way * ((xs[deepest] as number) - load) >= 0) q = deepest;
    else p = deepest;
  }
  return p;
};

/** The lowest point at the load or beyond it in a direction; -1 for none. */
const lowestPast = (
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  load: number,
  sign: 1 | -1,
  way: 1 | -1,
): number => {
  let at = -1;
  for (let i = 0; i < xs.length; i += 1) {
    if (way * ((xs[i] as number) - load) < 0) continue;
    if (at < 0 || sign * (ys[i] as number) < sign * (ys[at] as number)) at = i;
  }
  return at;
};

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
  const way = (xs[at] as number) <= load ? 1 : -1;
  const past = lowestPast(xs, ys, load, sign, way);
  if (past >= 0 && (xs[at] as number) !== load) at = cornerBefore(xs, ys, load, sign, at, past);
  let [x, y] = [xs[at] as number, height(at)];
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
 * straight ledge below them comes to rest on. Found by wrapping round the lower hull towards the load:
 * it passes through the hull's edge under the load, or the hull's nearest edge where the load lies
 * beside all points; level through a single point. None for no points.
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
