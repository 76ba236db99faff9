import { text } from '../text/index.ts';
import { mapItems, type MappedBlade, type MapWords } from './blade-map.ts';
import { bounds, move, TEXT } from './items.ts';
import { fittedTable, heading, paragraph, pour, space, type Strip } from './layout.ts';
import { POURED_WIDTH as WIDTH, pouredSheets, roomOf } from './poured.ts';
import type { Sheet } from './sheet.ts';
import type { TitleBlock } from './title-block.ts';

/** One blade as the belt leaves it: plain values, worded and formatted by the sheet. */
export interface GroundSheetData {
  /** Makes the sheet's name in the package. */
  readonly id: string;
  readonly title: string;
  /** What it rests on, in a line under the title. */
  readonly standing: string;
  readonly maps: readonly { readonly map: MappedBlade; readonly words: MapWords }[];
  /** What the table of places is called. */
  readonly places: string;
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

const body = ({
  title,
  standing,
  maps,
  places,
  heads,
  rows,
  notes,
  more,
}: GroundSheetData): Strip[] => [
  paragraph(title, WIDTH, { height: TEXT.heading, bold: true, keep: true }),
  paragraph(standing, WIDTH, { keep: true }),
  space(2),
  ...maps.map(({ map, words }) => hung(map, words)),
  heading(places, WIDTH),
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
  const { id, title } = data;
  const info = { id, title, documentType: text.drawing.documentTypes.ground };
  return pouredSheets(pour(body(data), [roomOf(info, block)]), info, block);
};
