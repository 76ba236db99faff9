import { angleOf, arcOf, spans, type Arc } from '../../geometry/arc.ts';
import type { PathLoop } from '../../geometry/loop.ts';
import type { Vec2 } from '../../geometry/vector.ts';

/**
 * How far a contour reaches in a direction, and the point of it that reaches so far: a corner
 * (radius 0, its own centre) or a point of an arc. While the direction turns and the same piece
 * reaches farthest, the distance is centre . d + radius.
 */
export interface Reach {
  readonly distance: number;
  readonly at: Vec2;
  readonly centre: Vec2;
  readonly radius: number;
}

/**
 * Support of a contour of straight edges and arcs in a unit direction: the greatest p . d over
 * its points p, mm. It is taken at a corner or, where the direction leaves an arc squarely, at
 * that arc's point.
 */
export const reach = ({ vertices }: PathLoop, direction: Vec2): Reach => {
  // No pairs in brackets: this is asked a quarter of a million times for one change of a blade.
  const dx = direction[0];
  const dy = direction[1];
  let distance = -Infinity;
  let corner = vertices[0];
  for (const vertex of vertices) {
    const here = vertex.x * dx + vertex.y * dy;
    if (here > distance) {
      distance = here;
      corner = vertex;
    }
  }
  let best: Arc | undefined;
  for (let i = 0; i < vertices.length; i += 1) {
    const a = vertices[i];
    if (a === undefined || a.bulge === 0) continue;
    const b = vertices[i + 1] ?? vertices[0] ?? a;
    // An arc rises over its chord by no more than its height, |bulge| c / 2, and c <= |x| + |y|.
    const most = Math.max(a.x * dx + a.y * dy, b.x * dx + b.y * dy);
    const height = (Math.abs(a.bulge) * (Math.abs(b.x - a.x) + Math.abs(b.y - a.y))) / 2;
    if (most + height <= distance) continue;
    const arc = arcOf([a.x, a.y], [b.x, b.y], a.bulge);
    if (!spans(arc, angleOf(direction))) continue;
    const there = (arc.centre[0] + dx * arc.radius) * dx + (arc.centre[1] + dy * arc.radius) * dy;
    if (there <= distance) continue;
    distance = there;
    best = arc;
  }
  if (best === undefined) {
    const tip: Vec2 = [corner?.x ?? 0, corner?.y ?? 0];
    return { distance, at: tip, centre: tip, radius: 0 };
  }
  const { centre, radius } = best;
  return { distance, at: [centre[0] + dx * radius, centre[1] + dy * radius], centre, radius };
};
