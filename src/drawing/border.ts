import type { Vec2 } from '../geometry/vector.ts';
import { frameItem, label, line } from './items.ts';
import { sizeOf, spaceOf, type Paper } from './paper.ts';
import type { Item } from './sheet.ts';

/** Distance of the grid border outside the frame, and length of a grid field (ISO 5457), mm. */
const STRIP = 5;
const FIELD = 50;
/** Length of a centring mark inside the frame, mm. */
const MARK = 5;
/** I and O are left out: they look like figures. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** Limits of the fields along one side, counted from the centring mark outwards. */
const fields = (low: number, high: number, centre: number): number[] => {
  const half = Math.ceil((Math.max(centre - low, high - centre) - FIELD / 2) / FIELD);
  const inner = Array.from({ length: 2 * half - 1 }, (_, i) => centre + (i + 1 - half) * FIELD);
  return [low, ...inner.filter((v) => v > low + STRIP && v < high - STRIP), high];
};

/**
 * Frame, grid border with its fields and centring marks of a drawing sheet by ISO 5457: fields of
 * 50 mm from the centring marks, lettered downwards and numbered to the right.
 */
export const border = (paper: Paper): Item[] => {
  const [width, height] = sizeOf(paper);
  const space = spaceOf(paper);
  const grid = {
    x0: space.x0 - STRIP,
    y0: space.y0 - STRIP,
    x1: space.x1 + STRIP,
    y1: space.y1 + STRIP,
  };
  const middle: Vec2 = [width / 2, height / 2];
  const columns = fields(space.x0, space.x1, middle[0]);
  const rows = fields(space.y0, space.y1, middle[1]).reverse();
  const letter = (at: Vec2, text: string): Item =>
    label([at[0], at[1] - 1.75], text, { align: 'centre' });
  const between = (list: readonly number[], i: number): number =>
    ((list[i] ?? 0) + (list[i + 1] ?? 0)) / 2;
  // On an upright sheet the title block fills the foot: the mark stops at the frame.
  const foot = paper.orientation === 'portrait' ? 0 : MARK;
  const top = space.y1 + STRIP / 2;
  const bottom = space.y0 - STRIP / 2;
  const left = space.x0 - STRIP / 2;
  const right = space.x1 + STRIP / 2;
  return [
    frameItem(space, 'frame'),
    frameItem(grid, 'table'),
    ...columns
      .slice(1, -1)
      .filter((x) => x !== middle[0])
      .flatMap((x) => [
        line([x, space.y1], [x, grid.y1], 'table'),
        line([x, grid.y0], [x, space.y0], 'table'),
      ]),
    ...rows
      .slice(1, -1)
      .filter((y) => y !== middle[1])
      .flatMap((y) => [
        line([space.x1, y], [grid.x1, y], 'table'),
        line([grid.x0, y], [space.x0, y], 'table'),
      ]),
    line([middle[0], grid.y1], [middle[0], space.y1 - MARK], 'frame'),
    line([middle[0], grid.y0], [middle[0], space.y0 + foot], 'frame'),
    line([grid.x0, middle[1]], [space.x0 + MARK, middle[1]], 'frame'),
    line([grid.x1, middle[1]], [space.x1 - MARK, middle[1]], 'frame'),
    ...columns.slice(1).flatMap((_, i) => {
      const name = String(i + 1);
      return [
        letter([between(columns, i), top], name),
        letter([between(columns, i), bottom], name),
      ];
    }),
    ...rows.slice(1).flatMap((_, i) => {
      const name = LETTERS[i] ?? '';
      return [letter([left, between(rows, i)], name), letter([right, between(rows, i)], name)];
    }),
  ];
};
