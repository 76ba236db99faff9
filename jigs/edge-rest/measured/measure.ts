import { atan2, degrees, type Side, sub2, type Vec2 } from '../../../src/family/index.ts';
import { distanceTo } from './grind.ts';

/** What depth gauge and calipers would show on one section; mm. */
export interface Gauged {
  readonly depth: number;
  readonly lower: number;
  readonly upper: number;
  /** Between the midplane and the chord over the hollow, degrees. */
  readonly angle: number;
  readonly web: number;
  readonly edge: number;
}

/** A corner farther than this inside the outline before lies on a hollow, mm. */
const INSIDE = 1e-6;
const SAME = 1e-6;

/** Where a section's outline crosses a height: w on its sides. */
const acrossAt = (section: readonly Vec2[], h: number): number[] =>
  section.flatMap((a, i): number[] => {
    const b = section[(i + 1) % section.length] ?? a;
    if ((a[0] - h) * (b[0] - h) > 0 || a[0] === b[0]) return a[0] === h ? [a[1]] : [];
    return [a[1] + ((h - a[0]) / (b[0] - a[0])) * (b[1] - a[1])];
  });

/**
 * Corners of one side from the edge's own corner up, w outwards: those farthest out at their
 * height. Of a bevel on one side alone these lie beyond the midplane near the edge.
 */
const sideOf = (section: readonly Vec2[], side: Side): Vec2[] => {
  const sign = side === 'left' ? 1 : -1;
  const turned = section.map(([h, w]): Vec2 => [h, sign * w]);
  return turned
    .filter(([h, w]) => w >= Math.max(...acrossAt(turned, h)) - SAME)
    .filter(([h, w]) => !turned.some((p) => Math.abs(p[0] - h) < SAME && p[1] > w))
    .sort((p, q) => p[0] - q[0]);
};

/** Width of a section at a height: from the least to the greatest w on its sides. */
const widthAt = (section: readonly Vec2[], h: number): number => {
  const ws = acrossAt(section, h);
  return Math.max(...ws) - Math.min(...ws);
};

/**
 * Reads a hollow off a finished section, `outline` being the section before any: it begins and
 * ends at the last corners that still lie on the old outline.
 */
export const gaugeHollow = (
  section: readonly Vec2[],
  outline: readonly Vec2[],
  side: Side,
): Gauged | undefined => {
  const sign = side === 'left' ? 1 : -1;
  const corners = sideOf(section, side);
  const away = corners.map(([h, w]) => distanceTo([h, sign * w], outline));
  const first = away.findIndex((d) => d > INSIDE);
  const last = away.findLastIndex((d) => d > INSIDE);
  const [low, high, edge] = [corners[first - 1], corners[last + 1], corners[0]];
  if (first < 0 || !low || !high || !edge) return undefined;
  const chord = sub2(high, low);
  const from = (p: Vec2): number => Math.hypot(...sub2(p, edge));
  const heights = corners.slice(first - 1, last + 2).map(([h]) => h);
  const others = section.map(([h]) => h).filter((h) => h > low[0] && h < high[0]);
  return {
    depth: Math.max(...away),
    lower: from(low),
    upper: from(high),
    angle: degrees(atan2(chord[1], chord[0])),
    web: Math.min(...[...heights, ...others].map((h) => widthAt(section, h))),
    edge: widthAt(section, edge[0] + SAME),
  };
};
