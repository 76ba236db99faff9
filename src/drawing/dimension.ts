import { cos } from '../core/trigonometry.ts';
import { plain, radians } from '../core/units.ts';
import { angleOf, onCircle } from '../geometry/arc.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { fill, hasDescender, label, line, TEXT } from './items.ts';
import type { Item } from './sheet.ts';
import { textWidth } from './text-width.ts';

/** ISO 129-1: filled arrowheads of 30 degrees; about as long as the figures are high, mm. */
const ARROW = 3;
const ARROW_ANGLE = 30;
/** Extension lines run this far beyond the dimension line, and values stand this far above it, mm. */
export const BEYOND = 2;
export const ABOVE = 1.2;
/** Space between a contour and the line that extends it, mm. */
export const GAP = 1;

/**
 * A length as written on a drawing: hundredths of a millimetre where they say it exactly (to
 * 0.0005), else thousandths, so that the written value is never 0.001 off.
 */
export const dimensionText = (value: number): string => {
  const hundredths = plain(value, 2);
  return Math.abs(Number(hundredths) - value) <= 5e-4 ? hundredths : plain(value, 3);
};

/** An arrowhead with its point at `tip`, coming from the direction `from` (degrees). */
export const arrow = (tip: Vec2, from: number): Item => {
  const length = ARROW / cos(radians(ARROW_ANGLE / 2));
  return fill(
    [
      tip,
      onCircle(tip, length, from + ARROW_ANGLE / 2),
      onCircle(tip, length, from - ARROW_ANGLE / 2),
    ],
    'ink',
  );
};

/** A linear dimension: from `a` to `b` on the paper, measured along x or along y. */
export interface Linear {
  readonly axis: 'x' | 'y';
  readonly a: Vec2;
  readonly b: Vec2;
  /** Where the dimension line stands: its y for axis x, its x for axis y. */
  readonly at: number;
  readonly text: string;
  /** Which end a value stands beyond that finds no room between the arrows; the higher one. */
  readonly beyond?: 'low' | 'high';
  /** How far a value between the arrows stands from the middle, mm. */
  readonly aside?: number;
  /** Whether the value stands beyond an end although there is room between the arrows. */
  readonly isOutside?: boolean;
}

/**
 * A linear dimension by ISO 129-1: value above its line, upright ones to be read from the right.
 * Where value and arrows do not fit between the extension lines both stand outside, the value
 * beyond one end.
 */
export const linear = (dimension: Linear): Item[] => {
  const { axis, a, b, at, text, beyond = 'high', aside = 0 } = dimension;
  // Drawn level in (along, across); upright ones are turned on the way out.
  const put = (along: number, across: number): Vec2 =>
    axis === 'x' ? [along, across] : [across, along];
  const turn = (angle: number): number => (axis === 'x' ? angle : 90 - angle);
  const measured = ([x, y]: Vec2): number => (axis === 'x' ? x : y);
  const [low, high] = measured(a) <= measured(b) ? [a, b] : [b, a];
  const from = measured(low);
  const to = measured(high);
  const span = to - from;
  const width = textWidth(text, TEXT.normal);
  const arrowsInside = span >= 2 * ARROW + 1;
  const textInside = dimension.isOutside !== true && span >= width + (arrowsInside ? 2 : 1);
  const extension = (p: Vec2): Item => {
    const foot = axis === 'x' ? p[1] : p[0];
    const along = measured(p);
    const way = Math.sign(at - foot) || 1;
    return line(put(along, foot + way * GAP), put(along, at + way * BEYOND), 'dimension');
  };
  const tail = 2 * ARROW;
  const clear = arrowsInside ? 2.5 : tail / 2 + 1;
  const outer = clear + width / 2;
  const outside = beyond === 'high' ? to + outer : from - outer;
  const textAt = textInside ? (from + to) / 2 + aside : outside;
  const reach = (way: 'low' | 'high'): number =>
    Math.max(arrowsInside ? 0 : tail, !textInside && beyond === way ? clear + width + 0.5 : 0);
  const start = from - reach('low');
  const stop = to + reach('high');
  // Upright values stand to the left of their line, which is above it when read from the right.
  const rise = ABOVE + (hasDescender(text) ? 0.9 : 0);
  const text0 = axis === 'x' ? put(textAt, at + rise) : put(textAt, at - rise);
  return [
    extension(low),
    extension(high),
    line(put(start, at), put(stop, at), 'dimension'),
    arrow(put(from, at), turn(arrowsInside ? 0 : 180)),
    arrow(put(to, at), turn(arrowsInside ? 180 : 0)),
    label(text0, text, { align: 'centre', angle: axis === 'x' ? 0 : 90 }),
  ];
};

/** A leader with an arrow at `tip`, a bend, and a text above its level end. */
export const leader = (
  tip: Vec2,
  bend: Vec2,
  text: string,
  height: number = TEXT.normal,
): Item[] => {
  const way = bend[0] >= tip[0] ? 1 : -1;
  const end: Vec2 = [bend[0] + way * (textWidth(text, height) + 1), bend[1]];
  return [
    arrow(tip, angleOf([bend[0] - tip[0], bend[1] - tip[1]])),
    line(tip, bend, 'dimension'),
    line(bend, end, 'dimension'),
    label([(bend[0] + end[0]) / 2, bend[1] + ABOVE], text, { align: 'centre', height }),
  ];
};
