import { asin, atan, cos } from '../core/trigonometry.ts';
import { degrees } from '../core/units.ts';
import { onCircle } from './arc.ts';
import type { Loop } from './loop.ts';
import { arcOfSegment, isStraight, segments } from './segment.ts';
import type { Vec2 } from './vector.ts';

/**
 * On which side of a curve its straight replacement may lie: `inscribed` puts corners on the
 * curve, `circumscribed` makes edges touch it, so that a pin of the curve's own radius still
 * passes through the polygon of a hole.
 */
export type Approximation = 'inscribed' | 'circumscribed';

/** Greatest angle of one straight piece, degrees: a tiny circle still has eight sides. */
const COARSEST = 45;

/**
 * Greatest step (degrees) whose straight pieces leave the circle by at most `chord` mm, from the
 * sagitta r (1 - cos(step/2)) or the excess r (1 / cos(step/2) - 1), solved by half angles so
 * that a very flat arc keeps its digits.
 */
const stepFor = (radius: number, chord: number, how: Approximation): number => {
  const quarter =
    how === 'inscribed'
      ? asin(Math.min(1, Math.sqrt(chord / (2 * radius))))
      : atan(Math.sqrt(chord / (2 * radius + chord)));
  return Math.min(COARSEST, degrees(4 * quarter));
};

/**
 * Corners of a polygon that departs from the contour by at most `chord` mm, in the contour's
 * order. A circle gets a multiple of four corners, so that its bounding box stays exact.
 */
export const flatten = (loop: Loop, chord: number, how: Approximation = 'inscribed'): Vec2[] => {
  if (loop.kind === 'circle') {
    const n = 4 * Math.ceil(90 / stepFor(loop.radius, chord, how) - 1e-9);
    return round(loop.centre, loop.radius, 0, 360, n, how);
  }
  return segments(loop).flatMap((segment) => {
    if (isStraight(segment)) return [segment.a];
    const { centre, radius, start, sweep } = arcOfSegment(segment);
    const n = Math.max(1, Math.ceil(Math.abs(sweep) / stepFor(radius, chord, how) - 1e-9));
    const points = round(centre, radius, start, sweep, n, how);
    return how === 'inscribed' ? [segment.a, ...points.slice(1)] : [segment.a, ...points];
  });
};

/** n points along a sweep: on the circle, or where the tangents of the n pieces meet. */
const round = (
  centre: Vec2,
  radius: number,
  start: number,
  sweep: number,
  n: number,
  how: Approximation,
): Vec2[] => {
  const step = sweep / n;
  const reach = how === 'inscribed' ? radius : radius / cos((Math.abs(step) * Math.PI) / 360);
  const first = how === 'inscribed' ? start : start + step / 2;
  return Array.from({ length: n }, (_, i) => onCircle(centre, reach, first + i * step));
};
