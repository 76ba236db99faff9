/** A line a + b x. */
export interface Line {
  readonly a: number;
  readonly b: number;
}

/** Points in order of x, more or less: `count` of them in reused arrays. */
export interface Points {
  count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

export const pointsFor = (capacity: number): Points => ({
  count: 0,
  x: new Float64Array(capacity),
  y: new Float64Array(capacity),
});

export const addPoint = (points: Points, x: number, y: number): void => {
  points.x[points.count] = x;
  points.y[points.count] = y;
  points.count += 1;
};

/** Slope of the hull from corner i to the next. */
const slopeFrom = ({ x, y }: Points, i: number): number =>
  ((y[i + 1] ?? 0) - (y[i] ?? 0)) / ((x[i + 1] ?? 0) - (x[i] ?? 0));

/**
 * Slope of the curve at corner i of the hull, where it is met from a short side: halfway between the
 * short sides that meet there; that of a long one, which is straight.
 */
const slopeAt = (hull: Points, i: number, top: number, short: number): number => {
  const length = (k: number): number => (hull.x[k + 1] ?? 0) - (hull.x[k] ?? 0);
  if (i === 0) return slopeFrom(hull, 0);
  if (i === top - 1) return slopeFrom(hull, top - 2);
  const [p, q] = [slopeFrom(hull, i - 1), slopeFrom(hull, i)];
  if (length(i - 1) > short) return p;
  if (length(i) > short) return q;
  return (p * length(i) + q * length(i - 1)) / (length(i - 1) + length(i));
};

/** Keeps the lower hull of the points, as a stack in their own arrays (Andrew's monotone chain). */
const hullOf = ({ x, y, count }: Points): number => {
  let top = 0;
  for (let i = 0; i < count; i += 1) {
    const px = x[i] ?? 0;
    const py = y[i] ?? 0;
    while (top > 1) {
      const ax = x[top - 2] ?? 0;
      const ay = y[top - 2] ?? 0;
      const bx = x[top - 1] ?? 0;
      const by = y[top - 1] ?? 0;
      if ((bx - ax) * (py - ay) - (by - ay) * (px - ax) > FLAT) break;
      top -= 1;
    }
    if (top === 1 && px - (x[0] ?? 0) < 1e-12) {
      if (py >= (y[0] ?? 0)) continue;
      top = 0;
    }
    x[top] = px;
    y[top] = py;
    top += 1;
  }
  return top;
};

/** Corners flatter than this are none: twice the triangle's area, mm^2. */
const FLAT = 1e-12;

/**
 * The line under all points that is highest at `load`: what a straight ledge pressed against them
 * at that place comes to rest on. It runs along the side of the lower hull under the load, or the
 * nearest one where the load lies beside all points; level through a single point.
 *
 * Sides no longer than `short` are pieces of a curve between neighbouring columns: there the line
 * is the tangent of the cubic that joins them smoothly, so that a curved spine rolls over its seat
 * and does not rock from column to column. Undefined without points; the points are used up.
 */
export const lineUnder = (points: Points, load: number, short: number): Line | undefined => {
  const { x, y } = points;
  const top = hullOf(points);
  if (top === 0) return undefined;
  if (top === 1) return { a: y[0] ?? 0, b: 0 };
  let right = 1;
  while (right < top - 1 && (x[right] ?? 0) < load) right += 1;
  const left = right - 1;
  const [ax, ay, bx, by] = [x[left] ?? 0, y[left] ?? 0, x[right] ?? 0, y[right] ?? 0];
  const chord = (by - ay) / (bx - ax);
  if (bx - ax > short || load <= ax || load >= bx) return { a: ay - chord * ax, b: chord };
  const [p, q] = [slopeAt(points, left, top, short), slopeAt(points, right, top, short)];
  const [t, width] = [(load - ax) / (bx - ax), bx - ax];
  // Cubic Hermite: departure from the chord and slope.
  const [dp, dq] = [(p - chord) * width, (q - chord) * width];
  const value = ay + chord * (load - ax) + t * (1 - t) * ((1 - t) * dp - t * dq);
  const b = chord + ((1 - t) * (1 - 3 * t) * dp + t * (3 * t - 2) * dq) / width;
  return { a: value - b * load, b };
};
