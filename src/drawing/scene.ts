import { dot3, type Vec2 } from '../geometry/vector.ts';
import { around, NOTHING, union, type Box } from './box.ts';
import { upOf, type Body } from './bodies.ts';
import { projected, type Eye } from './eye.ts';
import { fill, line, polyline } from './items.ts';
import { ordered, paintOrder } from './paint-order.ts';
import type { Item } from './sheet.ts';
import { withoutHiddenTabs } from './tabs.ts';
import { isWallBehind, seenAt, wallsOf, type View } from './walls.ts';

/** A filled face that was drawn, in the order of drawing: what shows at a point is the last one. */
export interface Face2 {
  readonly owner: string;
  readonly rings: readonly (readonly Vec2[])[];
  readonly box: Box;
}

export interface Scene {
  readonly items: readonly Item[];
  readonly faces: readonly Face2[];
  readonly box: Box;
}

const EPS = 1e-6;

/** Draws one body: walls that face the eye from far to near, then the end that faces it. */
const drawBody = (body: Body, view: View): { items: Item[]; faces: Face2[] } => {
  const { eye, k } = view;
  if (body.path) {
    const [a, b] = body.path.map((p) => projected(p, eye, k)) as [Vec2, Vec2];
    return { items: [line(a, b, 'centre')], faces: [] };
  }
  const items: Item[] = [];
  const faces: Face2[] = [];
  const rings = [body.outer, ...body.holes];
  const up = dot3(upOf(body), eye.towards);
  // Seen square to its axis a prism shows nothing of its holes.
  const seen = Math.abs(up) > EPS ? rings : [body.outer];
  const walls = ordered(
    seen.flatMap((ring) => wallsOf(body, ring, view)),
    isWallBehind,
  );
  for (const wall of walls) {
    items.push(fill(wall.ring, 'paper'), ...wall.edges.map((edge) => polyline(edge, 'visible')));
    faces.push({ owner: body.owner, rings: [wall.ring], box: around(wall.ring) });
  }
  if (Math.abs(up) > EPS) {
    const level = up > 0 ? body.to : body.from;
    const ends = rings.map((ring) => seenAt(body, ring, level, view));
    faces.push({ owner: body.owner, rings: ends, box: around(ends[0] ?? []) });
    items.push(fill(keyhole(ends), 'paper'));
    const isFlush = up > 0 ? body.flushAbove : body.flushBelow;
    ends.forEach((ring, i) => {
      if (i > 0 || !isFlush) items.push(polyline([...ring, ring[0] ?? [0, 0]], 'visible'));
    });
  }
  return { items, faces };
};

/** Rings joined to one outline by bridges of no width: the windings add up to the region. */
const keyhole = (rings: readonly (readonly Vec2[])[]): Vec2[] => {
  const start = rings[0]?.[0] ?? [0, 0];
  return rings.flatMap((ring) => [...ring, ring[0] ?? start, start]);
};

/** The picture of bodies in parallel projection with hidden lines removed, `k` times as large. */
export const scene = (bodies: readonly Body[], eye: Eye, k: number): Scene => {
  const drawn = paintOrder(withoutHiddenTabs(bodies, eye), eye).map((body) =>
    drawBody(body, { eye, k }),
  );
  const faces = drawn.flatMap((d) => d.faces);
  return {
    items: drawn.flatMap((d) => d.items),
    faces,
    box: faces.reduce((box, face) => union(box, face.box), NOTHING),
  };
};
