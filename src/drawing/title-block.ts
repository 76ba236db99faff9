import { text } from '../text/index.ts';
import type { Box } from './box.ts';
import { circleItem, frameItem, label, line, polyline, TEXT } from './items.ts';
import { wrap } from './layout.ts';
import { spaceOf, type Paper, type PaperFamily } from './paper.ts';
import { scaleText, type Scale } from './scales.ts';
import type { Item } from './sheet.ts';
import { textWidth } from './text-width.ts';

/** What every sheet of a design has in common. Empty strings leave a field to be filled by hand. */
export interface TitleBlock {
  readonly owner: string;
  readonly creator: string;
  readonly approvedBy: string;
  /** Date of issue, as it is to be printed. */
  readonly date: string;
  /** The design's title: supplementary title of its part drawings. */
  readonly design: string;
  readonly designId: string;
  readonly revision: string;
  readonly paper: PaperFamily;
  /** What the code to scan holds: the design as a link's fragment. Absent: no code. */
  readonly link?: string;
  /** Width of the beam that the cut files of plates allow for, mm; none where absent. */
  readonly kerf?: number;
}

/** What one sheet adds. */
export interface SheetInfo {
  readonly title: string;
  readonly documentType: string;
  /** Identification number of the document. */
  readonly number: string;
  readonly sheet: number;
  readonly sheets: number;
  /** Two rows of small fields instead of three: where every line of the sheet is wanted. */
  readonly low?: true;
  /** Absent on sheets without a view: they have no tolerances or projection either. */
  readonly scale?: Scale;
  /** Of the drawn part; absent on other sheets. */
  readonly part?: {
    readonly material: string;
    /** From the lowest to the highest face of its drawing, and what that is of such a part. */
    readonly size: string;
    readonly sizeOf: 'thickness' | 'height' | 'length';
    readonly isPrinted: boolean;
    readonly quantity: number;
    readonly finish: string;
  };
}

/** Width of the title block (ISO 7200), mm. */
export const BLOCK_WIDTH = 180;

interface Cell {
  readonly name: string;
  readonly value: string;
  readonly width: number;
  readonly height?: number;
  readonly draw?: (box: Box) => Item[];
}

const PAD = 1;
const NAME = TEXT.small;

/** First-angle symbol in the proportions of ISO 5456-2: small end half the large one, to the left. */
export const projectionSymbol = (box: Box): Item[] => {
  const unit = 0.62;
  const [half, quarter] = [5 * unit, 2.5 * unit];
  const y = (box.y0 + box.y1) / 2;
  const cone = box.x1 - 23.5 * unit - 1;
  const centre = cone + 17 * unit;
  return [
    polyline(
      [
        [cone, y - quarter],
        [cone + 10 * unit, y - half],
        [cone + 10 * unit, y + half],
        [cone, y + quarter],
        [cone, y - quarter],
      ],
      'table',
    ),
    circleItem([centre, y], quarter, 'table'),
    circleItem([centre, y], half, 'table'),
    line([cone - 1.2 * unit, y], [cone + 11.2 * unit, y], 'centre'),
    line([centre - 6.2 * unit, y], [centre + 6.2 * unit, y], 'centre'),
    line([centre, y - 6.2 * unit], [centre, y + 6.2 * unit], 'centre'),
  ];
};

/** The value in the letter height that fits on one line, or wrapped in the smallest. */
const lettered = (cell: Cell): { height: number; lines: string[] } => {
  const room = cell.width - 2 * PAD;
  const height = [cell.height ?? TEXT.normal, TEXT.normal, TEXT.small].find(
    (h) => textWidth(cell.value, h) <= room,
  );
  return height === undefined
    ? { height: TEXT.small, lines: wrap(cell.value, room, TEXT.small) }
    : { height, lines: [cell.value] };
};

const depthOf = (cell: Cell): number => {
  const { height, lines } = lettered(cell);
  return PAD + NAME * 1.35 + PAD + height * (1.5 + 1.6 * (lines.length - 1));
};

const rowsOf = (block: TitleBlock, info: SheetInfo): Cell[][] => {
  const t = text.drawing.titleBlock;
  const cell = (name: string, value: string, width: number, more: Partial<Cell> = {}): Cell => ({
    name,
    value,
    width,
    ...more,
  });
  const part = info.part;
  const sheet = `${String(info.sheet)}/${String(info.sheets)}`;
  if (info.low)
    return [
      [
        cell(t.title, info.title, 56),
        cell(t.supplementaryTitle, block.design, 84),
        cell(t.documentType, info.documentType, 40),
      ],
      [
        cell(t.owner, block.owner, 32),
        cell(t.creator, block.creator, 28),
        cell(t.approvedBy, block.approvedBy, 28),
        cell(t.date, block.date, 26),
        cell(t.number, info.number, 44),
        cell(t.revision, block.revision, 9),
        cell(t.sheet, sheet, 13),
      ],
    ];
  return [
    ...(part
      ? [
          [
            cell(t.material, part.material, 66),
            cell(t[part.sizeOf], part.size, 26),
            cell(t.quantity, String(part.quantity), 22),
            cell(t.finish, part.finish, 66),
          ],
        ]
      : []),
    ...(info.scale
      ? [
          [
            cell(t.tolerances, t.toleranceClass, 44),
            cell(t.edges, part?.isPrinted ? t.edgesPrinted : t.edgesBroken, 42),
            cell(t.units, 'mm', 20),
            cell(t.scale, scaleText(info.scale), 30),
            cell(t.projection, '', 44, { draw: projectionSymbol }),
          ],
        ]
      : []),
    [
      cell(t.owner, block.owner, 56),
      cell(t.title, info.title, 84, { height: TEXT.heading }),
      cell(t.documentType, info.documentType, 40),
    ],
    [
      cell(t.creator, block.creator, 56),
      cell(t.supplementaryTitle, block.design, 84),
      cell(t.date, block.date, 40),
    ],
    [
      cell(t.approvedBy, block.approvedBy, 56),
      cell(t.number, info.number, 84),
      cell(t.revision, block.revision, 16),
      cell(t.sheet, sheet, 24),
    ],
  ];
};

const heights = (rows: readonly (readonly Cell[])[]): number[] =>
  rows.map((cells) => Math.max(9, ...cells.map(depthOf)));

/** Height the title block will take, mm. */
export const titleBlockHeight = (block: TitleBlock, info: SheetInfo): number =>
  heights(rowsOf(block, info)).reduce((a, b) => a + b, 0);

/** The title block at the lower right corner of the drawing space, with the fields of ISO 7200. */
export const titleBlock = (paper: Paper, block: TitleBlock, info: SheetInfo): Item[] => {
  const corner = spaceOf(paper);
  const rows = rowsOf(block, info);
  const depths = heights(rows);
  const left = corner.x1 - BLOCK_WIDTH;
  let top = corner.y0 + depths.reduce((a, b) => a + b, 0);
  const outline = frameItem({ x0: left, y0: corner.y0, x1: corner.x1, y1: top }, 'frame');
  const inside = rows.flatMap((cells, r) => {
    const bottom = top - (depths[r] ?? 0);
    let x = left;
    const items = cells.flatMap((cell) => {
      const box = { x0: x, y0: bottom, x1: x + cell.width, y1: top };
      x = box.x1;
      const { height, lines } = lettered(cell);
      const first = top - PAD - NAME * 1.35 - PAD - height;
      return [
        frameItem(box, 'table'),
        label([box.x0 + PAD, top - PAD - NAME], cell.name, { height: NAME }),
        // An empty value leaves the field to be filled in by hand.
        ...(cell.value === '' ? [] : lines).map((s, i) =>
          label([box.x0 + PAD, first - 1.6 * height * i], s, { height }),
        ),
        ...(cell.draw?.(box) ?? []),
      ];
    });
    top = bottom;
    return items;
  });
  return [outline, ...inside];
};
