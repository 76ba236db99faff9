import { text } from '../text/index.ts';
import { border } from './border.ts';
import { mapItems, type MappedBlade, type MapWords } from './blade-map.ts';
import { bounds, move, TEXT } from './items.ts';
import { fittedTable, heading, paragraph, pour, space, stack, type Strip } from './layout.ts';
import { page, sizeOf, spaceOf } from './paper.ts';
import type { Sheet } from './sheet.ts';
import {
  BLOCK_WIDTH,
  titleBlock,
  titleBlockHeight,
  type SheetInfo,
  type TitleBlock,
} from './title-block.ts';

/** One blade as the belt leaves it: plain values, worded and formatted by the sheet. */
export interface GroundSheetData {
  /** Makes the sheet's name in the package. */
  readonly id: string;
  readonly title: string;
  /** What it rests on, in a line under the title. */
  readonly standing: string;
  readonly maps: readonly { readonly map: MappedBlade; readonly words: MapWords }[];
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly notes: readonly string[];
  /** A second table with notes of its own, under the first. */
  readonly more?: {
    readonly title: string;
    readonly heads: readonly string[];
    readonly rows: readonly (readonly string[])[];
    readonly notes: readonly string[];
  };
}

const INSET = 6;
const WIDTH = BLOCK_WIDTH - 2 * INSET;

/** Items hung under y = 0, with a little air below. */
const hung = (map: MappedBlade, words: MapWords): Strip => {
  const items = mapItems(map, words, WIDTH);
  const { x0, y0, y1 } = bounds(items);
  return { height: y1 - y0 + 5, items: move(items, [Math.max(0, -x0), -y1]), keep: false };
};

const numbers = (heads: readonly string[], rows: readonly (readonly string[])[]): Strip[] =>
  fittedTable(
    heads.map((head) => ({ title: head, align: 'right' as const })),
    rows,
    WIDTH,
  );

const body = ({ title, standing, maps, heads, rows, notes, more }: GroundSheetData): Strip[] => [
  paragraph(title, WIDTH, { height: TEXT.heading, bold: true, keep: true }),
  paragraph(standing, WIDTH, { keep: true }),
  space(2),
  ...maps.map(({ map, words }) => hung(map, words)),
  ...numbers(heads, rows),
  ...(more
    ? [
        space(2),
        heading(more.title, WIDTH),
        ...numbers(more.heads, more.rows),
        ...more.notes.map((note) => paragraph(note, WIDTH)),
      ]
    : []),
  space(2),
  heading(text.drawing.notes.title, WIDTH),
  ...notes.map((note, i) => paragraph(note, WIDTH, { mark: String(i + 1), indent: 6 })),
];

/** The maps of a ground blade with its places, poured over as many pages as it takes. */
export const groundSheets = (data: GroundSheetData, block: TitleBlock): Sheet[] => {
  const paper = page(block.paper);
  const area = spaceOf(paper);
  const info = (sheet: number, sheets: number): SheetInfo => ({
    title: data.title,
    documentType: text.drawing.documentTypes.ground,
    number: `${block.designId}-${data.id}`,
    sheet,
    sheets,
  });
  const room = area.y1 - area.y0 - titleBlockHeight(block, info(1, 1)) - 2 * INSET;
  const pages = pour(body(data), [room]);
  return pages.map((strips, i) => ({
    id: `${data.id}-${String(i + 1)}`,
    title: data.title,
    size: sizeOf(paper),
    items: [
      ...border(paper),
      ...titleBlock(paper, block, info(i + 1, pages.length)),
      ...stack(strips, [area.x1 - BLOCK_WIDTH + INSET, area.y1 - INSET]),
    ],
  }));
};
