/** A line a + b x, mm and mm/mm. */
export interface Line {
  readonly a: number;
  readonly b: number;
}

const STEPS = 10_000;

/**
 * The line under all points (xs, ys) that is highest at x = `load`, where the load acts: what a
 * straight ledge below them comes to rest on. Found by wrapping round the lower hull from the
 * lowest point towards the load: it passes through the hull's edge under the load, or the hull's
 * nearest edge where the load lies beside all points; level through a single point. None for no
 * points.
 */
export const lineBelow = (
  xs: readonly number[],
  ys: readonly number[],
  load: number,
): Line | undefined => {
  let at = 0;
  for (let i = 1; i < xs.length; i += 1) if ((ys[i] ?? 0) < (ys[at] ?? 0)) at = i;
  const [x0, y0] = [xs[at], ys[at]];
  if (x0 === undefined || y0 === undefined) return undefined;
  const way = x0 <= load ? 1 : -1;
  let [x, y] = [x0, y0];
  let line: Line = { a: y, b: 0 };
  for (let step = 0; step < STEPS; step += 1) {
    // The next hull point is the one seen at the flattest rise; of several in line, the farthest.
    let [bestX, bestY, bestRise] = [x, y, Infinity];
    for (let i = 0; i < xs.length; i += 1) {
      const run = way * ((xs[i] ?? 0) - x);
      if (run <= 1e-9) continue;
      const rise = ((ys[i] ?? 0) - y) / run;
      if (rise < bestRise - 1e-15 || (rise <= bestRise && run > way * (bestX - x))) {
        [bestX, bestY, bestRise] = [xs[i] ?? 0, ys[i] ?? 0, rise];
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

/** The line above all points that is lowest at x = `load`. */
export const lineAbove = (
  xs: readonly number[],
  ys: readonly number[],
  load: number,
): Line | undefined => {
  const line = lineBelow(
    xs,
    ys.map((y) => -y),
    load,
  );
  return line ? { a: -line.a, b: -line.b } : undefined;
};
