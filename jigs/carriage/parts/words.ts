import { text } from '../../../src/family/index.ts';
import { cornerRadius } from '../../shared/parts/context.ts';
import type { Context } from '../context.ts';

/** Names, notes and purposes of the carriage's parts. */
export const words = text.family.carriage.parts;

/** Radius of a plate's corners, mm: larger in thick sheet, so that its chord is no thin web. */
export const roundingOf = (c: Context, thickness: number): number => {
  const radius = cornerRadius(c);
  return radius === 0 ? 0 : Math.max(radius, 0.36 * thickness);
};
