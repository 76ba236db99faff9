import type { Vec2 } from '../geometry/vector.ts';
import { heightOf, widthOf, type Box } from './box.ts';
import { heightOfAll, type Strip } from './layout.ts';
import { spaceOf, type Paper } from './paper.ts';
import { BLOCK_WIDTH } from './title-block.ts';

/** Between the frame and anything in it: clears the centring marks, mm. */
export const INSET = 6;
/** Width of tables and notes, mm. */
export const COLUMN = BLOCK_WIDTH - 2 * INSET;
/** Notes are not set narrower than this, mm. */
const NARROWEST = 62;

/** What has to find room on a sheet. */
export interface Content {
  /** Box of the views with all their dimensions. */
  readonly views: Box;
  readonly table: readonly Strip[];
  readonly notes: (width: number) => readonly Strip[];
  /** Height of the title block. */
  readonly block: number;
}

/** Where the views may stand, and where the first strip of table and notes hangs. */
export interface Plan {
  readonly area: Box;
  readonly tables: Vec2;
  readonly notes: Vec2;
  readonly noteWidth: number;
}

const holds = (area: Box, views: Box): boolean =>
  widthOf(views) <= widthOf(area) && heightOf(views) <= heightOf(area);

const inside = (paper: Paper): Box => {
  const s = spaceOf(paper);
  return { x0: s.x0 + INSET, y0: s.y0 + INSET, x1: s.x1 - INSET, y1: s.y1 - INSET };
};

/** Upright sheets: views over table over notes, or the notes beside narrow views. */
const upright = (paper: Paper, { views, table, notes, block }: Content): Plan | undefined => {
  const inner = inside(paper);
  const left = spaceOf(paper).x1 - BLOCK_WIDTH + INSET;
  const foot = spaceOf(paper).y0 + block + INSET;
  const tableHeight = heightOfAll(table);
  const gap = tableHeight > 0 ? INSET : 0;
  const noteTop = foot + heightOfAll(notes(COLUMN));
  const below = { ...inner, y0: noteTop + gap + tableHeight + INSET };
  if (holds(below, views))
    return {
      area: below,
      tables: [left, noteTop + gap + tableHeight],
      notes: [left, noteTop],
      noteWidth: COLUMN,
    };
  const noteWidth = Math.min(90, widthOf(inner) - widthOf(views) - 2 * INSET);
  const beside = {
    ...inner,
    x1: inner.x1 - noteWidth - INSET,
    y0: foot + tableHeight + gap,
  };
  const noteHeight = noteWidth < NARROWEST ? Infinity : heightOfAll(notes(noteWidth));
  if (holds(beside, views) && noteHeight <= heightOf(beside))
    return {
      area: beside,
      tables: [left, foot + tableHeight],
      notes: [inner.x1 - noteWidth, inner.y1],
      noteWidth,
    };
  return undefined;
};

/** Lying sheets: a column of table and notes over the title block, or a strip at the foot. */
const lying = (paper: Paper, { views, table, notes, block }: Content): Plan | undefined => {
  const s = spaceOf(paper);
  const inner = inside(paper);
  const [tableHeight, noteHeight] = [heightOfAll(table), heightOfAll(notes(COLUMN))];
  const blockTop = s.y0 + block + INSET;
  const beside = { ...inner, x1: s.x1 - BLOCK_WIDTH - INSET };
  const right = s.x1 - BLOCK_WIDTH + INSET;
  if (holds(beside, views) && blockTop + noteHeight + INSET + tableHeight <= inner.y1)
    return {
      area: beside,
      tables: [right, inner.y1],
      notes: [right, blockTop + noteHeight],
      noteWidth: COLUMN,
    };
  const foot = Math.max(block, noteHeight + INSET + tableHeight) + s.y0 + INSET;
  const above = { ...inner, y0: foot + INSET };
  const isWide = s.x1 - BLOCK_WIDTH - INSET - inner.x0 >= COLUMN;
  if (isWide && holds(above, views))
    return {
      area: above,
      tables: [inner.x0, foot],
      notes: [inner.x0, inner.y0 + noteHeight],
      noteWidth: COLUMN,
    };
  return undefined;
};

/** Places for views, table and notes on a sheet, or nothing where they do not fit. */
export const arrange = (paper: Paper, content: Content): Plan | undefined =>
  paper.orientation === 'portrait' ? upright(paper, content) : lying(paper, content);
