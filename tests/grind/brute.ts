/**
 * Brute-force grinding of one section, sharing nothing with the program: a dense polygon is turned,
 * dropped on a seat, pushed against a step, cut by a line and measured. Coordinates (w, v): w across
 * the blade with the belt on the negative side, v from the spine to the edge.
 */
export type Point = readonly [w: number, v: number];

export const bar = (thickness: number, height: number, r: number, n = 3000): Point[] => {
  const h = thickness / 2;
  const corner = (sharp: Point, middle: number, from: number): Point[] =>
    r === 0
      ? [sharp]
      : Array.from({ length: n + 1 }, (_, i): Point => {
          const a = from + (Math.PI / 2) * (i / n);
          return [middle + r * Math.cos(a), r + r * Math.sin(a)];
        });
  const far = corner([h, 0], h - r, -Math.PI / 2);
  const near = corner([-h, 0], r - h, -Math.PI);
  return [...near, ...far, [h, height], [-h, height]];
};

/** Keeps the points left of the directed line p -> q (Sutherland and Hodgman). */
export const cut = (points: readonly Point[], p: Point, q: Point): Point[] => {
  const side = (x: Point): number => (q[0] - p[0]) * (x[1] - p[1]) - (q[1] - p[1]) * (x[0] - p[0]);
  const out: Point[] = [];
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length] as Point;
    const [sa, sb] = [side(a), side(b)];
    if (sa >= 0) out.push(a);
    if (sa > 0 !== sb > 0 && sa !== sb) {
      const k = sa / (sa - sb);
      out.push([a[0] + k * (b[0] - a[0]), a[1] + k * (b[1] - a[1])]);
    }
  });
  return out;
};

export const mirror = (points: readonly Point[]): Point[] =>
  points.map(([w, v]): Point => [-w, v]).reverse();

const rad = Math.PI / 180;

/** Turns the section (edge up, leaning to the belt), drops it on z = 0, moves it against y = s. */
const stand = (points: readonly Point[], q: number, s: number): { dy: number; dz: number } => {
  let [low, far] = [Infinity, -Infinity];
  for (const [w, v] of points) {
    low = Math.min(low, v * Math.cos(q) + w * Math.sin(q));
    far = Math.max(far, w * Math.cos(q) - v * Math.sin(q));
  }
  return { dy: s - far, dz: -low };
};

/** The belt's face as two section points, for a section standing at tilt q. */
const belt = (dy: number, dz: number, q: number, t: number): [Point, Point] => {
  const back = (y: number, z: number): Point => {
    const [a, b] = [y - dy, z - dz];
    return [a * Math.cos(q) + b * Math.sin(q), -a * Math.sin(q) + b * Math.cos(q)];
  };
  return [back(0, 0), back(-1000 * Math.sin(t), 1000 * Math.cos(t))];
};

export interface Ground {
  readonly points: Point[];
  readonly angle: number;
  readonly bevelHeight: number;
  /** Tilt in degrees and the section's foot in the seat frame. */
  readonly tilt: number;
  readonly dy: number;
  readonly dz: number;
}

/** The section at tilt q, cut by the belt until it no longer sinks. */
const settleAndCut = (points: readonly Point[], q: number, s: number, t: number) => {
  let rest = [...points];
  let { dy, dz } = stand(rest, q, s);
  let line = belt(dy, dz, q, t);
  for (let i = 0; i < 50; i += 1) {
    rest = cut(points, line[1], line[0]);
    const next = stand(rest, q, s);
    if (Math.abs(next.dz - dz) + Math.abs(next.dy - dy) < 1e-13) break;
    ({ dy, dz } = next);
    line = belt(dy, dz, q, t);
  }
  return { rest, line, dy, dz };
};

/**
 * Grinds at one setoff until the edge is `edge` from the midplane on the belt side: bisects the
 * tilt until the belt's line passes there, cuts, and measures the cut.
 */
export const grind = (
  points: readonly Point[],
  height: number,
  s: number,
  edge: number,
  lean: number,
): Ground => {
  const t = lean * rad;
  const edgeAt = (q: number): number => {
    const [p, r] = settleAndCut(points, q, s, t).line;
    return -(p[0] + ((height - p[1]) * (r[0] - p[0])) / (r[1] - p[1]));
  };
  let [lo, hi] = [Math.max(1e-9, t), Math.PI / 3];
  for (let i = 0; i < 70; i += 1) {
    const q = (lo + hi) / 2;
    if (edgeAt(q) > edge) lo = q;
    else hi = q;
  }
  const q = (lo + hi) / 2;
  const { rest, line, dy, dz } = settleAndCut(points, q, s, t);
  const [p, r] = line;
  const length = Math.hypot(r[0] - p[0], r[1] - p[1]);
  const on = rest.filter(
    (x) => Math.abs((r[0] - p[0]) * (x[1] - p[1]) - (r[1] - p[1]) * (x[0] - p[0])) / length < 1e-7,
  );
  const vs = on.map((x) => x[1]);
  const [bottom, top] = [Math.min(...vs), Math.max(...vs)];
  const at = (v: number): number => (on.find((x) => x[1] === v) as Point)[0];
  return {
    points: rest,
    angle: Math.atan2(at(top) - at(bottom), top - bottom) / rad,
    bevelHeight: Math.min(height, height - bottom),
    tilt: q / rad,
    dy,
    dz,
  };
};
