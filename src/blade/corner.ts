import { atan } from '../core/trigonometry.ts';
import { bevelPlace } from './bevel.ts';
import type { Shape } from './shape.ts';

/**
 * A spine that bulges in a curve tighter than this ends in a corner there, mm: nobody rocks a blade over
 * it (common practice, no source).
 */
const TIGHT = 25;
/** Steps along the blade in which it is looked for. */
const STEPS = 72;

/**
 * Where the spine ends in a corner between the bevel place and the tip: a square or cut-off end. No
 * rest leads a blade over it, and sections square to the spine run into each other beyond.
 */
export const cornerOf = ({ blade, spine, length }: Shape): number | undefined => {
  const step = length / STEPS;
  const isTight = (u: number): boolean => {
    const turned = atan(spine.slope(u + step)) - atan(spine.slope(u));
    return turned * TIGHT > Math.hypot(step, spine.value(u + step) - spine.value(u));
  };
  for (let i = Math.ceil(bevelPlace(blade) / step); i < STEPS; i += 1)
    if (isTight(i * step)) return i * step;
  return undefined;
};
