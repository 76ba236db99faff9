import type { Vec2 } from '../../geometry/vector.ts';
import { shapeOf } from '../../blade/shape.ts';
import type { Blade, Outline } from '../../blade/schema.ts';
import type { Traced } from '../../outline/trace.ts';
import { text } from '../../text/index.ts';
import { sound, type Picture } from '../draw/picture.ts';
import { sideView } from './blade.ts';

const words = text.outline;
/** Most corners of the file's contour that are drawn. */
const MOST = 1500;

const down = ([u, v]: Vec2): Vec2 => [u, -v];

const thinned = (points: readonly Vec2[]): readonly Vec2[] => {
  const every = Math.ceil(points.length / MOST);
  return points.filter((_, i) => i % every === 0);
};

/** The contour of a file under the outline that would be taken; x = u, y = -v. */
export const outlinePicture = (blade: Blade, traced: Traced, outline: Outline): Picture => {
  const shape = shapeOf({ ...blade, ricasso: 0, outline });
  const [tip, heel]: [Vec2, Vec2] = [traced.edge.at(-1) ?? [0, 0], traced.edge[0] ?? [0, 0]];
  const middle = traced.length / 2;
  return sound({
    name: words.picture,
    lines: [
      { points: thinned(traced.contour).map(down), closed: true, role: 'blade' },
      { points: sideView(shape), closed: true, role: 'ground' },
      {
        points: [
          [0, 8],
          [0, -heel[1] - 8],
        ],
        closed: false,
        role: 'centre',
      },
    ],
    discs: [{ centre: down(tip), radius: traced.length / 150, role: 'mark' }],
    labels: [
      {
        at: [middle, -shape.spine.value(middle)],
        text: words.spineName,
        anchor: 'middle',
        above: true,
      },
      { at: [middle, -shape.edge.value(middle) + 2], text: words.edgeName, anchor: 'middle' },
      { at: down(tip), text: words.tipName, anchor: 'end', above: true },
      { at: [1.5, 5], text: words.plungeName, anchor: 'start', level: true },
    ],
    measures: [],
  });
};
