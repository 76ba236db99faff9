import { sweepOf } from '../geometry/arc.ts';
import { containsPoint, gapsFrom } from '../geometry/loop-measure.ts';
import { oriented } from '../geometry/loop-transform.ts';
import type { Loop, Profile } from '../geometry/loop.ts';
import {
  boxedSegments,
  boxGap2,
  cornerTurns,
  isStraight,
  segmentGap,
  segments,
  type Segment,
} from '../geometry/segment.ts';
import { add2, cross2, distance2, scale2, sub2, type Vec2 } from '../geometry/vector.ts';

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

/** Whether a point lies on the material's side of an edge of an anticlockwise contour. */
const isInside = ({ a, b }: Segment, p: Vec2): boolean => cross2(sub2(b, a), sub2(p, a)) > 0;

/** Whether there is material between the nearest ends p and q of two edges. */
const isWall = (outer: Loop, s: Segment, t: Segment): boolean => {
  const [p, q] = nearestEnds(s, t);
  // The middle between two ends may lie on the outline: across a plate along its end.
  const faces = isStraight(s) && isStraight(t) && isInside(s, q) && isInside(t, p);
  return faces || containsPoint(outer, scale2(add2(p, q), 0.5));
};

/** How far a corner may turn, degrees: what lies between its sides then widens from there. */
const MOST_TURN = 90 + 1e-6;

/**
 * Whether two edges of an anticlockwise contour are the sides of one corner, sharp, rounded or
 * chamfered: between them it turns to the left alone and by a right angle at most. An end that
 * turns further, as that of a tab, has a wall between its sides.
 */
const sharedCorners = (outer: Loop): ((i: number, j: number) => boolean) => {
  const turns = cornerTurns(outer);
  const sweeps = segments(outer).map((s) => (isStraight(s) ? 0 : sweepOf(s.bulge)));
  const n = turns.length;
  return (i, j) => {
    let [sum, k] = [0, i];
    do {
      const sweep = k === i ? 0 : (sweeps[k] ?? 0);
      k = (k + 1) % n;
      const turn = turns[k] ?? 0;
      if (sweep < 0 || turn < -1e-6) return false;
      sum += sweep + turn;
    } while (k !== j && sum <= MOST_TURN);
    return sum <= MOST_TURN;
  };
};

/**
 * Thinnest wall within one contour: the least gap between two of its edges that are not the sides
 * of one corner and have material between them. Gaps across a notch do not count.
 */
const ownWall = (contour: Loop): Thin | undefined => {
  const outer = oriented(contour, true);
  const edges = boxedSegments(outer);
  const isCorner = sharedCorners(outer);
  let best: Thin | undefined;
  edges.forEach(([s, box], i) => {
    for (let j = i + 2; j < edges.length; j += 1) {
      const other = edges[j];
      if (!other || (i === 0 && j === edges.length - 1)) continue;
      const [t, otherBox] = other;
      // What cannot be thinner need not be looked at: few pairs of edges are near each other.
      if (best && boxGap2(box, otherBox) >= best.value) continue;
      const value = segmentGap(s, t);
      if ((best && value >= best.value) || isCorner(i, j) || isCorner(j, i)) continue;
      if (isWall(outer, s, t)) best = { value, at: nearestEnds(s, t)[0] };
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
