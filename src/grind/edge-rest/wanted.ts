import type { Side } from '../../blade/schema.ts';
import type { Shape } from '../../blade/shape.ts';
import { flatCut, hollowCut, type Cut } from '../../blade/cut.ts';
import { circleOn, faceAt } from './half.ts';
import { halvesOf } from './stations.ts';

/**
 * What is ground on a side of the section at u where a blade is hollowed, as it is wanted: the flat
 * bevel it comes with, if any, and the hollow of a wheel of `radius` mm (belt included) over it; the
 * hollow is left out where no wheel is known.
 */
export const wantedHollow = (shape: Shape, u: number, side: Side, radius: number | null): Cut[] => {
  const half = halvesOf(shape, u)[side];
  const flats = half.bevels.map(({ edge, angle }) => flatCut(() => ({ offset: edge, angle })));
  const wish = shape.blade.bevels[side];
  if (radius === null || wish.kind !== 'hollow') return flats;
  const circle = circleOn(faceAt(half, wish.centre), radius, wish.centre, wish.depth);
  return [...flats, hollowCut(radius, ({ edge }) => ({ v: edge - circle.h, w: circle.w }))];
};
