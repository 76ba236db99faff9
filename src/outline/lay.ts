import { atan, atan2, cos, sin } from '../core/trigonometry.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { across, extent } from './extent.ts';
import { faced } from './face.ts';

/** What a person decides about an outline; what is left out is found. */
export interface OutlineChoice {
  /** From the tip to the far end of the outline along the blade, mm: the known length. */
  readonly length: number;
  /** The tip is at the other end than the one found. */
  readonly otherEnd: boolean;
  /** Edge and spine are the other way round than found. */
  readonly otherEdge: boolean;
  /** From the tip back to the plunge, mm; null: where the edge ends in a step, else the whole. */
  readonly plunge: number | null;
}

/** A contour laid along the blade: tip at the greatest u, v from the spine towards the edge; mm. */
export interface Laid {
  readonly points: readonly Vec2[];
  /** Index of the tip. */
  readonly tip: number;
  /** u of the plunge. */
  readonly plunge: number;
  /** Whether the plunge is where the edge ends in a step, was given, or is the end. */
  readonly plungeBy: 'step' | 'given' | 'end';
  /** Whether the outline itself tells which of its sides is the edge. */
  readonly edgeTold: boolean;
  /** Millimetres of a unit of the file. */
  readonly scale: number;
}

const PLACES = 300;

const rotated = (points: readonly Vec2[], angle: number): Vec2[] => {
  const [c, s] = [cos(angle), sin(angle)];
  return points.map(([x, y]): Vec2 => [x * c + y * s, y * c - x * s]);
};

/** Convex hull by monotone chains (A. M. Andrew, 1979). */
const hull = (points: readonly Vec2[]): Vec2[] => {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Vec2[]): Vec2[] =>
    list.reduce<Vec2[]>((chain, p) => {
      for (;;) {
        const [b, a] = [chain.at(-1), chain.at(-2)];
        if (!a || !b) break;
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        chain.pop();
      }
      chain.push(p);
      return chain;
    }, []);
  return [...half(sorted).slice(0, -1), ...half(sorted.toReversed()).slice(0, -1)];
};

/** Direction of the two points farthest apart, radians. */
const longest = (points: readonly Vec2[]): number => {
  const corners = hull(points);
  let best = { length: -1, angle: 0 };
  for (const a of corners)
    for (const b of corners) {
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (length > best.length) best = { length, angle: atan2(b[1] - a[1], b[0] - a[0]) };
    }
  return best.angle;
};

/** Share of the greatest width by which the edge steps at a heel. */
const STEP = 0.12;

/** u of the step in which the edge ends towards the tang; null where there is none. */
const stepOf = (points: readonly Vec2[], low: number, high: number): number | null => {
  const at = (i: number): number => low + ((high - low) * (i + 0.5)) / PLACES;
  const edge = (u: number): number => across(points, u)?.[1] ?? -Infinity;
  const profile = Array.from({ length: PLACES }, (_, i) => edge(at(i)));
  const widths = Array.from({ length: PLACES }, (_, i) => {
    const [a, b] = across(points, at(i)) ?? [0, 0];
    return b - a;
  });
  const widest = Math.max(...widths);
  let best = { rise: STEP * widest, at: -1 };
  for (let i = 3; i < PLACES * 0.75; i += 1) {
    const rise = (profile[i] ?? 0) - (profile[i - 2] ?? 0);
    if (rise > best.rise) best = { rise, at: i };
  }
  if (best.at < 0) return null;
  // The foot of the step is where the edge has come back to its height.
  let [out, into] = [at(best.at - 2), at(best.at)];
  const level = (profile[best.at] ?? 0) - 0.1 * best.rise;
  for (let i = 0; i < 40; i += 1) {
    const middle = (out + into) / 2;
    if (edge(middle) >= level) into = middle;
    else out = middle;
  }
  return into;
};

/** Slope of the least-squares line through the spine's half next to the plunge. */
const spineSlope = (points: readonly Vec2[], plunge: number, tip: number): number => {
  const list = Array.from({ length: 60 }, (_, i): Vec2 => {
    const u = plunge + ((tip - plunge) * (i + 0.5)) / 120;
    return [u, across(points, u)?.[0] ?? 0];
  });
  const mean = (pick: (p: Vec2) => number): number =>
    list.reduce((sum, p) => sum + pick(p), 0) / list.length;
  const [mu, mv] = [mean((p) => p[0]), mean((p) => p[1])];
  return (
    mean((p) => (p[0] - mu) * (p[1] - mv)) /
    Math.max(
      mean((p) => (p[0] - mu) ** 2),
      1e-12,
    )
  );
};

/**
 * Lays a contour along the blade: the direction of its two farthest points, then the spine made
 * level from the plunge to the middle of the blade; scaled so that it is `length` mm long.
 */
export const lay = (contour: readonly Vec2[], choice: OutlineChoice): Laid => {
  const { points: facing, told } = faced(rotated(contour, longest(contour)), choice);
  let points = facing;
  let scale = 1;
  let plunge = 0;
  let by: Laid['plungeBy'] = 'end';
  for (let round = 0; round < 4; round += 1) {
    const [low, high] = extent(points);
    scale *= choice.length / (high - low);
    const k = choice.length / (high - low);
    points = points.map(([u, v]): Vec2 => [(u - high) * k, v * k]);
    const step = choice.plunge === null ? stepOf(points, -choice.length, 0) : null;
    by = choice.plunge !== null ? 'given' : step === null ? 'end' : 'step';
    plunge = choice.plunge !== null ? -choice.plunge : (step ?? -choice.length);
    if (round < 3) points = rotated(points, atan(spineSlope(points, plunge, 0)));
  }
  const tip = points.reduce(
    (best, p, i) => (p[0] > (points[best]?.[0] ?? -Infinity) ? i : best),
    0,
  );
  return { points, tip, plunge, plungeBy: by, edgeTold: told, scale };
};

/** How long a contour is along the blade, in its own units: what `lay` scales to a known length. */
export const lengthAlong = (contour: readonly Vec2[]): number =>
  1 / lay(contour, { length: 1, otherEnd: false, otherEdge: false, plunge: null }).scale;
