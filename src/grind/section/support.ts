import { angleOf, spans } from '../../geometry/arc.ts';
import type { PathLoop } from '../../geometry/loop.ts';
import { arcOfSegment, isStraight, segments } from '../../geometry/segment.ts';
import { add2, dot2, scale2, type Vec2 } from '../../geometry/vector.ts';

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
export const reach = (outline: PathLoop, direction: Vec2): Reach => {
  let best: Reach = { distance: -Infinity, at: [0, 0] };
  const consider = (at: Vec2): void => {
    const distance = dot2(at, direction);
    if (distance > best.distance) best = { distance, at };
  };
  for (const { x, y } of outline.vertices) consider([x, y]);
  const angle = angleOf(direction);
  for (const segment of segments(outline)) {
    if (isStraight(segment)) continue;
    const arc = arcOfSegment(segment);
    if (spans(arc, angle)) consider(add2(arc.centre, scale2(direction, arc.radius)));
  }
  return best;
};
