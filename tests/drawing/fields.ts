import type { Item, Sheet } from '../../src/drawing/sheet.ts';
import { linearsOf } from './reader.ts';

/** What is wrong on a part's sheet for whoever has to make it, from the sheet alone. */

type Text = Extract<Item, { kind: 'text' }>;

const textsOf = (sheet: Sheet): Text[] =>
  sheet.items.filter((item): item is Text => item.kind === 'text');

/** Fields of ISO 7200 (mandatory ones and those of its list that a workshop uses). */
const ISO_7200 = [
  'Legal owner',
  'Identification number',
  'Date of issue',
  'Title',
  'Approved by',
  'Created by',
  'Document type',
  'Rev.',
  'Sheet',
  'Supplementary title',
] as const;
/** They are left empty for whoever signs the drawing. */
const BY_HAND = ['Legal owner', 'Date of issue', 'Approved by', 'Created by'] as const;
/** What a shop needs beside them. */
const SHOP = ['Material', 'Quantity', 'Finish', 'General tolerances', 'Edges', 'Units', 'Scale'];

/** ISO 5455: enlargements, full size and reductions of the series. */
const SCALES = ['10:1', '5:1', '2:1', '1:1', '1:2', '1:5', '1:10', '1:20', '1:50'];

/** What is written under the name of a field, in its cell; undefined where there is no field. */
export const fieldOf = (sheet: Sheet, name: string): string | undefined => {
  const texts = textsOf(sheet);
  const head = texts.filter((t) => t.text === name && !t.bold).sort((a, b) => a.at[1] - b.at[1])[0];
  if (!head) return undefined;
  // The cell is the smallest rectangle of the title block around its name.
  const cells = sheet.items.flatMap((item) => {
    if (item.kind !== 'polyline') return [];
    const [xs, ys] = [item.points.map((p) => p[0]), item.points.map((p) => p[1])];
    const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    const isAround = head.at[0] > x0 && head.at[0] < x1 && head.at[1] > y0 && head.at[1] < y1;
    return isAround ? [{ x0, x1, y0, y1, area: (x1 - x0) * (y1 - y0) }] : [];
  });
  const [cell] = cells.sort((a, b) => a.area - b.area);
  if (!cell) return undefined;
  return texts
    .filter(
      (t) =>
        t !== head &&
        t.at[0] > cell.x0 &&
        t.at[0] < cell.x1 &&
        t.at[1] > cell.y0 &&
        t.at[1] < cell.y1,
    )
    .sort((a, b) => b.at[1] - a.at[1])
    .map((t) => t.text)
    .join(' ');
};

/** Whether two circles about one centre and a cone beside them stand under "Projection". */
const hasProjection = (sheet: Sheet): boolean => {
  const head = textsOf(sheet).find((t) => t.text === 'Projection');
  if (!head) return false;
  const near = sheet.items.flatMap((item) =>
    item.kind === 'circle' &&
    item.centre[0] > head.at[0] &&
    item.centre[0] < head.at[0] + 50 &&
    Math.abs(item.centre[1] - head.at[1]) < 10
      ? [item]
      : [],
  );
  const [one, other] = near;
  return (
    near.length === 2 &&
    one !== undefined &&
    other !== undefined &&
    one.centre[0] === other.centre[0] &&
    one.centre[1] === other.centre[1] &&
    one.radius !== other.radius
  );
};

/** Everything that is missing or contradicts itself on a sheet of a part. */
export const defects = (sheet: Sheet): string[] => {
  const field = (name: string): string => fieldOf(sheet, name) ?? '';
  const scale = field('Scale');
  const [drawn, real] = scale.split(':').map(Number);
  const k = (drawn ?? NaN) / (real ?? NaN);
  // A detail has a scale of its own, written with its letter (ISO 128-3).
  const details = textsOf(sheet).flatMap(({ text }) => {
    const [, scaleOf] = /^[A-Z] \((\d+:1)\)$/.exec(text) ?? [];
    return scaleOf === undefined ? [] : [scaleOf];
  });
  const factors = [k, ...details.map((detail) => Number(detail.split(':')[0]))];
  const wrong = linearsOf(sheet.items).filter(({ from, to, value }) =>
    factors.every((f) => Math.abs((to - from) / f - value) > 0.006 / Math.min(1, f)),
  );
  const thickness = field('Thickness') || field('Height') || field('Length');
  return [
    ...ISO_7200.filter((name) => fieldOf(sheet, name) === undefined).map((n) => `no field ${n}`),
    ...[...ISO_7200, ...SHOP]
      .filter((name) => !BY_HAND.some((other) => other === name) && field(name) === '')
      .map((name) => `${name} is empty`),
    ...(Number(thickness) > 0 ? [] : ['no thickness or height']),
    ...(/^[1-9]\d*$/.test(field('Quantity')) ? [] : ['no quantity']),
    // ISO 2768-1: f, m, c or v.
    ...(/^ISO 2768-[fmcv]/.test(field('General tolerances')) ? [] : ['no tolerance class']),
    // ISO 13715: minus is material taken off an outer edge; a print's edges are as they come.
    ...(/^(ISO 13715: −\d+(\.\d+)?\/−\d+(\.\d+)?|as printed)$/.test(field('Edges'))
      ? []
      : ['no edge condition']),
    ...(field('Units') === 'mm' ? [] : ['no units']),
    ...[scale, ...details].flatMap((one) =>
      SCALES.includes(one) ? [] : [`scale ${one} is not of the series`],
    ),
    ...(hasProjection(sheet) ? [] : ['no projection symbol']),
    ...wrong.map(({ value }) => `${String(value)} is not drawn to scale`),
  ];
};
