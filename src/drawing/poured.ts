import { blockHeight, sheetOf, type DocumentInfo } from './document.ts';
import { stack, type Strip } from './layout.ts';
import { page, spaceOf } from './paper.ts';
import type { Sheet } from './sheet.ts';
import { BLOCK_WIDTH, type TitleBlock } from './title-block.ts';

const INSET = 6;
/** Between the text and the title block below it, mm. */
const FOOT = 2;

/** Width of the text on a page of tables and text, mm: as wide as the title block. */
export const POURED_WIDTH = BLOCK_WIDTH - 2 * INSET;

/** The same between the frame's sides, which on wide paper is more. */
export const widthIn = ({ paper }: TitleBlock): number => {
  const { x0, x1 } = spaceOf(page(paper));
  return x1 - x0 - 2 * INSET;
};

/** Height for text on a page, mm. */
export const roomOf = (info: DocumentInfo, block: TitleBlock): number => {
  const { y0, y1 } = spaceOf(page(block.paper));
  return y1 - y0 - blockHeight(info, block) - INSET - FOOT;
};

/** Pages of strips of a width on the family's paper, each with its border and title block. */
export const pouredSheets = (
  pages: readonly (readonly Strip[])[],
  info: DocumentInfo,
  block: TitleBlock,
  width = POURED_WIDTH,
): Sheet[] => {
  const paper = page(block.paper);
  const { x1, y1 } = spaceOf(paper);
  return pages.map((strips, i) =>
    sheetOf(
      info,
      block,
      paper,
      [i + 1, pages.length],
      stack(strips, [x1 - INSET - width, y1 - INSET]),
    ),
  );
};
