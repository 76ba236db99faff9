/** A curve v(u) of the outline: value, slope dv/du, and the places where its curvature jumps. */
export interface Curve {
  readonly value: (u: number) => number;
  readonly slope: (u: number) => number;
  readonly breaks: readonly number[];
}

/** A straight line through (u0, v0) with the slope dv/du. */
export const line = (u0: number, v0: number, slope: number): Curve => ({
  value: (u) => v0 + slope * (u - u0),
  slope: () => slope,
  breaks: [],
});

/**
 * The circular arc that leaves (u0, v0) with slope `m` and passes through (u1, v1); a straight
 * line where the two agree. Its radius is c^2 / (2 d.n), with chord d of length c and n the
 * normal at the start (tangent-chord theorem). The arc must not turn beyond the vertical.
 */
export const tangentArc = (u0: number, v0: number, m: number, u1: number, v1: number): Curve => {
  const norm = Math.hypot(1, m);
  const [du, dv] = [u1 - u0, v1 - v0];
  const rise = (dv - m * du) / norm;
  if (Math.abs(rise) < 1e-9) return line(u0, v0, m);
  const radius = (du * du + dv * dv) / (2 * rise);
  const cu = u0 - (m / norm) * radius;
  const cv = v0 + radius / norm;
  const below = (u: number): number =>
    Math.sign(radius) * Math.sqrt(Math.max(radius * radius - (u - cu) ** 2, 0));
  return {
    value: (u) => cv - below(u),
    slope: (u) => (u - cu) / below(u),
    breaks: [],
  };
};

/**
 * The arc over the chord from (0, 0) to (length, 0) with a signed sagitta, + towards -v:
 * r = c^2 / (8 h) + h / 2 (circular segment).
 */
export const sagittaArc = (length: number, sagitta: number): Curve => {
  if (Math.abs(sagitta) < 1e-9) return line(0, 0, 0);
  const radius = length ** 2 / (8 * sagitta) + sagitta / 2;
  const rootAt = (u: number): number =>
    Math.sign(radius) * Math.sqrt(radius * radius - (u - length / 2) ** 2);
  return {
    value: (u) => radius - sagitta - rootAt(u),
    slope: (u) => (u - length / 2) / rootAt(u),
    breaks: [],
  };
};

/** `first` up to `at`, `second` from there on. */
export const joined = (first: Curve, at: number, second: Curve): Curve => ({
  value: (u) => (u <= at ? first : second).value(u),
  slope: (u) => (u <= at ? first : second).slope(u),
  breaks: [...first.breaks.filter((u) => u < at), at, ...second.breaks.filter((u) => u > at)],
});

export const sum = (a: Curve, b: Curve): Curve => ({
  value: (u) => a.value(u) + b.value(u),
  slope: (u) => a.slope(u) + b.slope(u),
  breaks: [...new Set([...a.breaks, ...b.breaks])].sort((p, q) => p - q),
});

/** Runs on straight, along the end tangents, beyond `from` and `to`. */
export const extended = (curve: Curve, from: number, to: number): Curve =>
  joined(
    line(from, curve.value(from), curve.slope(from)),
    from,
    joined(curve, to, line(to, curve.value(to), curve.slope(to))),
  );
