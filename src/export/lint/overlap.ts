import { radians } from '../../core/units.ts';
import { sagittaOf } from '../../geometry/arc.ts';
import { arcOfSegment, isStraight, type Segment } from '../../geometry/segment.ts';
import { cross2, distance2, dot2, length2, sub2, type Vec2 } from '../../geometry/vector.ts';

/** Common length of the intervals [0, length] and [from, from + other]. */
const common = (length: number, from: number, other: number): number =>
  Math.max(0, Math.min(from + other, length) - Math.max(from, 0));

const straightOverlap = (s: Segment, t: Segment, tolerance: number): number => {
  const [long, short] = distance2(s.a, s.b) >= distance2(t.a, t.b) ? [s, t] : [t, s];
  const along = sub2(long.b, long.a);
  const length = length2(along);
  if (length === 0) return 0;
  const off = (p: Vec2): number => Math.abs(cross2(along, sub2(p, long.a))) / length;
  if (off(short.a) > tolerance || off(short.b) > tolerance) return 0;
  const one = dot2(sub2(short.a, long.a), along) / length;
  const other = dot2(sub2(short.b, long.a), along) / length;
  return common(length, Math.min(one, other), Math.abs(one - other));
};

const arcOverlap = (s: Segment, t: Segment, tolerance: number): number => {
  const a = arcOfSegment(s);
  const b = arcOfSegment(t);
  if (distance2(a.centre, b.centre) > tolerance || Math.abs(a.radius - b.radius) > tolerance)
    return 0;
  const start = (arc: typeof a): number => arc.start + Math.min(0, arc.sweep);
  const shift = (((start(b) - start(a)) % 360) + 360) % 360;
  const [one, other] = [Math.abs(a.sweep), Math.abs(b.sweep)];
  return a.radius * radians(common(one, shift, other) + common(one, shift - 360, other));
};

/**
 * Length over which two edges run on top of each other within the tolerance, both mm. An arc
 * flatter than the tolerance counts as straight.
 */
export const overlapOf = (s: Segment, t: Segment, tolerance: number): number => {
  const straight = (e: Segment): boolean =>
    isStraight(e) ||
    (Math.abs(e.bulge) < 1 && Math.abs(sagittaOf(distance2(e.a, e.b), e.bulge)) < tolerance);
  if (straight(s) && straight(t)) return straightOverlap(s, t, tolerance);
  return isStraight(s) || isStraight(t) ? 0 : arcOverlap(s, t, tolerance);
};
