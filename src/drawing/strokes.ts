import type { Stroke } from './sheet.ts';

/** How a line is drawn: its width and the lengths of its dashes and gaps in turn, mm. */
export interface StrokeStyle {
  readonly width: number;
  /** Empty for a continuous line. */
  readonly dashes: readonly number[];
}

const WIDE = 0.5;
const NARROW = 0.25;

/**
 * Line widths and types by ISO 128, line group 0.5 (wide 0.5, narrow 0.25): 01.2 visible edges,
 * 02.1 dashed hidden edges, 04.1 long-dash dot centre lines, 05.1 long-dash double-dot neighbours,
 * 01.1 the rest. Dash lengths in line widths: dash 12, gap 3, long dash 24, dot 0.5. Frame and
 * grid widths are those of ISO 5457.
 */
export const STROKES: Readonly<Record<Stroke, StrokeStyle>> = {
  visible: { width: WIDE, dashes: [] },
  hidden: { width: NARROW, dashes: [12 * NARROW, 3 * NARROW] },
  centre: { width: NARROW, dashes: [24, 3, 0.5, 3].map((n) => n * NARROW) },
  phantom: { width: NARROW, dashes: [24, 3, 0.5, 3, 0.5, 3].map((n) => n * NARROW) },
  dimension: { width: NARROW, dashes: [] },
  hatch: { width: NARROW, dashes: [] },
  cut: { width: NARROW, dashes: [] },
  table: { width: 0.35, dashes: [] },
  frame: { width: 0.7, dashes: [] },
};
