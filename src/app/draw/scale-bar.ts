import { MM_PER_INCH } from '../../core/units.ts';
import type { Display } from '../entry/unit.ts';

/** The longest round length (mm) that is at most `most` mm: 1, 2, 5 times a power of ten; in inches halves below one. */
export const roundLength = (most: number, display: Display): number => {
  const unit = display === 'mm' ? 1 : MM_PER_INCH;
  const room = most / unit;
  if (display !== 'mm' && room < 1) return unit * 2 ** Math.floor(Math.log2(room));
  const decade = 10 ** Math.floor(Math.log10(room));
  const digit = [5, 2, 1].find((d) => d * decade <= room) ?? 1;
  return digit * decade * unit;
};
