import { digits, rounded } from '../entry/format.ts';
import type { Display } from '../entry/unit.ts';
import type { Measure } from './picture.ts';

/** Width of a character and of the blank around a label, px. */
const CHARACTER = 8.2;
const BLANK = 12;
/** Least length of a label as something to tap, px. */
const LEAST = 44;
/** What an arrow outside its dimension takes, and one inside, px. */
export const OUTSIDE = 16;
const INSIDE = 11;

/** A dimension in its row; places are px along the row. */
export interface Row {
  readonly measure: Measure;
  readonly text: string;
  /** Length of the label as something to tap. */
  readonly length: number;
  /** Middle of the label. */
  readonly at: number;
  /** Everything it takes. */
  readonly low: number;
  readonly high: number;
  readonly arrows: 'inside' | 'outside' | 'none';
  /** Length of the dimension itself. */
  readonly span: number;
  readonly row: number;
}

/** Lengths stand without their unit, as on a drawing; it is stated once. */
export const measureText = (measure: Measure, display: Display): string => {
  const { value, unit } = measure;
  const body =
    unit === 'mm'
      ? digits(Number(value.toFixed(display === 'mm' ? 2 : 4)), unit, display)
      : rounded(value, unit, display);
  return `${measure.mark ?? ''}${body}`;
};

const fitted = (measure: Measure, display: Display, along: (point: number) => number) => {
  const axis = measure.along === 'y' ? 1 : 0;
  const a = along(measure.from[axis]);
  const b = along(measure.to[axis]);
  const low = Math.min(a, b);
  const high = Math.max(a, b);
  const span = high - low;
  const text = measureText(measure, display);
  const ink = text.length * CHARACTER + BLANK;
  const length = Math.max(LEAST, ink);
  const label = (at: number, from: number, to: number, arrows: Row['arrows']) => ({
    measure,
    text,
    length,
    span,
    at,
    low: Math.min(from, at - length / 2),
    high: Math.max(to, at + length / 2),
    arrows,
  });
  const middle = (low + high) / 2;
  if (span < 0.5) return label(middle, low, high, 'none');
  if (span >= ink + 2 * INSIDE) return label(middle, low, high, 'inside');
  if (span >= ink) return label(middle, low - OUTSIDE, high + OUTSIDE, 'outside');
  // Too short for its figure: the figure stands beyond the upper or left end.
  const at = low - OUTSIDE - length / 2;
  return label(at, at - length / 2, high + OUTSIDE, 'outside');
};

/**
 * Rows for the dimensions of one side of a drawing: short ones next to it, each in the first row
 * where it meets no other. `along` turns mm into px along the row.
 */
export const rowsOf = (
  measures: readonly Measure[],
  display: Display,
  along: (point: number) => number,
): Row[] => {
  const taken: { low: number; high: number }[][] = [];
  return measures
    .map((measure) => fitted(measure, display, along))
    .sort((a, b) => a.span - b.span || a.measure.key.localeCompare(b.measure.key))
    .map((fit) => {
      const free = taken.findIndex((row) =>
        row.every((other) => fit.high <= other.low || other.high <= fit.low),
      );
      const row = free < 0 ? taken.length : free;
      (taken[row] ??= []).push(fit);
      return { ...fit, row };
    });
};

export const rowCount = (rows: readonly Row[]): number =>
  Math.max(0, ...rows.map(({ row }) => row + 1));
