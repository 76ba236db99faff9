import { angleOf, spans } from '../geometry/arc.ts';
import { flatten } from '../geometry/flatten.ts';
import type { Loop } from '../geometry/loop.ts';
import { mapProfile, rotated } from '../geometry/loop-transform.ts';
import { boundingBox } from '../geometry/loop-measure.ts';
import { arcOfSegment, isStraight, segments, type Segment } from '../geometry/segment.ts';
import { sub2, type Vec2 } from '../geometry/vector.ts';
import type { Layer } from '../model/part.ts';
import type { ViewEdges } from './edges.ts';
import { lessRails, railEdges, rails } from './rails.ts';

/** Depth of arcs' straight replacement and of comparisons in the view, mm. */
const CHORD = 0.005;
const LEVEL = 0.02;
const ASIDE = 1e-3;
/** Edges turn by more than this at a corner one can see, degrees. */
const CORNER = 0.5;

/** Layers turned so that a view from the left (-x) becomes a view from the front (-y). */
export const turnedLeft = (layers: readonly Layer[]): Layer[] =>
  layers.map((layer) => ({
    ...layer,
    profile: mapProfile(layer.profile, (loop) => rotated(loop, 90)),
  }));

const direction = (segment: Segment, atEnd: boolean): number => {
  if (isStraight(segment)) return angleOf(sub2(segment.b, segment.a));
  const arc = arcOfSegment(segment);
  const turn = arc.sweep > 0 ? 90 : -90;
  return arc.start + (atEnd ? arc.sweep : 0) + turn;
};

/** Points of a contour that show as upright lines: corners, and where an arc turns back. */
const uprights = (loop: Loop): Vec2[] => {
  const edges = segments(loop);
  return edges.flatMap((edge, i) => {
    const points: Vec2[] = [];
    const before = edges[(i + edges.length - 1) % edges.length];
    const turn = before ? direction(edge, false) - direction(before, true) : 0;
    if (Math.abs(((turn + 540) % 360) - 180) > CORNER) points.push(edge.a);
    if (!isStraight(edge)) {
      const arc = arcOfSegment(edge);
      for (const [angle, side] of [
        [0, 1],
        [180, -1],
      ] as const)
        if (spans(arc, angle)) points.push([arc.centre[0] + side * arc.radius, arc.centre[1]]);
    }
    return points;
  });
};

/** The nearest depth of an outline over a place across the view; infinite where there is none. */
type Front = (x: number) => number;

const front = (outlines: readonly (readonly Vec2[])[]): Front => {
  const sides = outlines.flatMap((points) =>
    points.map((p, i) => [p, points[(i + 1) % points.length] ?? p] as const),
  );
  return (x) =>
    sides.reduce((least, [[x0, y0], [x1, y1]]) => {
      if (x0 === x1 || x < Math.min(x0, x1) || x > Math.max(x0, x1)) return least;
      return Math.min(least, y0 + ((y1 - y0) * (x - x0)) / (x1 - x0));
    }, Infinity);
};

interface Slab {
  readonly from: number;
  readonly to: number;
  readonly outers: readonly Loop[];
  readonly holes: readonly Loop[];
  readonly stations: readonly number[];
  readonly front: Front;
}

const slabs = (layers: readonly Layer[]): Slab[] => {
  const levels = [...new Set(layers.flatMap((l) => [l.from, l.to]))].sort((a, b) => a - b);
  return levels.slice(1).map((to, i) => {
    const from = levels[i] ?? 0;
    const here = layers.filter((l) => l.from < to - 1e-6 && l.to > from + 1e-6);
    const outlines = here.map((l) => flatten(l.profile.outer, CHORD));
    return {
      from,
      to,
      outers: here.map((l) => l.profile.outer),
      holes: here.flatMap((l) => l.profile.holes),
      stations: outlines.flat().map((p) => p[0]),
      front: front(outlines),
    };
  });
};

/** Level lines between two slabs: wherever their fronts differ, or where only one of them is. */
const steps = (
  z: number,
  below: Slab | undefined,
  above: Slab | undefined,
  outlineAlone: boolean,
): Segment[] => {
  const xs = [...new Set([...(below?.stations ?? []), ...(above?.stations ?? [])])].sort(
    (a, b) => a - b,
  );
  return xs.slice(1).flatMap((x, i): Segment[] => {
    const start = xs[i] ?? 0;
    const middle = (start + x) / 2;
    const one = below?.front(middle) ?? Infinity;
    const other = above?.front(middle) ?? Infinity;
    const flush = one === other || Math.abs(one - other) < LEVEL;
    if (outlineAlone && one < Infinity && other < Infinity) return [];
    return flush ? [] : [{ a: [start, z], b: [x, z], bulge: 0 }];
  });
};

const key = (loop: Loop): string => JSON.stringify(loop);

/** Level lines of the holes that end or change at a level. */
const floors = (z: number, below: Slab | undefined, above: Slab | undefined): Segment[] => {
  const lower = below?.holes ?? [];
  const upper = above?.holes ?? [];
  const changed = [
    ...lower.filter((hole) => !upper.some((other) => key(other) === key(hole))),
    ...upper.filter((hole) => !lower.some((other) => key(other) === key(hole))),
  ];
  return changed.map((hole) => {
    const { min, max } = boundingBox(hole);
    return { a: [min[0], z], b: [max[0], z], bulge: 0 };
  });
};

const upright = (x: number, slab: Slab): Segment => ({
  a: [x, slab.from],
  b: [x, slab.to],
  bulge: 0,
});

/** Upright edges without those that would run together, as on a knurl; the outermost stay. */
const apart = (edges: readonly Segment[], least: number): Segment[] => {
  const sorted = edges
    .filter((e) => e.a[0] === e.b[0])
    .sort((p, q) => p.a[1] - q.a[1] || p.b[1] - q.b[1] || p.a[0] - q.a[0]);
  const isRow = (p: Segment | undefined, q: Segment): boolean =>
    p !== undefined && p.a[1] === q.a[1] && p.b[1] === q.b[1];
  let kept = -Infinity;
  const uprights = sorted.filter((edge, i) => {
    const [before, after] = [sorted[i - 1], sorted[i + 1]];
    const isEnd = !isRow(before, edge) || after === undefined || !isRow(after, edge);
    if (!isEnd && edge.a[0] - kept < least) return false;
    kept = edge.a[0];
    return true;
  });
  return [...edges.filter((e) => e.a[0] !== e.b[0]), ...uprights];
};

/**
 * The view of a stack from the front (along +y): across is x, up is z. Edges behind material and
 * the edges of holes are hidden; those that coincide with visible ones are left out. Arcs are
 * followed to 0.005 mm; edges nearer than `least` mm to their neighbour are left out but for the
 * outline.
 */
export const elevation = (layers: readonly Layer[], least = 0): ViewEdges => {
  const all = slabs(layers);
  const visible: Segment[] = [];
  const hidden: Segment[] = [];
  for (const slab of all) {
    for (const [x, y] of slab.outers.flatMap(uprights)) {
      const open = [x - ASIDE, x + ASIDE].some((side) => slab.front(side) >= y - LEVEL);
      (open ? visible : hidden).push(upright(x, slab));
    }
    for (const [x] of slab.holes.flatMap(uprights)) hidden.push(upright(x, slab));
  }
  for (let i = 0; i <= all.length; i++) {
    const below = all[i - 1];
    const above = all[i];
    const z = below?.to ?? above?.from ?? 0;
    // Slices of something rounded: their level lines would run together.
    const isThin = (slab: Slab | undefined): boolean => !slab || slab.to - slab.from < least;
    visible.push(...steps(z, below, above, isThin(below) && isThin(above)));
    hidden.push(...floors(z, below, above));
  }
  const seen = rails(visible);
  return {
    visible: apart(railEdges(seen), least),
    hidden: apart(railEdges(lessRails(rails(hidden), seen)), least),
  };
};
