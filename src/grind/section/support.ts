import { centreShare } from '../../geometry/arc.ts';
import type { PathLoop, Vertex } from '../../geometry/loop.ts';
import { apart2, type Vec2 } from '../../geometry/vector.ts';

/** How far a contour reaches in a direction, and the point of it that reaches so far. */
export interface Reach {
  readonly distance: number;
  readonly at: Vec2;
}

// No pairs in brackets and no objects here: this is asked a hundred thousand times for one change
// of a blade.

/**
 * Whether a direction leaves an arc from a to b squarely: whether it lies between those of the
 * arc's ends about its centre, told by cross products, without their angles.
 */
const leaves = (a: Vertex, b: Vertex, dx: number, dy: number): boolean => {
  if (a.bulge === 0) return false;
  const share = centreShare(a.bulge);
  const x = (a.x + b.x) * 0.5 + -(b.y - a.y) * share;
  const y = (a.y + b.y) * 0.5 + (b.x - a.x) * share;
  return (a.x - x) * dy - (a.y - y) * dx >= 0 && dx * (b.y - y) - dy * (b.x - x) >= 0;
};

/**
 * What of a convex contour reaches farthest in a direction: the number of a corner, or that of an
 * arc by its first corner, from -1 down. An arc that a direction leaves squarely has the farthest
 * corner at one of its ends. Arcs of less than half a turn, the contour anticlockwise.
 */
export const farthest = ({ vertices }: PathLoop, dx: number, dy: number): number => {
  const { length } = vertices;
  let distance = -Infinity;
  let best = 0;
  for (let i = 0; i < length; i += 1) {
    const { x, y } = vertices[i] as Vertex;
    const here = x * dx + y * dy;
    if (here > distance) {
      distance = here;
      best = i;
    }
  }
  const corner = vertices[best];
  const before = vertices[best === 0 ? length - 1 : best - 1];
  const after = vertices[best === length - 1 ? 0 : best + 1];
  if (corner === undefined || before === undefined || after === undefined) return best;
  if (leaves(corner, after, dx, dy)) return -1 - best;
  return leaves(before, corner, dx, dy) ? -1 - (best === 0 ? length - 1 : best - 1) : best;
};

/** The corner that a piece is, or at which its arc starts. */
const startOf = ({ vertices }: PathLoop, piece: number): Vertex =>
  vertices[piece >= 0 ? piece : -1 - piece] ?? NOWHERE;

/** The corner at which an arc ends. */
const endOf = ({ vertices }: PathLoop, arc: number): Vertex =>
  vertices[-arc] ?? vertices[0] ?? NOWHERE;

const NOWHERE: Vertex = { x: NaN, y: NaN, bulge: 0 };

/**
 * The circle of a piece, number by number: that of an arc (see `circleOf`), or a corner as one
 * without a radius. While a direction turns and the same piece reaches farthest, the distance is
 * centre . d + radius.
 */
export const centreX = (outline: PathLoop, piece: number): number => {
  const a = startOf(outline, piece);
  if (piece >= 0) return a.x;
  const b = endOf(outline, piece);
  return (a.x + b.x) * 0.5 + -(b.y - a.y) * centreShare(a.bulge);
};

export const centreY = (outline: PathLoop, piece: number): number => {
  const a = startOf(outline, piece);
  if (piece >= 0) return a.y;
  const b = endOf(outline, piece);
  return (a.y + b.y) * 0.5 + (b.x - a.x) * centreShare(a.bulge);
};

export const radiusOf = (outline: PathLoop, piece: number): number => {
  if (piece >= 0) return 0;
  const a = startOf(outline, piece);
  const b = endOf(outline, piece);
  return (apart2(a.x, a.y, b.x, b.y) * (1 + a.bulge * a.bulge)) / (4 * Math.abs(a.bulge));
};

/**
 * Support of a convex contour of straight edges and arcs in a unit direction: the greatest p . d
 * over its points p, mm. It is taken at a corner or, where the direction leaves an arc squarely, at
 * that arc's point.
 */
export const reach = (outline: PathLoop, [dx, dy]: Vec2): Reach => {
  const piece = farthest(outline, dx, dy);
  const radius = radiusOf(outline, piece);
  const at = [
    centreX(outline, piece) + dx * radius,
    centreY(outline, piece) + dy * radius,
  ] as const;
  return { distance: at[0] * dx + at[1] * dy, at };
};

/** The distance of `reach` alone. */
export const distanceIn = (outline: PathLoop, dx: number, dy: number): number => {
  const piece = farthest(outline, dx, dy);
  const radius = radiusOf(outline, piece);
  return (
    (centreX(outline, piece) + dx * radius) * dx + (centreY(outline, piece) + dy * radius) * dy
  );
};
