import type { BeltSection } from '../../family/family.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { reading, sound, type Measure, type Picture, type PictureLine } from '../draw/picture.ts';

const middle = (a: Vec2, b: Vec2): Vec2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

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
    labels: section.lines.flatMap(({ label, points }) => {
      const [first] = points;
      return label === undefined || first === undefined
        ? []
        : [{ at: first, text: label, anchor: 'start' as const }];
    }),
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
