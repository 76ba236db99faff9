import { text } from '../text/index.ts';
import {
  abreast,
  fittedTable,
  heading,
  heightOfAll,
  leastWidth,
  paragraph,
  pour,
  space,
  TIGHT_ROW,
  type Strip,
} from './layout.ts';
import { TEXT } from './items.ts';
import { lengthIn } from './in-both.ts';
import { bullets, left, right, steps, type Head } from './lists.ts';
import { pictured } from './pictured.ts';
import type { DocumentInfo } from './document.ts';
import { pouredSheets, roomOf, widthIn } from './poured.ts';
import type { SettingRow, SetupData } from './setup-data.ts';
import type { Sheet } from './sheet.ts';
import type { TitleBlock } from './title-block.ts';

/** Heights of letters on a sheet, mm: in the table of settings, and in all other words. */
interface Letters {
  readonly table: number;
  readonly words: number;
}

/** Strips under a heading. */
const headed = (
  title: string,
  strips: readonly Strip[],
  width: number,
  { words }: Letters,
): Strip[] => [
  space(1),
  heading(title, width, { tight: true, height: HEADING * words }),
  ...strips,
];

/** Between two columns of text, mm. */
const GAP = 6;
const columnOf = (width: number): number => (width - GAP) / 2;

/** Words that stay on one line. */
const whole = (words: string): string => words.replaceAll(' ', '\u00a0');

/** Heights of the pictures without their words, mm: the largest with which the sheet keeps to its pages. */
const HEIGHTS = [56, 48, 40, 32, 26, 22];
/** Pictures lower than this make room for no larger letters, mm. */
const LOWEST = 32;
/**
 * Heights of letters, the first with which the sheet keeps to its pages: 3.5 mm is 20 minutes of arc
 * from 600 mm, where a maker stands before the sheet, and 2.8 mm the 16 that are the least for
 * reading with ease (the legibility rules of displays, from memory); 2.5 mm is the least of ISO 3098
 * on these sheets. What is set comes before what is read once.
 */
const LETTERS: readonly Letters[] = [
  { table: 3.5, words: 3.5 },
  { table: 3.5, words: 3 },
  { table: 3.5, words: 2.8 },
  { table: 3.5, words: TEXT.small },
  { table: 3, words: TEXT.small },
  { table: 2.8, words: TEXT.small },
];
const SMALLEST: Letters = { table: TEXT.small, words: TEXT.small };
/** A heading's letters by those of the words below it. */
const HEADING = 1.4;
/** The section at the belt, with more words in it, gets more of the width than the blade. */
const SECTION_SHARE = 0.56;
/** What hangs at a machine is seen at once. */
const MOST_PAGES = 2;

/** A column of a table, and what stands in it. */
type Columns = readonly { readonly head: Head; readonly cells: readonly string[] }[];

const headsOf = (columns: Columns): Head[] => columns.map(({ head }) => head);

const rowsOf = (columns: Columns): string[][] =>
  (columns[0]?.cells ?? []).map((_, i) => columns.map(({ cells }) => cells[i] ?? ''));

const tableOf = (columns: Columns, width: number, height: number): Strip[] =>
  fittedTable(headsOf(columns), rowsOf(columns), width, TIGHT_ROW, height);

const leastOf = (columns: Columns, height: number): number =>
  leastWidth(headsOf(columns), rowsOf(columns), height);

/** What a line of notes beside a narrow table is wide at most, mm. */
const NOTES = 90;

/**
 * The passes in their order: what is set, at what to stop, what should come of it, and a place to
 * write what was read back. What is set is told in inches too where they are wanted; there is no room
 * for more of them on two pages, so stops and heights in inches are in the annex. Where that is too
 * much for a line, what comes of it stands below.
 */
const passes = (
  { settings: { names, lengths, places, rows }, terms, inches }: SetupData,
  notes: string,
  width: number,
  letters: Letters,
): Strip[] => {
  const t = text.drawing.setup.columns;
  const column = (head: Head, cell: (row: SettingRow, i: number) => string) => ({
    head,
    cells: rows.map(cell),
  });
  const pass = column(left(t.pass), (_, i) => String(i + 1));
  const set: Columns = [
    pass,
    column(left(t.belt), ({ belt }) => whole(belt)),
    column(left(t.side), ({ side }) => side),
    ...names.map((name, n) =>
      column(right(name), ({ values }) => whole(lengthIn(values[n] ?? 0, 2, inches && lengths[n]))),
    ),
    ...(rows.some(({ reading }) => reading !== '')
      ? [column(left(t.reading), ({ reading }) => whole(reading))]
      : []),
    column(left(t.read), () => ''),
    column(right(terms.stopAt), ({ stopAt }) => stopAt.toFixed(2)),
  ];
  const comes: Columns = places.map((place, n) =>
    column(right(place.split(', ').map(whole).join(' ')), ({ bevels }) =>
      (bevels[n] ?? 0).toFixed(1),
    ),
  );
  const all = [...set, ...comes];
  const said = (room: number): Strip =>
    paragraph(notes, room, { tight: true, height: letters.words });
  const height = letters.table;
  if (leastOf(all, height) <= width) return [...tableOf(all, width, height), space(1), said(width)];
  const low = [pass, ...comes];
  const taken = Math.max(leastOf(low, height), width - NOTES - GAP);
  const beside = width - taken - GAP;
  return [
    ...tableOf(set, width, height),
    space(2),
    abreast([
      { x: 0, strips: tableOf(low, taken, height) },
      { x: taken + GAP, strips: [said(beside)] },
    ]),
  ];
};

/** What the pages are made of, by the heights of letters and pictures. */
interface Content {
  /** Over the whole width: the pictures, what is set once, and each pass. */
  readonly across: (letters: Letters) => (height: number) => Strip[];
  /** In columns: cautions, what to measure, how zero is found. */
  readonly columned: (letters: Letters) => Strip[];
}

const across = (data: SetupData, width: number): Content['across'] => {
  const { once, pictures, settings: set, notes: single, inches, terms } = data;
  const t = text.drawing.setup;
  const wide = SECTION_SHARE * (width - GAP);
  const section = pictured(pictures.section, wide);
  const blade = pictures.blade && pictured(pictures.blade, width - GAP - wide);
  const notes = [
    t.comes(terms.expectedTitle, set.blade),
    terms.settingsNote,
    ...(terms.turnsIn && set.rows.some(({ reading }) => reading !== '')
      ? [t.turnsNote(terms.turnsIn)]
      : []),
    ...(inches ? [t.inchesNote] : []),
    t.picturesNote,
  ].join(' ');
  const said = t.once(once.map(({ name, value }) => `${name}: ${value}`).join('; '));
  return (letters) => {
    const height = letters.words;
    const above = paragraph(text.safety.authority, width, { bold: true, tight: true, height });
    const below = [
      paragraph(said, width, { tight: true, height }),
      ...headed(t.settingsTitle, passes(data, notes, width, letters), width, letters),
      ...bullets(single, width, height),
    ];
    return (high) => [
      above,
      abreast([
        { x: 0, strips: section(high) },
        { x: wide + GAP, strips: blade?.(high) ?? [] },
      ]),
      ...below,
    ];
  };
};

const columned =
  ({ cautions, measure, zeroing }: SetupData, width: number): Content['columned'] =>
  (letters) => {
    const t = text.drawing.setup;
    const usual = text.safety.cautions.flatMap(({ lines }) => lines);
    const under = (title: string, strips: Strip[]): Strip[] =>
      headed(title, strips, width, letters);
    return [
      ...under(text.safety.title, bullets([...cautions, ...usual], width, letters.words)),
      ...under(t.measureTitle, bullets(measure, width, letters.words)),
      ...under(t.zeroTitle, steps(zeroing, width, letters.words)),
    ];
  };

/** Columns lower than this are not begun below the tables, mm: a heading stands over several lines. */
const LEAST_COLUMN = 28;

/** The strips over the whole width, and below and after them the others in two columns. */
const pagesOf = (
  wide: readonly Strip[],
  narrow: readonly Strip[],
  room: number,
  shift: number,
): Strip[][] => {
  const pages = pour(wide, [room]);
  const below = room - heightOfAll(pages.at(-1) ?? []);
  const first = below < LEAST_COLUMN ? [] : [below, below];
  const columns = pour(narrow, [...first, room]);
  const pair = (i: number): Strip =>
    abreast([0, 1].map((n) => ({ x: n * shift, strips: columns[i + n] ?? [] })));
  const laid = pages.slice(0, -1);
  const last = pages.at(-1) ?? [];
  laid.push(first.length > 0 ? [...last, pair(0)] : last);
  for (let i = first.length; i < columns.length; i += 2) laid.push([pair(i)]);
  return laid;
};

/** The pages with the largest letters, then the highest pictures, with which they are few enough. */
const fitting = ({ across, columned }: Content, room: number, shift: number): Strip[][] => {
  let pages: Strip[][] = [];
  for (const letters of [...LETTERS, SMALLEST]) {
    const wide = across(letters);
    const narrow = columned(letters);
    const heights = letters === SMALLEST ? HEIGHTS : HEIGHTS.filter((height) => height >= LOWEST);
    for (const height of heights) {
      pages = pagesOf(wide(height), narrow, room, shift);
      if (pages.length <= MOST_PAGES) return pages;
    }
  }
  return pages;
};

/**
 * What hangs at the machine: pictures with every reading by its letter, the passes in their order,
 * what should come of them, cautions, what to measure, and how zero is found. Numbers to look up
 * and places for a record are in the annex.
 */
export const setupSheets = (data: SetupData, block: TitleBlock): Sheet[] => {
  const info: DocumentInfo = {
    id: 'setup',
    title: data.title,
    documentType: text.drawing.documentTypes.setup,
    low: true,
  };
  const width = widthIn(block);
  const column = columnOf(width);
  const content: Content = { across: across(data, width), columned: columned(data, column) };
  const pages = fitting(content, roomOf(info, block), column + GAP);
  return pouredSheets(pages, info, block, width);
};
