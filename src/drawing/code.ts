import { encode } from 'uqr';
import { text } from '../text/index.ts';
import type { Box } from './box.ts';
import { move } from './items.ts';
import { paragraph, type Strip } from './layout.ts';
import type { Item } from './sheet.ts';

/** White modules kept around the dark ones: ISO/IEC 18004 asks for four. */
export const QUIET = 4;

/** Sides of a module from the usual to the least that office printers and cameras resolve, mm. */
const MODULES = [0.5, 0.4] as const;

/** Side of the largest code that is drawn, quiet zone included, mm. */
const LARGEST = 70;

/** Modules a side of version 1 less one version's step, and that step: 17 + 4 v. */
const VERSION = { start: 17, step: 4 } as const;

/** A code to scan, its lower left corner at the origin. */
export interface Code {
  readonly item: Extract<Item, { readonly kind: 'blocks' }>;
  /** Side of the square with its quiet zone, mm. */
  readonly side: number;
  /** Side of a module, mm. */
  readonly module: number;
}

/** Dark modules as few rectangles: runs in a row, grown downward while the same run goes on. */
const rectangles = (rows: readonly (readonly boolean[])[]): Box[] => {
  const boxes: Box[] = [];
  let open = new Map<string, { x0: number; y0: number; x1: number; y1: number }>();
  rows.forEach((row, y) => {
    const next: typeof open = new Map();
    for (let x = 0; x < row.length; x++) {
      if (row[x] !== true) continue;
      const x0 = x;
      while (row[x + 1] === true) x++;
      const key = `${String(x0)} ${String(x)}`;
      const box = open.get(key) ?? { x0, y0: y, x1: x + 1, y1: y };
      if (!open.has(key)) boxes.push(box);
      box.y1 = y + 1;
      next.set(key, box);
    }
    open = next;
  });
  return boxes;
};

const matrixOf = (content: string): readonly (readonly boolean[])[] | undefined => {
  const most = Math.floor(LARGEST / MODULES[1]) - 2 * QUIET;
  const maxVersion = Math.floor((most - VERSION.start) / VERSION.step);
  try {
    // Level M restores 15 % of damaged code words: dirt of a workshop.
    return encode(content, { ecc: 'M', border: 0, maxVersion }).data;
  } catch {
    return undefined; // longer than the largest version holds
  }
};

/**
 * A matrix code of ISO/IEC 18004 that holds a text, as vectors with modules of 0.5 mm, or 0.4 mm
 * where it would be larger than 70 mm. Undefined for a text too long for that.
 */
export const codeOf = (content: string): Code | undefined => {
  const rows = matrixOf(content);
  if (rows === undefined) return undefined;
  const count = rows.length + 2 * QUIET;
  const module = MODULES.find((side) => side * count <= LARGEST) ?? MODULES[1];
  const place = (n: number): number => (QUIET + n) * module;
  const boxes = rectangles(rows).map(({ x0, y0, x1, y1 }) => ({
    x0: place(x0),
    y0: place(rows.length - y1),
    x1: place(x1),
    y1: place(rows.length - y0),
  }));
  return { item: { kind: 'blocks', boxes }, side: count * module, module };
};

/** Between code and words, mm; the quiet zone adds to it. */
const GAP = 2;

/**
 * The code of a design with words beside it, as wide as asked: what it holds and how it is used.
 * A design too long for a legible code gets the words that say so; the files carry it all the same.
 */
export const codeStrip = (link: string, designId: string): ((width: number) => Strip) => {
  const words = text.drawing.code;
  const code = codeOf(link);
  if (code === undefined) return (width) => paragraph(words.tooLong(link.length, designId), width);
  const beside = code.side + GAP;
  return (width) => {
    const note = paragraph(words.holds(link.length, designId), width - beside);
    const down = Math.max(0, (code.side - note.height) / 2);
    return {
      height: Math.max(code.side, note.height),
      items: [...move([code.item], [0, -code.side]), ...move(note.items, [beside, -down])],
      keep: false,
    };
  };
};
