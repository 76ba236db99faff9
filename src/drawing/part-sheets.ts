import { blockHeight, sheetOf, type DocumentInfo } from './document.ts';
import { plain } from '../core/units.ts';
import { boundingBox, unionBox } from '../geometry/loop-measure.ts';
import { sub2 } from '../geometry/vector.ts';
import type { Part } from '../model/part.ts';
import { text } from '../text/index.ts';
import { arrange, COLUMN, INSET } from './arrange.ts';
import type { Box } from './box.ts';
import { dimensionText } from './dimension.ts';
import { cornerTables, crossHoleTable, hasUnlistedOutline, holeTable } from './hole-table.ts';
import { bounds, move } from './items.ts';
import { heading, paragraph, pour, stack, type Strip } from './layout.ts';
import { SHEETS, spaceOf, type Paper, type PaperFamily } from './paper.ts';
import { overhangs } from './overhang.ts';
import { datumOf, partViews } from './part-views.ts';
import { factor, FULL_SIZE, SCALES, type Scale } from './scales.ts';
import type { Item, Sheet } from './sheet.ts';
import { BLOCK_WIDTH, type TitleBlock } from './title-block.ts';

/** A small part is not drawn larger than this, mm: dimensions stand around it. */
const ENLARGED = 75;

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

/** A print higher than so many widths of its foot is held by a brim: common practice, no source. */
const SLENDER = 2.5;

/** The foot of a slender print and its height, mm. */
const slender = ({
  layers,
}: Part): { readonly width: number; readonly height: number } | undefined => {
  const bed = Math.min(...layers.map(({ from }) => from));
  const height = Math.max(...layers.map(({ to }) => to)) - bed;
  const feet = layers.filter(({ from }) => from === bed).map(({ profile }) => profile.outer);
  const { min, max } = unionBox(feet.map(boundingBox));
  const width = Math.min(max[0] - min[0], max[1] - min[1]);
  return height > SLENDER * width ? { width, height } : undefined;
};

/** How a print lies on the bed, where it needs a bridge or support, and what holds it down. */
const printing = (part: Part): string => {
  const { notes } = text.drawing;
  const found = overhangs(part.layers);
  const high = slender(part);
  return [
    found.length === 0
      ? notes.flat
      : notes.overhang(found.map(({ z, reach }) => ({ z: plain(z, 1), reach: plain(reach, 1) }))),
    ...(high ? [notes.brim(plain(high.height, 1), plain(high.width, 1))] : []),
  ].join(' ');
};

/** The notes every part drawing carries, after the part's own. */
const notesOf = (part: Part, kerf: number): string[] => [
  ...part.notes,
  ...part.tight.map(text.drawing.notes.tight),
  ...(part.kind === 'hardware' ? [] : [text.drawing.notes.datum]),
  ...(part.kind === 'plate' && part.process !== 'saw-drill' ? [text.drawing.notes.kerf(kerf)] : []),
  ...(part.kind === 'print' ? [text.drawing.notes.print, printing(part)] : []),
  ...(hasUnlistedOutline(part) ? [text.drawing.notes.unlisted] : []),
  ...text.safety.drawing,
];

const centred = (items: readonly Item[], box: Box): Item[] => {
  const have = bounds(items);
  return move(items, [
    (box.x0 + box.x1 - have.x0 - have.x1) / 2,
    (box.y0 + box.y1 - have.y0 - have.y1) / 2,
  ]);
};

/** The greatest extent of a part, mm. */
const largestOf = (part: Part): number => {
  const { box } = datumOf(part);
  return Math.max(...sub2(box.max, box.min), Number(thicknessOf(part)));
};

/** What a part's size from face to face is called. */
const SIZES = { plate: 'thickness', print: 'height', stock: 'length' } as const;

/** What a part is thick, as its title block says it, mm. */
export const thicknessOf = (part: Part): string => {
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
  const table = [
    ...holeTable(part, COLUMN),
    ...crossHoleTable(part, COLUMN),
    ...cornerTables(part, COLUMN),
  ];
  const notes = (width: number): Strip[] => numbered(notesOf(part, block.kerf ?? 0), width);
  const info = (scale: Scale): DocumentInfo => ({
    id: part.id,
    title: part.name,
    documentType: text.drawing.documentTypes.part,
    scale,
    part: {
      material: part.kind === 'stock' ? `${part.material}, ${part.section}` : part.material,
      size: thicknessOf(part),
      sizeOf: SIZES[part.kind],
      isPrinted: part.kind === 'print',
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
  const candidates = choices(block.paper, largestOf(part));
  for (const strips of [table, []])
    for (const { paper, scale } of candidates) {
      const views = viewsAt(factor(scale));
      const height = blockHeight(info(scale), block);
      const content = { views: bounds(views), table: strips, notes, block: height };
      const plan = arrange(paper, content);
      if (!plan) continue;
      const first: Item[] = [
        ...centred(views, plan.area),
        ...stack(strips, plan.tables),
        ...stack(notes(plan.noteWidth), plan.notes),
      ];
      const s = spaceOf(paper);
      const room = s.y1 - s.y0 - height - 2 * INSET;
      const rest = strips.length > 0 ? [] : pour(table, [room]);
      const more = rest.map((page) => stack(page, [s.x1 - BLOCK_WIDTH + INSET, s.y1 - INSET]));
      const pages = [first, ...more];
      return pages.map((items, i) =>
        sheetOf(info(scale), block, paper, [i + 1, pages.length], items),
      );
    }
  return [];
};
