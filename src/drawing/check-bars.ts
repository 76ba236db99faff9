import { MM_PER_INCH } from '../core/units.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { text } from '../text/index.ts';
import { label, line, TEXT } from './items.ts';
import type { Item } from './sheet.ts';

/** Lengths of the bars, mm. */
export const CHECK_MM = 100;
export const CHECK_INCH = 4 * MM_PER_INCH;

/** Height of the ticks, distance of the two bars, mm. */
const TICK = 2;

const bar = (start: Vec2, length: number, ticks: number, axis: 'x' | 'y', name: string): Item[] => {
  const put = (along: number, across: number): Vec2 =>
    axis === 'x' ? [start[0] + along, start[1] + across] : [start[0] - across, start[1] + along];
  return [
    line(put(0, 0), put(length, 0), 'visible'),
    ...Array.from({ length: ticks + 1 }, (_, i) => {
      const tall = i === 0 || i === ticks ? TICK : TICK / 2;
      const at = (length * i) / ticks;
      return line(put(at, 0), put(at, tall), 'dimension');
    }),
    label(put(length / 2, TICK + 0.8), name, {
      height: TEXT.small,
      align: 'centre',
      angle: axis === 'x' ? 0 : 90,
    }),
  ];
};

/**
 * Bars of 100 mm and 4 in along one axis, with ticks each centimetre and each inch, to prove that
 * the page came out at its actual size; they take 15 mm across.
 */
export const checkBars = (start: Vec2, axis: 'x' | 'y'): Item[] => {
  const t = text.drawing.template;
  const second: Vec2 = axis === 'x' ? [start[0], start[1] + 7] : [start[0] - 7, start[1]];
  return [...bar(start, CHECK_MM, 10, axis, t.bar100), ...bar(second, CHECK_INCH, 4, axis, t.bar4)];
};
