import { containsPoint, gapsFrom } from '../geometry/loop-measure.ts';
import type { Loop, Profile } from '../geometry/loop.ts';
import { boxedSegments, boxGap2, segmentGap, type Segment } from '../geometry/segment.ts';
import { add2, distance2, scale2, type Vec2 } from '../geometry/vector.ts';

/** The thinnest place of a flat region, mm, and about where it is. */
export interface Thin {
  readonly value: number;
  readonly at: Vec2;
}

/** The two ends of two edges that are nearest to each other. */
const nearestEnds = (s: Segment, t: Segment): readonly [Vec2, Vec2] => {
  let best: readonly [Vec2, Vec2] = [s.a, t.a];
  for (const p of [s.a, s.b])
    for (const q of [t.a, t.b]) if (distance2(p, q) < distance2(...best)) best = [p, q];
  return best;
};

const thinner = (one: Thin | undefined, other: Thin): Thin =>
  one === undefined || other.value < one.value ? other : one;

/**
 * Thinnest wall within one contour: the least gap between two of its edges that do not share a
 * corner and have material between them. Gaps across a notch do not count.
 */
const ownWall = (outer: Loop): Thin | undefined => {
  const edges = boxedSegments(outer);
  let best: Thin | undefined;
  edges.forEach(([s, box], i) => {
    for (let j = i + 2; j < edges.length; j += 1) {
      const other = edges[j];
      if (!other || (i === 0 && j === edges.length - 1)) continue;
      const [t, otherBox] = other;
      // What cannot be thinner need not be looked at: few pairs of edges are near each other.
      if (best && boxGap2(box, otherBox) >= best.value) continue;
      const value = segmentGap(s, t);
      if (best && value >= best.value) continue;
      const [p, q] = nearestEnds(s, t);
      if (containsPoint(outer, scale2(add2(p, q), 0.5))) best = { value, at: p };
    }
  });
  return best;
};

/** Thinnest place of a region: within its outline, from holes to outline, between holes. */
export const thinnest = ({ outer, holes }: Profile): Thin | undefined => {
  let best = ownWall(outer);
  const toOutline = gapsFrom(outer);
  holes.forEach((hole, i) => {
    const at = pointOf(hole);
    best = thinner(best, { value: toOutline(hole, best?.value), at });
    const toHole = gapsFrom(hole);
    for (const other of holes.slice(i + 1)) {
      best = thinner(best, { value: toHole(other, best.value), at });
    }
  });
  return best;
};

const pointOf = (loop: Loop): Vec2 => {
  if (loop.kind === 'circle') return loop.centre;
  const first = loop.vertices[0];
  return first ? [first.x, first.y] : [0, 0];
};
