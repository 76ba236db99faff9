import type { Part, Placement } from '../model/part.ts';
import { text } from '../text/index.ts';
import { COLUMN } from './arrange.ts';
import { fittedTable, heading, space, type Strip } from './layout.ts';
import { thicknessOf } from './part-sheets.ts';
import type { Numbered } from './pictures.ts';

/** An item of the parts list. */
export interface Row extends Numbered {
  readonly part: Part;
}

/** Every part is an item: those that are made before those that are bought. */
export const rowsOf = (parts: readonly Part[], placements: readonly Placement[]): Row[] => {
  const made = parts.filter((part) => part.kind !== 'hardware');
  const bought = parts.filter((part) => part.kind === 'hardware');
  return [...made, ...bought].map((part, i) => ({
    item: String(i + 1),
    part,
    placed: new Set(placements.filter((p) => p.part === part.id).map((p) => p.name)),
  }));
};

const materialOf = (part: Part): string => {
  if (part.kind === 'hardware') return part.designation;
  if (part.kind === 'stock') return `${part.material}, ${part.section}`;
  return part.kind === 'plate'
    ? text.drawing.partsList.sheet(part.material, thicknessOf(part))
    : part.material;
};

/** The parts list; `files` by part id. */
export const partsList = (rows: readonly Row[], files: ReadonlyMap<string, string>): Strip[] => {
  const t = text.drawing.partsList;
  const heads = [
    { title: t.item, align: 'right' },
    { title: t.name, align: 'left' },
    { title: t.quantity, align: 'right' },
    { title: t.material, align: 'left' },
    { title: t.file, align: 'left' },
  ] as const;
  const cells = rows.map(({ item, part }) => [
    item,
    part.name,
    String(part.quantity),
    materialOf(part),
    files.get(part.id) ?? (part.kind === 'hardware' ? t.bought : t.drawing),
  ]);
  return [heading(t.title, COLUMN), ...fittedTable(heads, cells, COLUMN), space(3)];
};
