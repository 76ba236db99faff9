import { placeAt, type Blade } from '../../src/family/index.ts';
import type { Needs, Range } from './needs.ts';
import type { Stand } from './site.ts';

/** From the least to the greatest of some lengths. */
export const rangeOf = (values: readonly number[]): Range => ({
  min: Math.min(...values),
  max: Math.max(...values),
});

/** What the collar meets on one blade between two distances behind the plunge (u, negative). */
export const behindOf = (blade: Blade, from: number, to: number): Needs['behind'] => {
  const { ricasso, tang } = blade;
  const pieces: Needs['behind'][] = [];
  if (to > -ricasso) {
    const { height, thickness, spine } = placeAt(blade, Math.max(from, -ricasso));
    pieces.push({ from: spine[1], to: spine[1] + height, thickness });
  }
  if (from < -ricasso) {
    pieces.push({ from: tang.drop, to: tang.drop + tang.height, thickness: tang.thickness });
  }
  return joined(pieces);
};

/** One piece that encloses all of these. */
export const joined = (pieces: readonly Needs['behind'][]): Needs['behind'] => ({
  from: Math.min(...pieces.map((p) => p.from)),
  to: Math.max(...pieces.map((p) => p.to)),
  thickness: Math.max(...pieces.map((p) => p.thickness)),
});

/** Shifts of the base in the seat frame, one a stand, about the middle of their range. */
export const shiftsOf = (stands: readonly Stand[]): { middle: number; shifts: number[] } => {
  const { min, max } = rangeOf(stands.map(({ offset }) => offset));
  const middle = (min + max) / 2;
  return { middle, shifts: stands.map(({ offset }) => offset - middle) };
};
