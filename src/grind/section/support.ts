import { angleOf, arcOf, sagittaOf, spans } from '../../geometry/arc.ts';
import type { PathLoop } from '../../geometry/loop.ts';
import { add2, distance2, dot2, scale2, type Vec2 } from '../../geometry/vector.ts';

/** How far a contour reaches in a direction, and the point of it that reaches so far. */
export interface Reach {
  readonly distance: number;
  readonly at: Vec2;
}

/**
 * Support of a contour of straight edges and arcs in a unit direction: the greatest p . d over
 * its points p, mm. It is taken at a corner or, where the direction leaves an arc squarely, at
 * that arc's point.
 */
export const reach = ({ vertices }: PathLoop, direction: Vec2): Reach => {
  let best: Reach = { distance: -Infinity, at: [0, 0] };
  for (const { x, y } of vertices) {
    const distance = x * direction[0] + y * direction[1];
    if (distance > best.distance) best = { distance, at: [x, y] };
  }
  for (const [i, { x, y, bulge }] of vertices.entries()) {
    const next = vertices[(i + 1) % vertices.length];
    if (bulge === 0 || next === undefined) continue;
    const [a, b]: [Vec2, Vec2] = [
      [x, y],
      [next.x, next.y],
    ];
    // An arc rises over its chord by no more than its height.
    const most = Math.max(dot2(a, direction), dot2(b, direction));
    if (most + Math.abs(sagittaOf(distance2(a, b), bulge)) <= best.distance) continue;
    const arc = arcOf(a, b, bulge);
    if (!spans(arc, angleOf(direction))) continue;
    const at = add2(arc.centre, scale2(direction, arc.radius));
    const distance = dot2(at, direction);
    if (distance > best.distance) best = { distance, at };
  }
  return best;
};
