import type { Vec2 } from '../geometry/vector.ts';
import type { Part } from '../model/part.ts';
import { text } from '../text/index.ts';
import { border } from './border.ts';
import { heightOf, widthOf, type Box } from './box.ts';
import { dimensionText } from './dimension.ts';
import { crossHoleTable, holeTable } from './hole-table.ts';
import { bounds, move } from './items.ts';
import { heading, heightOfAll, paragraph, pour, stack, type Strip } from './layout.ts';
import { sizeOf, SHEETS, spaceOf, type Paper, type PaperFamily } from './paper.ts';
import { partViews } from './part-views.ts';
import { factor, FULL_SIZE, SCALES, type Scale } from './scales.ts';
import type { Item, Sheet } from './sheet.ts';
import {
  BLOCK_WIDTH,
  titleBlock,
  titleBlockHeight,
  type SheetInfo,
  type TitleBlock,
} from './title-block.ts';

/** Between the frame and anything in it: clears the centring marks. */
const INSET = 6;
/** Width of tables and notes, mm. */
const COLUMN = BLOCK_WIDTH - 2 * INSET;
/** An enlarged view is not made larger than this, mm. */
const ENLARGED = 110;

/** A sheet and a scale on it, in the order in which a shop would like to have them. */
interface Choice {
  readonly paper: Paper;
  readonly scale: Scale;
}

const choices = (family: PaperFamily, largest: number): Choice[] => {
  const [small, medium, large] = SHEETS[family];
  const at = (scale: Scale, ...papers: readonly (Paper | undefined)[]): Choice[] =>
    papers.flatMap((paper) => (paper ? [{ paper, scale }] : []));
  const enlarged = SCALES.filter((s) => factor(s) > 1 && factor(s) * largest <= ENLARGED);
  const [half, ...smaller] = SCALES.filter((s) => factor(s) < 1);
  // Half size on a sheet that many can print comes before full size on a large one.
  return [
    ...enlarged.flatMap((scale) => at(scale, small)),
    ...at(FULL_SIZE, small, medium),
    ...(half ? at(half, small, medium) : []),
    ...at(FULL_SIZE, large),
    ...(half ? at(half, large) : []),
    ...smaller.flatMap((scale) => at(scale, small, medium, large)),
  ];
};

const numbered = (notes: readonly string[], width: number): Strip[] => [
  heading(text.drawing.notes.title, width),
  ...notes.map((note, i) => paragraph(note, width, { mark: String(i + 1), indent: 6 })),
];

/** The notes every part drawing carries, after the part's own. */
const notesOf = (part: Part): string[] => [
  ...part.notes,
  ...part.tight.map(text.drawing.notes.tight),
  ...(part.kind === 'hardware' ? [] : [text.drawing.notes.datum]),
  ...(part.kind === 'plate' && part.process !== 'saw-drill' ? [text.drawing.notes.nominal] : []),
  ...(part.kind === 'print' ? [text.drawing.notes.print] : []),
  ...text.safety.drawing,
];

/** Where the views may stand, and where the first strip of table and notes hangs. */
interface Plan {
  readonly views: Box;
  readonly tables: Vec2;
  readonly notes: Vec2;
}

/** Places for views, table and notes on a sheet, or nothing where they do not fit. */
const arrange = (
  paper: Paper,
  views: Box,
  table: readonly Strip[],
  notes: readonly Strip[],
  block: number,
): Plan | undefined => {
  const s = spaceOf(paper);
  const [tableHeight, notesHeight] = [heightOfAll(table), heightOfAll(notes)];
  const fits = (box: Box): boolean =>
    widthOf(views) <= widthOf(box) && heightOf(views) <= heightOf(box);
  const inner = { x0: s.x0 + INSET, y0: s.y0 + INSET, x1: s.x1 - INSET, y1: s.y1 - INSET };
  const blockTop = s.y0 + block + INSET;
  const right = s.x1 - BLOCK_WIDTH + INSET;
  if (paper.orientation === 'portrait') {
    const noteTop = blockTop + notesHeight;
    const tableTop = noteTop + tableHeight + (tableHeight > 0 ? INSET : 0);
    const box = { ...inner, y0: tableTop + INSET };
    const plan = { views: box, tables: [right, tableTop], notes: [right, noteTop] } as const;
    return fits(box) ? plan : undefined;
  }
  const beside = { ...inner, x1: s.x1 - BLOCK_WIDTH - INSET };
  const column = blockTop + notesHeight + INSET + tableHeight;
  if (fits(beside) && column <= inner.y1)
    return { views: beside, tables: [right, inner.y1], notes: [right, blockTop + notesHeight] };
  // Views over the whole width, the table above the title block or beside it, notes beside it.
  const left = inner.x0;
  const foot = Math.max(block, notesHeight + INSET + tableHeight) + s.y0 + INSET;
  const above = { ...inner, y0: foot + INSET };
  const isWide = s.x1 - BLOCK_WIDTH - INSET - left >= COLUMN;
  if (isWide && fits(above))
    return { views: above, tables: [left, foot], notes: [left, inner.y0 + notesHeight] };
  return undefined;
};

const centred = (items: readonly Item[], box: Box): Item[] => {
  const have = bounds(items);
  return move(items, [
    (box.x0 + box.x1 - have.x0 - have.x1) / 2,
    (box.y0 + box.y1 - have.y0 - have.y1) / 2,
  ]);
};

const thicknessOf = (part: Part): string => {
  const from = Math.min(...part.layers.map((l) => l.from));
  const to = Math.max(...part.layers.map((l) => l.to));
  return dimensionText(to - from);
};

/**
 * The drawing of a part: views with all dimensions, hole tables, notes and title block, on the
 * smallest sheet and at the largest scale that hold them; a table that finds no room follows on
 * further sheets. Hardware is bought, not drawn: it has none.
 */
export const partSheets = (part: Part, block: TitleBlock): Sheet[] => {
  if (part.kind === 'hardware') return [];
  const table = [...holeTable(part, COLUMN), ...crossHoleTable(part, COLUMN)];
  const notes = numbered(notesOf(part), COLUMN);
  const info = (sheet: number, sheets: number, scale: Scale): SheetInfo => ({
    title: part.name,
    documentType: text.drawing.documentTypes.part,
    number: `${block.designId}-${part.id}`,
    sheet,
    sheets,
    scale,
    part: {
      material: part.kind === 'stock' ? `${part.material}, ${part.section}` : part.material,
      thickness: thicknessOf(part),
      quantity: part.quantity,
      finish: part.finish,
    },
  });
  const drawn = new Map<number, Item[]>();
  const viewsAt = (k: number): Item[] => {
    const views = drawn.get(k) ?? partViews(part, k);
    drawn.set(k, views);
    return views;
  };
  const box = bounds(viewsAt(1));
  const candidates = choices(block.paper, Math.max(widthOf(box), heightOf(box)));
  for (const strips of [table, []])
    for (const { paper, scale } of candidates) {
      const views = viewsAt(factor(scale));
      const height = titleBlockHeight(block, info(1, 1, scale));
      const plan = arrange(paper, bounds(views), strips, notes, height);
      if (!plan) continue;
      const first: Item[] = [
        ...centred(views, plan.views),
        ...stack(strips, plan.tables),
        ...stack(notes, plan.notes),
      ];
      const s = spaceOf(paper);
      const room = s.y1 - s.y0 - height - 2 * INSET;
      const rest = strips.length > 0 ? [] : pour(table, [room]);
      const more = rest.map((page) => stack(page, [s.x1 - BLOCK_WIDTH + INSET, s.y1 - INSET]));
      const pages = [first, ...more];
      return pages.map((items, i): Sheet => ({
        id: `${part.id}-${String(i + 1)}`,
        title: part.name,
        size: sizeOf(paper),
        items: [
          ...border(paper),
          ...titleBlock(paper, block, info(i + 1, pages.length, scale)),
          ...items,
        ],
      }));
    }
  return [];
};
