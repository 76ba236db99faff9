import { cos } from '../core/trigonometry.ts';
import { blankColumn } from '../blade/section.ts';
import type { Side } from '../blade/schema.ts';
import type { Shape } from '../blade/shape.ts';

/**
 * A blade's two faces as height fields over the midplane. Columns stand at `us`; each holds `rows`
 * nodes from the spine to the edge, so that spine and edge are nodes whatever their curves. Node j
 * of column i is at index i * rows + j. All mm.
 */
export interface Field {
  readonly us: Float64Array;
  readonly rows: number;
  /** Nodes on the rounded spine corner and at its end, from the spine; 1 where it is sharp. */
  readonly spineRows: number;
  /** Place of each node across the blade, v. */
  readonly v: Float64Array;
  /** Half thickness of the blank at each node. */
  readonly stock: Float64Array;
  /** Distance of each face from the midplane, the blade's left positive w, its right negative. */
  readonly left: Float64Array;
  readonly right: Float64Array;
}

export interface Resolution {
  /** Spacing of the columns along the blade, mm. */
  readonly step: number;
  /** Nodes between spine corner and edge. */
  readonly rows: number;
}

/** Nodes on a rounded spine corner: a support on it is then found within 4e-4 of its radius. */
const CORNER = 16;

/** Places from `from` to `to`, `step` apart from `from` on, the last one `to` itself. */
const places = (from: number, to: number, step: number): number[] => {
  const whole = Math.ceil((to - from) / step - 1e-9);
  return Array.from({ length: whole + 1 }, (_, i) => (i < whole ? from + i * step : to));
};

/**
 * The unground blank of ricasso and blade. Columns stand on multiples of the step from the plunge,
 * so that the ends of a belt whose half width is such a multiple fall on columns; the bends of the
 * thickness have columns of their own.
 */
export const blankField = (shape: Shape, { step, rows: body }: Resolution): Field => {
  const { ricasso, spineRadius } = shape.blade;
  const behind = places(0, ricasso, step).map((u) => -u);
  const bends = shape.thickness.breaks.filter((u) => u > -ricasso && u < shape.length);
  const all = [...(ricasso > 0 ? behind : []), ...places(0, shape.length, step), ...bends];
  const us = Float64Array.from([...new Set(all.map((u) => u + 0))].sort((p, q) => p - q));
  const spineRows = spineRadius > 0 ? CORNER + 1 : 1;
  const rows = spineRows + body;
  const v = new Float64Array(us.length * rows);
  const stock = new Float64Array(us.length * rows);
  for (let i = 0; i < us.length; i += 1) {
    const { spine, edge, radius, half } = blankColumn(shape, us[i] as number);
    for (let j = 0; j < rows; j += 1) {
      // Nodes crowd at both ends of the quarter circle, where seat and step touch it.
      const turn = (Math.PI / 4) * (1 - cos((Math.PI * j) / CORNER));
      const at =
        j < spineRows
          ? spine + (spineRows > 1 ? radius * (1 - cos(turn)) : 0)
          : spine + radius + ((edge - spine - radius) * (j - spineRows + 1)) / body;
      v[i * rows + j] = at;
      stock[i * rows + j] = half(at);
    }
  }
  return { us, rows, spineRows, v, stock, left: stock.slice(), right: stock.slice() };
};

/** The same blade with one face replaced. */
export const withFace = (field: Field, side: Side, face: Float64Array): Field => ({
  ...field,
  [side]: face,
});

/** Index of the first column at or beyond u. */
export const columnFrom = ({ us }: Field, u: number): number => {
  let [lo, hi] = [0, us.length];
  while (lo < hi) {
    const middle = (lo + hi) >> 1;
    if ((us[middle] ?? Infinity) < u) lo = middle + 1;
    else hi = middle;
  }
  return lo;
};

/** Longest distance between columns that is one step of a curve, mm. */
export const shortOf = ({ us }: Field): number =>
  1.5 * us.reduce((most, u, i) => Math.max(most, u - (us[i - 1] ?? u)), 0);
