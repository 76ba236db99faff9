import { tan } from '../../core/trigonometry.ts';
import { path, type PathLoop, type Vertex } from '../../geometry/loop.ts';

/** Bulge of a quarter circle, tan(90 deg / 4). */
const QUARTER = tan(Math.PI / 8);

/**
 * The blade cut square to its length: a convex contour of straight edges and arcs, anticlockwise,
 * mm. x is w, across the blade, NEGATIVE on the side that faces the belt; y is v along the midplane
 * from the spine (0) to the edge (`height`).
 */
export interface Section {
  readonly height: number;
  readonly outline: PathLoop;
}

/**
 * An unground bar: thickness `thickness`, height `height`, the two spine corners rounded by
 * `spineRadius` (0 for sharp ones, at most half the thickness).
 */
export const barSection = (thickness: number, height: number, spineRadius = 0): Section => {
  const half = thickness / 2;
  const r = spineRadius;
  const outline =
    r > 0
      ? path([
          { x: half - r, y: 0, bulge: QUARTER },
          { x: half, y: r, bulge: 0 },
          { x: half, y: height, bulge: 0 },
          { x: -half, y: height, bulge: 0 },
          { x: -half, y: r, bulge: QUARTER },
          ...(half - r > 1e-12 ? [{ x: r - half, y: 0, bulge: 0 }] : []),
        ])
      : path([
          { x: half, y: 0, bulge: 0 },
          { x: half, y: height, bulge: 0 },
          { x: -half, y: height, bulge: 0 },
          { x: -half, y: 0, bulge: 0 },
        ]);
  return { height, outline };
};

/** The same blade turned over: its other side faces the belt. */
export const flipped = ({ height, outline: { vertices } }: Section): Section => {
  const n = vertices.length;
  const turned: Vertex[] = [];
  for (let i = 0; i < n; i += 1) {
    // Corner n-1-i now starts the edge that ended there; mirrored and run the other way it bulges
    // as before.
    const corner = vertices[n - 1 - i];
    const edge = vertices[(2 * n - 2 - i) % n];
    if (corner && edge) turned.push({ x: 0 - corner.x, y: corner.y, bulge: edge.bulge });
  }
  return { height, outline: path(turned) };
};
