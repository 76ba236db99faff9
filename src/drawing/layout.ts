import type { Vec2 } from '../geometry/vector.ts';
import { fillBox, frameItem, label, line, move, TEXT } from './items.ts';
import type { Item } from './sheet.ts';
import { textWidth } from './text-width.ts';

/** Distance between base lines, in letter heights. */
const LEADING = 1.6;
/** The same and the air below where every line is wanted: what hangs and what stands still miss each other. */
const TIGHT = { leading: 1.4, after: 0.3 } as const;
const AIRY = { leading: LEADING, after: 0.6 } as const;
const PAD = 1.1;
/** Over and under the words of a row where every line of a page is wanted. */
export const TIGHT_ROW = 0.6;

/** Lines of at most `width` mm; a word longer than a line is broken, nothing is lost. */
export const wrap = (text: string, width: number, height: number, bold = false): string[] => {
  const fits = (s: string): boolean => textWidth(s, height, bold) <= width;
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    let current = '';
    for (const word of paragraph.split(' ')) {
      const longer = current === '' ? word : `${current} ${word}`;
      if (fits(longer)) {
        current = longer;
        continue;
      }
      if (current !== '') lines.push(current);
      current = '';
      for (const character of word) {
        if (current !== '' && !fits(current + character)) {
          lines.push(current);
          current = '';
        }
        current += character;
      }
    }
    lines.push(current);
  }
  return lines;
};

/**
 * A strip of a column of text or of a table: as high as it says, its items hanging down from
 * y = 0 at x = 0. Strips are poured into pages; none is ever cut.
 */
export interface Strip {
  readonly height: number;
  readonly items: readonly Item[];
  /** Stays on the page of the strip that follows. */
  readonly keep: boolean;
  /** Is drawn again above this strip when a new page begins with it: a table's head. */
  readonly head?: Strip;
}

export const space = (height: number): Strip => ({ height, items: [], keep: false });

export interface ParagraphStyle {
  readonly height: number;
  readonly bold: boolean;
  readonly keep: boolean;
  /** A mark left of the text ("1", a dash), and how far the text is set in, mm. */
  readonly mark: string;
  readonly indent: number;
  /** Lines nearer to each other, and less air below. */
  readonly tight: boolean;
}

/** A paragraph wrapped into a column of the given width. */
export const paragraph = (
  text: string,
  width: number,
  style: Partial<ParagraphStyle> = {},
): Strip => {
  const { height, bold, keep, mark, indent, tight } = {
    height: TEXT.small,
    bold: false,
    keep: false,
    mark: '',
    indent: 0,
    tight: false,
    ...style,
  };
  const lettering = { height, bold };
  const { leading, after } = tight ? TIGHT : AIRY;
  const lines = wrap(text, width - indent, height, bold);
  const items = lines.map((s, i) => label([indent, -height * (1.2 + leading * i)], s, lettering));
  if (mark !== '') items.push(label([0, -height * 1.2], mark, { height, bold: true }));
  return { height: height * (after + leading * lines.length), items, keep };
};

export const heading = (
  text: string,
  width: number,
  style: Pick<Partial<ParagraphStyle>, 'height' | 'tight'> = {},
): Strip => paragraph(text, width, { height: TEXT.normal, bold: true, keep: true, ...style });

export interface Column {
  readonly title: string;
  readonly width: number;
  readonly align: 'left' | 'centre' | 'right';
}

const row = (
  columns: readonly Column[],
  cells: readonly string[],
  height: number,
  isHead: boolean,
  pad: number,
): Strip => {
  const wrapped = columns.map((column, i) =>
    wrap(cells[i] ?? '', column.width - 2 * PAD, height, isHead),
  );
  const most = Math.max(...wrapped.map((lines) => lines.length));
  const depth = 2 * pad + height * (1 + LEADING * (most - 1)) + 0.35 * height;
  const items: Item[] = [];
  let x = 0;
  columns.forEach((column, i) => {
    const box = { x0: x, y0: -depth, x1: x + column.width, y1: 0 };
    if (isHead) items.push(fillBox(box, 'tint'));
    items.push(frameItem(box, 'table'));
    const at = { left: x + PAD, centre: x + column.width / 2, right: box.x1 - PAD }[column.align];
    (wrapped[i] ?? []).forEach((s, n) => {
      if (s === '') return;
      const base = -pad - height * (1.05 + LEADING * n);
      items.push(label([at, base], s, { height, align: column.align, bold: isHead }));
    });
    x = box.x1;
  });
  return { height: depth, items, keep: isHead };
};

const widest = (texts: readonly string[], height: number, bold: boolean): number =>
  Math.max(0, ...texts.map((text) => textWidth(text, height, bold)));

/** An empty column is there to be written in, mm: four figures and a point by hand. */
const WRITING = 14;

/** Extra widths for columns that lack some, in all no more than `room`: small needs are met first. */
const shares = (lacks: readonly number[], room: number): number[] => {
  let left = room;
  let waiting = lacks.length;
  const given = new Map<number, number>();
  const order = lacks.map((lack, i) => ({ lack, i })).sort((a, b) => a.lack - b.lack);
  for (const { lack, i } of order) {
    const share = Math.min(lack, left / waiting);
    given.set(i, share);
    left -= share;
    waiting -= 1;
  }
  return lacks.map((_, i) => given.get(i) ?? 0);
};

/** Letters of a table's head, whatever those of its cells, mm. */
const HEAD = TEXT.small;

/** What each column needs so that no word in it is broken, mm; and room to write in an empty one. */
const wordWidths = (
  heads: readonly Omit<Column, 'width'>[],
  rows: readonly (readonly string[])[],
  height: number,
): number[] => {
  const words = (texts: readonly string[]): string[] => texts.flatMap((text) => text.split(' '));
  return heads.map(({ title }, i) => {
    const cells = words(rows.map((cells) => cells[i] ?? ''));
    const word = Math.max(widest(words([title]), HEAD, true), widest(cells, height, false));
    const isToFill = cells.every((cell) => cell === '');
    return Math.max(word + 2 * PAD + 0.1, isToFill ? WRITING : 0);
  });
};

/** Lines that a head may take before other columns give it of their room. */
const HEAD_LINES = 3;

/** The least text width at which words take fewer lines than now, mm; none where it is one line. */
const widthOfFewer = (title: string, now: number, height: number): number | undefined => {
  const words = title.split(' ');
  const lines = wrap(title, now, height, true).length;
  return words
    .flatMap((_, i) => words.slice(i).map((__, n) => words.slice(i, i + n + 1).join(' ')))
    .map((part) => textWidth(part, height, true) + 0.05)
    .sort((a, b) => a - b)
    .find((width) => width > now && wrap(title, width, height, true).length < lines);
};

/** Widths of columns of which the highest heads have been made lower, as far as there is room. */
const levelled = (
  titles: readonly string[],
  widths: readonly number[],
  room: number,
  height: number,
): number[] => {
  const found = [...widths];
  let left = room;
  for (;;) {
    const lines = titles.map(
      (title, i) => wrap(title, (found[i] ?? 0) - 2 * PAD, height, true).length,
    );
    const most = Math.max(...lines);
    if (most <= HEAD_LINES) return found;
    const wider = titles.map((title, i) =>
      lines[i] === most ? widthOfFewer(title, (found[i] ?? 0) - 2 * PAD, height) : undefined,
    );
    const grown = found.map((width, i) => Math.max(width, (wider[i] ?? 0) + 2 * PAD));
    const takes = grown.reduce((sum, width, i) => sum + width - (found[i] ?? 0), 0);
    if (takes > left || takes === 0) return found;
    left -= takes;
    grown.forEach((width, i) => (found[i] = width));
  }
};

/** The least width of a table of which no word is broken, mm. */
export const leastWidth = (
  heads: readonly Omit<Column, 'width'>[],
  rows: readonly (readonly string[])[],
  height: number = TEXT.small,
): number => wordWidths(heads, rows, height).reduce((a, b) => a + b, 0);

/**
 * Columns as wide as their content wants, in a table of the given width and letters of its cells. Every column gets its
 * longest word; then heads are brought to few lines and cells to one where they can, short ones
 * before long ones. Room to spare goes to all columns alike.
 */
export const fitted = (
  heads: readonly Omit<Column, 'width'>[],
  rows: readonly (readonly string[])[],
  width: number,
  height: number = TEXT.small,
): Column[] => {
  const words = wordWidths(heads, rows, height);
  const spare = width - words.reduce((a, b) => a + b, 0);
  const titles = heads.map(({ title }) => title);
  const least = levelled(titles, words, Math.max(0, spare), HEAD);
  const lacks = heads.map(({ title }, i) => {
    const cells = rows.map((cells) => cells[i] ?? '');
    const line = Math.max(widest(cells, height, false), widest([title], HEAD, true) * 0.6);
    return Math.max(0, line + 2 * PAD + 0.1 - (least[i] ?? 0));
  });
  const needed = least.reduce((a, b) => a + b, 0);
  const extra = shares(lacks, Math.max(0, width - needed));
  const wanted = least.map((w, i) => w + (extra[i] ?? 0));
  // More room than wanted stretches the columns; less than the words need breaks these.
  const stretch = width / wanted.reduce((a, b) => a + b, 0);
  return heads.map((head, i) => ({ ...head, width: (wanted[i] ?? 0) * stretch }));
};

/** A table as wide as given, its columns fitted to what is in them. */
export const fittedTable = (
  heads: readonly Omit<Column, 'width'>[],
  rows: readonly (readonly string[])[],
  width: number,
  pad = PAD,
  height: number = TEXT.small,
): Strip[] => table(fitted(heads, rows, width, height), rows, height, pad);

/** A table of wrapped cells: a head that is repeated on every page, and one strip a row. */
export const table = (
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  height: number = TEXT.small,
  pad = PAD,
): Strip[] => {
  const head = row(
    columns,
    columns.map((column) => column.title),
    HEAD,
    true,
    pad,
  );
  // No row stands alone at the foot of a page, or on the next one.
  const keeps = (i: number): boolean => rows.length > 1 && (i === 0 || i === rows.length - 2);
  return [
    head,
    ...rows.map((cells, i) => ({
      ...row(columns, cells, height, false, pad),
      head,
      keep: keeps(i),
    })),
  ];
};

/** A place to write a number in by hand is at least so wide, mm. */
const RULE = 20;

/** A ruled place to write in by hand, with what belongs there: beside its words, or below them. */
export const blank = (what: string, width: number): Strip => {
  const height = TEXT.small;
  const lines = wrap(what, width, height);
  const base = -6 - LEADING * height * (lines.length - 1);
  const beside = textWidth(lines.at(-1) ?? '', height) + 2;
  const [from, at] = beside + RULE > width ? [0, base - 7] : [beside, base - 0.5];
  return {
    height: 1.5 - at,
    items: [
      ...lines.map((s, i) => label([0, -6 - LEADING * height * i], s, { height })),
      line([from, at], [width, at], 'dimension'),
    ],
    keep: false,
  };
};

export const heightOfAll = (strips: readonly Strip[]): number =>
  strips.reduce((sum, strip) => sum + strip.height, 0);

/** The strips one below the other, the first one's top left corner at `at`. */
export const stack = (strips: readonly Strip[], at: Vec2): Item[] => {
  let y = at[1];
  return strips.flatMap((strip) => {
    const items = move(strip.items, [at[0], y]);
    y -= strip.height;
    return items;
  });
};

/** Columns of strips beside each other, each from its x on, as one strip that is never cut. */
export const abreast = (
  columns: readonly { readonly x: number; readonly strips: readonly Strip[] }[],
): Strip => ({
  height: Math.max(0, ...columns.map(({ strips }) => heightOfAll(strips))),
  items: columns.flatMap(({ x, strips }) => stack(strips, [x, 0])),
  keep: false,
});

/**
 * Pours strips into pages of the given heights (the last height holds for all further pages). A
 * strip that keeps with its follower moves to the next page with it; heads are repeated.
 */
export const pour = (strips: readonly Strip[], heights: readonly number[]): Strip[][] => {
  const pages: Strip[][] = [];
  let current: Strip[] = [];
  let used = 0;
  const room = (): number => heights[Math.min(pages.length, heights.length - 1)] ?? 0;
  let i = 0;
  while (i < strips.length) {
    const group: Strip[] = [];
    do {
      const next = strips[i++];
      if (next) group.push(next);
    } while (group.at(-1)?.keep && i < strips.length);
    const need = heightOfAll(group);
    if (current.length > 0 && used + need > room()) {
      pages.push(current);
      const head = group[0]?.head;
      current = head ? [head] : [];
      used = heightOfAll(current);
    }
    current.push(...group);
    used += need;
  }
  if (current.length > 0) pages.push(current);
  return pages;
};
