/** Half width, in the unknown's own unit, at which a bracket counts as the root. */
const CLOSE = 1e-14;

/**
 * Root of a continuous function whose values at `lo` and `hi` have opposite signs (either may be
 * zero), by Chandrupatla's method: inverse quadratic interpolation where it is trustworthy and
 * bisection elsewhere, so that it always ends and never leaves the bracket. `ends`: its values there,
 * where they are known.
 *
 * Source: T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145-149, from memory.
 */
export const root = (
  f: (x: number) => number,
  lo: number,
  hi: number,
  ends: readonly [atLo: number, atHi: number] = [f(lo), f(hi)],
): number => {
  // a is the newest point, b brackets the root with it.
  let [a, b] = [lo, hi];
  let [fa, fb] = ends;
  let t = 0.5;
  for (let i = 0; i < 100 && fa !== 0 && fb !== 0; i += 1) {
    const x = a + t * (b - a);
    const fx = f(x);
    const same = fx > 0 === fa > 0;
    const [c, fc] = same ? [a, fa] : [b, fb];
    if (!same) [b, fb] = [a, fa];
    [a, fa] = [x, fx];
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const least = (2 * Number.EPSILON * Math.abs(best) + CLOSE) / Math.abs(b - a);
    if (least > 0.5) break;
    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    const trusted = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
    const quadratic =
      (fa / (fb - fa)) * (fc / (fb - fc)) +
      ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
    t = Math.min(1 - least, Math.max(least, trusted ? quadratic : 0.5));
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
};
