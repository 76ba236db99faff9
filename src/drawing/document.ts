import { border } from './border.ts';
import { sizeOf, type Paper } from './paper.ts';
import type { Item, Sheet } from './sheet.ts';
import { titleBlock, titleBlockHeight, type SheetInfo, type TitleBlock } from './title-block.ts';

/** What all sheets of a document have in common. */
export type DocumentInfo = Omit<SheetInfo, 'sheet' | 'sheets' | 'number'> & {
  /** Makes names and numbers of its sheets: "setup". */
  readonly id: string;
};

const infoOf = (
  { id, ...info }: DocumentInfo,
  { designId }: TitleBlock,
  sheet: number,
  sheets: number,
): SheetInfo => ({ ...info, number: `${designId}-${id}`, sheet, sheets });

/** Height that the title block takes on each sheet, mm. */
export const blockHeight = (info: DocumentInfo, block: TitleBlock): number =>
  titleBlockHeight(block, infoOf(info, block, 1, 1));

/** A sheet of a document on its paper, by its number among so many, with border and title block. */
export const sheetOf = (
  info: DocumentInfo,
  block: TitleBlock,
  paper: Paper,
  [sheet, sheets]: readonly [sheet: number, sheets: number],
  items: readonly Item[],
): Sheet => ({
  id: `${info.id}-${String(sheet)}`,
  title: info.title,
  size: sizeOf(paper),
  items: [
    ...border(paper),
    ...titleBlock(paper, block, infoOf(info, block, sheet, sheets)),
    ...items,
  ],
});
