import type { Part } from '../model/part.ts';
import { text } from '../text/index.ts';
import { dimensionText } from './dimension.ts';
import { depthText, sizeText } from './hole-rows.ts';
import { heading, space, table, type Column, type Strip } from './layout.ts';
import { crossHolesOf, datumOf } from './part-views.ts';

const column = (title: string, width: number, align: Column['align'] = 'left'): Column => ({
  title,
  width,
  align,
});

/** Every hole with its place from the datum, size, depth or thread, and purpose. */
export const holeTable = (part: Part, width: number): Strip[] => {
  if (part.kind === 'hardware' || part.holes.length === 0) return [];
  const t = text.drawing.holes;
  const { at } = datumOf(part);
  const columns = [
    column(t.columns.id, 14),
    column(t.columns.x, 19, 'right'),
    column(t.columns.y, 19, 'right'),
    column(t.columns.size, 34),
    column(t.columns.depth, 30),
    column(t.columns.purpose, width - 116),
  ];
  const rows = part.holes.map((hole) => [
    hole.id,
    dimensionText(hole.at[0] - at[0]),
    dimensionText(hole.at[1] - at[1]),
    sizeText(hole),
    depthText(hole, part.layers),
    hole.purpose,
  ]);
  return [heading(t.title, width), ...table(columns, rows), space(2)];
};

/** The holes drilled into the front and left faces of a stock part. */
export const crossHoleTable = (part: Part, width: number): Strip[] => {
  const holes = crossHolesOf(part);
  if (holes.length === 0) return [];
  const t = text.drawing.holes;
  const { at, foot } = datumOf(part);
  const columns = [
    column(t.columns.id, 14),
    column(t.columns.face, 16),
    column(t.columns.along, 19, 'right'),
    column(t.columns.up, 19, 'right'),
    column(t.columns.size, 18),
    column(t.columns.depth, 30),
    column(t.columns.purpose, width - 116),
  ];
  const rows = holes.map((hole) => {
    const depth = hole.depth === 'through' ? t.through : t.blind(dimensionText(hole.depth));
    return [
      hole.id,
      t.face[hole.face],
      dimensionText(hole.at[0] - (hole.face === 'y' ? at[0] : at[1])),
      dimensionText(hole.at[1] - foot),
      t.diameter(dimensionText(hole.size)),
      hole.thread === undefined ? depth : t.tapped(hole.thread, depth),
      hole.purpose,
    ];
  });
  return [heading(t.crossTitle, width), ...table(columns, rows), space(2)];
};
