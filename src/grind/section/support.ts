import { circleOf, type Circle } from '../../geometry/arc.ts';
import type { PathLoop, Vertex } from '../../geometry/loop.ts';
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
 * Whether a direction leaves the arc from a to b about a centre squarely: whether it lies between
 * those of the arc's ends, told by cross products, without their angles.
 */
const faces = (a: Vertex, b: Vertex, [x, y]: Vec2, dx: number, dy: number): boolean => {
  const sign = Math.sign(a.bulge);
  const after = ((a.x - x) * dy - (a.y - y) * dx) * sign >= 0;
  const before = (dx * (b.y - y) - dy * (b.x - x)) * sign >= 0;
  // An arc beyond half a turn leaves out what lies between its ends.
  return Math.abs(a.bulge) <= 1 ? after && before : after || before;
};

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
  let best: Circle | undefined;
  for (let i = 0; i < vertices.length; i += 1) {
    const a = vertices[i];
    if (a === undefined || a.bulge === 0) continue;
    const b = vertices[i + 1] ?? vertices[0] ?? a;
    // An arc rises over its chord by no more than its height, |bulge| c / 2, and c <= |x| + |y|.
    const most = Math.max(a.x * dx + a.y * dy, b.x * dx + b.y * dy);
    const height = (Math.abs(a.bulge) * (Math.abs(b.x - a.x) + Math.abs(b.y - a.y))) / 2;
    if (most + height <= distance) continue;
    const { centre, radius } = circleOf([a.x, a.y], [b.x, b.y], a.bulge);
    if (!faces(a, b, centre, dx, dy)) continue;
    const there = (centre[0] + dx * radius) * dx + (centre[1] + dy * radius) * dy;
    if (there <= distance) continue;
    distance = there;
    best = { centre, radius };
  }
  if (best === undefined) {
    const tip: Vec2 = [corner?.x ?? 0, corner?.y ?? 0];
    return { distance, at: tip, centre: tip, radius: 0 };
  }
  const { centre, radius } = best;
  return { distance, at: [centre[0] + dx * radius, centre[1] + dy * radius], centre, radius };
};
