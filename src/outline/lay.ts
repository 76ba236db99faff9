import { atan, atan2, cos, sin } from '../core/trigonometry.ts';
import { degrees, radians } from '../core/units.ts';
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
  /**
   * By how much the drawing is turned from the nearest of its own axes, tip towards the spine,
   * degrees; null: found by the spine, else as it was drawn.
   */
  readonly turn: number | null;
}

/** What a person decides before anything was decided. */
export const undecided = (length: number): OutlineChoice => ({
  length,
  otherEnd: false,
  otherEdge: false,
  plunge: null,
  turn: null,
});

/** A contour laid along the blade: tip at the greatest u, v from the spine towards the edge; mm. */
export interface Laid {
  readonly points: readonly Vec2[];
  /** Index of the tip. */
  readonly tip: number;
  /** u of the plunge. */
  readonly plunge: number;
  /** Whether the plunge is where the edge ends in a step, was given, or is the end. */
  readonly plungeBy: 'step' | 'given' | 'end';
  /** By how much the drawing was turned from the nearest of its own axes, degrees. */
  readonly turn: number;
  /** What told it: a straight spine, the drawing itself, a person; or a curved spine, roughly. */
  readonly turnBy: 'spine' | 'drawing' | 'given' | 'curved';
  /** Whether the outline itself tells which of its sides is the edge. */
  readonly edgeTold: boolean;
  /** Millimetres of a unit of the file. */
  readonly scale: number;
}

const PLACES = 300;
/** How often the spine is made level and the plunge sought again. */
const ROUNDS = 3;
/** Points this near to the end of the blade stand at it, mm. */
const AT_END = 0.1;

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

/** A spine is straight that leaves its line by no more than this share of the stretch looked at. */
const STRAIGHT = 1e-3;
/** A drawing whose own axis is further than this from the spine, degrees, lies there by chance. */
const ALONG = 10;

/** The least-squares line through the spine's half next to the plunge: its slope; whether it is one. */
const spineLine = (points: readonly Vec2[], plunge: number, tip: number) => {
  const list = Array.from({ length: 60 }, (_, i): Vec2 => {
    const u = plunge + ((tip - plunge) * (i + 0.5)) / 120;
    return [u, across(points, u)?.[0] ?? 0];
  });
  const mean = (pick: (p: Vec2) => number): number =>
    list.reduce((sum, p) => sum + pick(p), 0) / list.length;
  const [mu, mv] = [mean((p) => p[0]), mean((p) => p[1])];
  const slope =
    mean((p) => (p[0] - mu) * (p[1] - mv)) /
    Math.max(
      mean((p) => (p[0] - mu) ** 2),
      1e-12,
    );
  const off = Math.max(...list.map(([u, v]) => Math.abs(v - mv - slope * (u - mu))));
  return { slope, straight: off <= (STRAIGHT * (tip - plunge)) / 2 };
};

/** The angle of the nearest axis of the drawing, degrees: a direction modulo a quarter turn. */
const nearestAxis = (angle: number): number => angle - 90 * Math.round(angle / 90);

/** Index of the tip: of all points at the end the one nearest to the edge, which runs on to there. */
const tipOf = (points: readonly Vec2[]): number => {
  const [, end] = extent(points);
  return points.reduce((best, [u, v], i) => {
    const other = points[best];
    const first = other === undefined || other[0] < end - AT_END;
    return u >= end - AT_END && (first || v > other[1]) ? i : best;
  }, 0);
};

/**
 * Lays a contour along the blade: the direction of its two farthest points, then the spine made
 * level from the plunge to the middle of the blade; scaled so that it is `length` mm long. A spine
 * that is curved there tells no direction: a drawing whose own axis is near is then left as it is.
 */
export const lay = (contour: readonly Vec2[], choice: OutlineChoice): Laid => {
  const along = longest(contour);
  const { points: facing, told, mirrored } = faced(rotated(contour, along), choice);
  const axis = nearestAxis(degrees(mirrored ? along : -along));
  let by: Laid['turnBy'] = choice.turn === null ? 'spine' : 'given';
  let turn = choice.turn ?? -axis;
  for (let round = 0; ; round += 1) {
    const raw = rotated(facing, radians(axis + turn));
    const [low, high] = extent(raw);
    const scale = choice.length / (high - low);
    const points = raw.map(([u, v]): Vec2 => [(u - high) * scale, v * scale]);
    const step = choice.plunge === null ? stepOf(points, -choice.length, 0) : null;
    const plunge = choice.plunge !== null ? -choice.plunge : (step ?? -choice.length);
    if (by !== 'spine' || round === ROUNDS) {
      const plungeBy = choice.plunge !== null ? 'given' : step === null ? 'end' : 'step';
      const tip = tipOf(points);
      return { points, tip, plunge, plungeBy, turn, turnBy: by, edgeTold: told, scale };
    }
    const { slope, straight } = spineLine(points, plunge, 0);
    turn += degrees(atan(slope));
    if (round === ROUNDS - 1 && !straight)
      [by, turn] = Math.abs(turn) <= ALONG ? ['drawing', 0] : ['curved', turn];
  }
};

/** How long a contour is along the blade, in its own units: what `lay` scales to a known length. */
export const lengthAlong = (contour: readonly Vec2[]): number =>
  1 / lay(contour, undecided(1)).scale;
