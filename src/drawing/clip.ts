import { onCircle } from '../geometry/arc.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { contains, type Box } from './box.ts';
import { itemBox } from './items.ts';
import type { Item } from './sheet.ts';

/** Straight pieces of a whole circle that has to be cut: 0.005 mm off at 30 mm radius. */
const PIECES = 360;

/** The part of a stretch inside a box (Liang and Barsky), or nothing. */
const clipped = (box: Box, a: Vec2, b: Vec2): readonly [Vec2, Vec2] | undefined => {
  let enter = 0;
  let leave = 1;
  const d: Vec2 = [b[0] - a[0], b[1] - a[1]];
  for (const [p, q] of [
    [-d[0], a[0] - box.x0],
    [d[0], box.x1 - a[0]],
    [-d[1], a[1] - box.y0],
    [d[1], box.y1 - a[1]],
  ] as const) {
    if (p === 0) {
      if (q < 0) return undefined;
    } else if (p < 0) enter = Math.max(enter, q / p);
    else leave = Math.min(leave, q / p);
  }
  const at = (t: number): Vec2 => [a[0] + d[0] * t, a[1] + d[1] * t];
  return leave - enter > 1e-9 ? [at(enter), at(leave)] : undefined;
};

const pointsOf = (item: Extract<Item, { kind: 'circle' | 'arc' }>): Vec2[] => {
  const from = item.kind === 'arc' ? item.from : 0;
  const sweep = item.kind === 'arc' ? (((item.to - from) % 360) + 360) % 360 : 360;
  const n = Math.max(2, Math.ceil((sweep / 360) * PIECES));
  return Array.from({ length: n + 1 }, (_, i) =>
    onCircle(item.centre, item.radius, from + (sweep * i) / n),
  );
};

/**
 * What of an item shows through a window: lines are cut at its edge, text and filled shapes are
 * shown whole or not at all.
 */
export const clip = (item: Item, window: Box): Item[] => {
  if (contains(window, itemBox(item))) return [item];
  if (item.kind === 'text' || item.kind === 'fill' || item.kind === 'blocks') return [];
  const points =
    item.kind === 'line'
      ? [item.a, item.b]
      : item.kind === 'polyline'
        ? item.points
        : pointsOf(item);
  return points.slice(1).flatMap((b, i): Item[] => {
    const piece = clipped(window, points[i] ?? b, b);
    return piece ? [{ kind: 'line', a: piece[0], b: piece[1], stroke: item.stroke }] : [];
  });
};
