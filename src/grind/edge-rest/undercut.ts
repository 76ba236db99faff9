import { centreAtLipOf, type AtWheel } from './at-lip.ts';
import { circleAt, circleOn, halfAt, hollowed, unhollowed, type Circle } from './half.ts';
import { limitsOf } from './limits.ts';

const SAMPLES = 64;

/**
 * Least distance by which a pass's hollow stays outside the finished one, mm across the blade;
 * negative when it cuts deeper or beyond its limits anywhere. The lip may be off by `tolerance`
 * either way, which moves the hollow along the face by dc/dy times that, and `scratch` is taken
 * off the whole.
 */
export const hollowMargin = (
  at: AtWheel,
  lip: number,
  depth: number,
  finished: Circle,
  { scratch, tolerance }: { readonly scratch: number; readonly tolerance: number },
): number => {
  const { near, height } = at.section;
  const base = unhollowed(near);
  const done = hollowed(base, finished);
  const margins = [-tolerance, tolerance].map((by): number => {
    const centre = centreAtLipOf(at, lip + by, depth);
    if (centre === undefined) return -Infinity;
    const circle = circleOn(at.face, at.wheel.radius, centre, depth);
    const limits = limitsOf(base, height, circle);
    if (limits === undefined) return Infinity;
    const { lower, upper } = limits;
    const gaps = Array.from({ length: SAMPLES + 1 }, (_, i) => {
      const h = lower + ((upper - lower) * i) / SAMPLES;
      return circleAt(circle, h) - halfAt(done, h);
    });
    return Math.min(...gaps);
  });
  return Math.min(...margins) - scratch;
};
