import { cos } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { root } from '../numeric/root.ts';
import type { Section } from '../section/section.ts';
import { setoffFor } from './settle.ts';

/**
 * The edge (mm from the midplane on the belt side) that a setoff leaves at an angle, the inverse of
 * `settle` in its other unknown. Where the near spine corner stays, the setoff grows with the edge
 * by cos a / cos t exactly, so
 *
 *     e = e_0 + (s - s(e_0, a)) cos t / cos a
 *
 * which is refined by bracketing where a bevel through the spine lets the blade sink.
 */
export const edgeAt = (section: Section, angle: number, setoff: number, lean: number): number => {
  const grows = cos(radians(angle)) / cos(radians(lean));
  const guess = (setoff - setoffFor(section, { edge: 0, angle }, lean)) / grows;
  const short = (edge: number): number => setoffFor(section, { edge, angle }, lean) - setoff;
  const off = short(guess);
  if (Math.abs(off) < 1e-12) return guess;
  const [lo, hi] = [guess - 2 * Math.abs(off), guess + 2 * Math.abs(off)];
  return short(lo) * short(hi) < 0 ? root(short, lo, hi) : guess;
};
