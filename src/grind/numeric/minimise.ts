const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Where a function has its least value on an interval: the best of `scan` + 1 even samples, then
 * golden-section search between that sample's neighbours. Robust for functions with kinks (a
 * greatest deviation) and, up to the width of the scan, for several valleys. The answer is within
 * `close` of a local minimum.
 */
export const minimise = (
  f: (x: number) => number,
  lo: number,
  hi: number,
  close: number,
  scan = 24,
): number => {
  const step = (hi - lo) / scan;
  let best = lo;
  let least = Infinity;
  for (let i = 0; i <= scan; i += 1) {
    const value = f(lo + i * step);
    if (value < least) [best, least] = [lo + i * step, value];
  }
  let [a, b] = [Math.max(lo, best - step), Math.min(hi, best + step)];
  let [x, y] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
  let [fx, fy] = [f(x), f(y)];
  while (b - a > close) {
    if (fx <= fy) {
      [b, y, fy] = [y, x, fx];
      x = b - GOLDEN * (b - a);
      fx = f(x);
    } else {
      [a, x, fx] = [x, y, fy];
      y = a + GOLDEN * (b - a);
      fy = f(y);
    }
  }
  return fx <= fy ? x : y;
};
