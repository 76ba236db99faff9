import { interpolate } from '../blade/interpolate.ts';
import type { Outline } from '../blade/schema.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { dense, deviation, offCurve } from './deviation.ts';

/** Wanted deviation, mm, and the most points a side. */
const WANTED = 0.02;
const MOST = 120;
/** Spacing of points that the blade's rules ask for, with a margin, mm. */
const SPACING = 0.11;

const short = ([u, v]: Vec2): [number, number] => [Number(u.toFixed(4)), Number(v.toFixed(4))];

/** The place of a line at u; none beyond it. */
const placeAt = (line: readonly Vec2[], u: number): Vec2[] => {
  const i = line.findIndex((point) => point[0] >= u);
  const [a, b] = [line[i - 1], line[i]];
  return a && b ? [[u, a[1] + ((b[1] - a[1]) * (u - a[0])) / (b[0] - a[0])]] : [];
};

/** Adds the point farthest off until the curve through the points follows the drawn line. */
const pointsFor = (line: readonly Vec2[]): [number, number][] => {
  const drawn = dense(line, 1);
  const [first, last]: [Vec2, Vec2] = [drawn[0] ?? [0, 0], drawn.at(-1) ?? [0, 0]];
  const chosen = [short(first), short(last)];
  const bounds = [first[0] + SPACING, last[0] - SPACING] as const;
  // The places next to the ends, too: a square end falls within the spacing.
  const all = [...drawn, ...bounds.flatMap((u) => placeAt(line, u))];
  while (chosen.length < MOST) {
    const curve = interpolate(chosen);
    let worst = { off: WANTED, point: undefined as Vec2 | undefined };
    for (const point of all) {
      const off = offCurve(curve, point);
      if (off <= worst.off || point[0] < bounds[0] || point[0] > bounds[1]) continue;
      if (chosen.every(([u]) => Math.abs(u - point[0]) >= SPACING)) worst = { off, point };
    }
    if (worst.point === undefined) break;
    const at = chosen.findIndex(([u]) => u > (worst.point?.[0] ?? 0));
    chosen.splice(at, 0, short(worst.point));
  }
  return chosen;
};

/** An outline by points within 0.02 mm of the drawn lines where that can be had; the deviation says. */
export const fitPoints = (spine: readonly Vec2[], edge: readonly Vec2[]) => {
  const [a, b] = [pointsFor(spine), pointsFor(edge)];
  const outline: Outline = { kind: 'curves', spine: a, edge: b };
  const off = Math.max(
    deviation(interpolate(a), dense(spine, 0.5)),
    deviation(interpolate(b), dense(edge, 0.5)),
  );
  return { outline, deviation: off };
};
