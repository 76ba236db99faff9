import type { Vec2 } from '../geometry/vector.ts';

/** An axis-parallel rectangle on the paper, mm. */
export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** The empty box: neutral in `union`. */
export const NOTHING: Box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };

export const union = (a: Box, b: Box): Box => ({
  x0: Math.min(a.x0, b.x0),
  y0: Math.min(a.y0, b.y0),
  x1: Math.max(a.x1, b.x1),
  y1: Math.max(a.y1, b.y1),
});

export const around = (points: readonly Vec2[]): Box => {
  // Number by number, by index: a drawing asks this of every line, and boxes and pairs thrown away
  // took most of it.
  let { x0, y0, x1, y1 } = NOTHING;
  for (const point of points) {
    const x = point[0];
    const y = point[1];
    if (x < x0) x0 = x;
    if (y < y0) y0 = y;
    if (x > x1) x1 = x;
    if (y > y1) y1 = y;
  }
  return { x0, y0, x1, y1 };
};

export const grow = (box: Box, by: number): Box => ({
  x0: box.x0 - by,
  y0: box.y0 - by,
  x1: box.x1 + by,
  y1: box.y1 + by,
});

export const shifted = (box: Box, [x, y]: Vec2): Box => ({
  x0: box.x0 + x,
  y0: box.y0 + y,
  x1: box.x1 + x,
  y1: box.y1 + y,
});

/** The box `k` times as large from the origin. */
export const scaledBox = (box: Box, k: number): Box => ({
  x0: box.x0 * k,
  y0: box.y0 * k,
  x1: box.x1 * k,
  y1: box.y1 * k,
});

export const overlap = (a: Box, b: Box): boolean =>
  a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;

/** Whether the inner box lies wholly in the outer one. */
export const contains = (outer: Box, inner: Box): boolean =>
  inner.x0 >= outer.x0 && inner.x1 <= outer.x1 && inner.y0 >= outer.y0 && inner.y1 <= outer.y1;

export const widthOf = (box: Box): number => box.x1 - box.x0;
export const heightOf = (box: Box): number => box.y1 - box.y0;

/** Whether the segment from a to b has a point inside the box (Liang and Barsky's clipping). */
export const crosses = (box: Box, a: Vec2, b: Vec2): boolean => {
  // Most segments lie clear of the box on one side.
  if ((a[0] <= box.x0 && b[0] <= box.x0) || (a[0] >= box.x1 && b[0] >= box.x1)) return false;
  if ((a[1] <= box.y0 && b[1] <= box.y0) || (a[1] >= box.y1 && b[1] >= box.y1)) return false;
  let enter = 0;
  let leave = 1;
  const clip = (start: number, step: number, low: number, high: number): boolean => {
    if (Math.abs(step) < 1e-12) return start > low && start < high;
    const first = (low - start) / step;
    const second = (high - start) / step;
    enter = Math.max(enter, Math.min(first, second));
    leave = Math.min(leave, Math.max(first, second));
    return enter < leave;
  };
  return clip(a[0], b[0] - a[0], box.x0, box.x1) && clip(a[1], b[1] - a[1], box.y0, box.y1);
};
