import type { BeltSection } from '../../family/family.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import {
  reading,
  sound,
  type Measure,
  type Picture,
  type PictureLabel,
  type PictureLine,
} from '../draw/picture.ts';

const middle = (a: Vec2, b: Vec2): Vec2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

type SectionLine = BeltSection['lines'][number];

/** Ways from a tall shape to its name, mm. */
const BESIDE = 3;

/** A wide shape is named inside; a tall one beside itself; a belt at its upper end. */
const labelOf = ({ label, points, role }: SectionLine): PictureLabel[] => {
  if (label === undefined || points.length === 0) return [];
  const x = points.map((p) => p[0]);
  const y = points.map((p) => p[1]);
  const [low, high] = [Math.min(...y), Math.max(...y)];
  const [left, right] = [Math.min(...x), Math.max(...x)];
  if (role === 'belt')
    return [{ at: [right + BESIDE, high - BESIDE], text: label, anchor: 'start' }];
  if (right - left > high - low)
    return [
      { at: [(left + right) / 2, (low + high) / 2], text: label, anchor: 'middle', level: true },
    ];
  const at: Vec2 = [(left + right) / 2 + BESIDE, low + (high - low) * 0.6];
  return [{ at: role === 'push' ? [right + BESIDE, at[1]] : at, text: label, anchor: 'start' }];
};

/** The section at the belt as the fixture family states it, dimensions as readings. */
export const beltSection = (section: BeltSection): Picture => {
  const box = section.lines.flatMap((line) => line.points);
  const centre = {
    x: box.reduce((sum, p) => sum + p[0], 0) / Math.max(1, box.length),
    y: box.reduce((sum, p) => sum + p[1], 0) / Math.max(1, box.length),
  };
  return sound({
    name: section.title,
    lines: [
      ...section.lines.map(({ points, closed, role }): PictureLine => ({ points, closed, role })),
      ...section.dimensions
        .filter(({ direction }) => direction === 'aligned')
        .map(({ from, to }): PictureLine => ({ points: [from, to], closed: false, role: 'fine' })),
    ],
    discs: [],
    labels: section.lines.flatMap(labelOf),
    measures: section.dimensions.map(({ from, to, direction, text }, i): Measure => {
      const at = middle(from, to);
      const along = direction === 'horizontal' ? 'x' : direction === 'vertical' ? 'y' : 'at';
      const high = along === 'x' ? at[1] > centre.y : at[0] > centre.x;
      return {
        ...reading(`dimension-${i}`, text, 0, 'mm', {
          from: along === 'at' ? at : from,
          to: along === 'at' ? at : to,
          along,
          side: high ? 'high' : 'low',
        }),
        said: text,
      };
    }),
  });
};
