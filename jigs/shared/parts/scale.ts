import type { Vec2 } from '../../../src/family/index.ts';
import type { Context } from './context.ts';

/** Place of the index along y, in the plan: beside the step, behind the guide's front. */
const indexY = ({ l, v }: Context): number =>
  v.guide === 'strips'
    ? (l.slide.keepers[0] + l.slide.keepers[1]) / 2
    : (l.packer.front + l.slide.lockY) / 2;

/** The index beside the right edge of the step: a short line, part coordinates. */
export const indexLine = (c: Context, front: number): Vec2[][] => {
  const x = c.v.guide === 'strips' ? c.l.slide.strips.inner : c.l.slide.half;
  const y = indexY(c) - front;
  return [
    [
      [x + 0.5, y],
      [x + 6, y],
    ],
  ];
};

/** Millimetre ticks at the right edge of the step, the middle of its travel the longest. */
export const scale = (c: Context): Vec2[][] => {
  const { half, front, travel } = c.l.slide;
  const count = Math.ceil(travel);
  return Array.from({ length: 2 * count + 1 }, (_, i): Vec2[] => {
    const mark = i - count;
    const length = mark === 0 ? 8 : mark % 5 === 0 ? 6 : 3;
    const y = indexY(c) - front + mark;
    return [
      [half - 0.5 - length, y],
      [half - 0.5, y],
    ];
  });
};
