import type { Vec2 } from '../geometry/vector.ts';
import { heightOf, widthOf, type Box } from './box.ts';
import { circleItem, line } from './items.ts';
import { sizeOf, type Paper } from './paper.ts';
import type { Item } from './sheet.ts';

/** Margin that printers leave white, and the strips for the check bars, mm. */
export const MARGIN = 10;
export const STRIP = 18;
/** Neighbouring tiles show this much of each other, mm. */
const OVERLAP = 10;

/** Where a template shows on a page whose words take `header` mm at the top. */
export const windowOf = (paper: Paper, header: number): Box => {
  const [w, h] = sizeOf(paper);
  return { x0: MARGIN + STRIP, y0: MARGIN + STRIP, x1: w - MARGIN, y1: h - MARGIN - header };
};

/** Part of a template that one page shows; rows count upwards from the datum. */
export interface Tile {
  readonly row: number;
  readonly column: number;
  readonly area: Box;
}

export const tilesOf = (window: Box, extent: Box): Tile[] => {
  const [w, h] = [widthOf(window), heightOf(window)];
  const count = (length: number, room: number): number =>
    Math.max(1, Math.ceil((length - OVERLAP) / (room - OVERLAP)));
  const columns = count(widthOf(extent), w);
  const rows = count(heightOf(extent), h);
  return Array.from({ length: rows * columns }, (_, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const x0 = extent.x0 + column * (w - OVERLAP);
    const y0 = extent.y0 + row * (h - OVERLAP);
    return { row, column, area: { x0, y0, x1: x0 + w, y1: y0 + h } };
  });
};

const cross = ([x, y]: Vec2): Item[] => [
  line([x - 4, y], [x + 4, y], 'phantom'),
  line([x, y - 4], [x, y + 4], 'phantom'),
  circleItem([x, y], 2, 'dimension'),
];

/** Crosses in the overlap with each neighbour, at the same places on both pages. */
export const joinMarks = (tile: Tile, tiles: readonly Tile[]): Item[] => {
  const has = (right: number, up: number): boolean =>
    tiles.some((other) => other.row === tile.row + up && other.column === tile.column + right);
  const { x0, y0, x1, y1 } = tile.area;
  const half = OVERLAP / 2;
  const along = (low: number, high: number): number[] =>
    [0.25, 0.75].map((share) => low + share * (high - low));
  const upright = (x: number): Item[] => along(y0, y1).flatMap((y) => cross([x, y]));
  const level = (y: number): Item[] => along(x0, x1).flatMap((x) => cross([x, y]));
  return [
    ...(has(1, 0) ? upright(x1 - half) : []),
    ...(has(-1, 0) ? upright(x0 + half) : []),
    ...(has(0, 1) ? level(y1 - half) : []),
    ...(has(0, -1) ? level(y0 + half) : []),
  ];
};
