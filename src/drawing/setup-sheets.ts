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
import { bullets, left, right, steps, type Head } from './lists.ts';
import { pictured } from './pictured.ts';
import type { DocumentInfo } from './document.ts';
import { pouredSheets, roomOf, widthIn } from './poured.ts';
import type { SettingRow, SettingsTable, SetupData, SetupTerms } from './setup-data.ts';
import type { Sheet } from './sheet.ts';
import type { TitleBlock } from './title-block.ts';

/** Strips under a heading. */
const headed = (title: string, strips: readonly Strip[], width: number): Strip[] => [
  space(1),
  heading(title, width, { tight: true }),
  ...strips,
];

/** Between two columns of text, mm. */
const GAP = 6;
const columnOf = (width: number): number => (width - GAP) / 2;

/** Words that stay on one line. */
const whole = (words: string): string => words.replaceAll(' ', '\u00a0');

/** Heights of the pictures without their words, mm: the largest with which the sheet keeps to its pages. */
const HEIGHTS = [56, 48, 40, 32, 26, 22];
/** The section at the belt, with more words in it, gets more of the width than the blade. */
const SECTION_SHARE = 0.56;
/** What hangs at a machine is seen at once. */
const MOST_PAGES = 2;

/** A column of a table, and what stands in it. */
type Columns = readonly { readonly head: Head; readonly cells: readonly string[] }[];

const headsOf = (columns: Columns): Head[] => columns.map(({ head }) => head);

const rowsOf = (columns: Columns): string[][] =>
  (columns[0]?.cells ?? []).map((_, i) => columns.map(({ cells }) => cells[i] ?? ''));

const tableOf = (columns: Columns, width: number): Strip[] =>
  fittedTable(headsOf(columns), rowsOf(columns), width, TIGHT_ROW);

const leastOf = (columns: Columns): number => leastWidth(headsOf(columns), rowsOf(columns));

/** What a line of notes beside a narrow table is wide, mm. */
const NOTES = 90;

/**
 * The passes in their order: what is set, at what to stop, what should come of it, and a place to
 * write what was read back. Where that is too much for a line, what comes of it stands below.
 */
const passes = (
  { names, places, rows }: SettingsTable,
  terms: SetupTerms,
  notes: string,
  width: number,
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
    ...names.map((name, n) => column(right(name), ({ values }) => (values[n] ?? 0).toFixed(2))),
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
  const said = (room: number): Strip => paragraph(notes, room, { tight: true });
  if (leastOf(all) <= width) return [...tableOf(all, width), space(1), said(width)];
  const below = tableOf([pass, ...comes], width - NOTES - GAP);
  return [
    ...tableOf(set, width),
    space(2),
    abreast([
      { x: 0, strips: below },
      { x: width - NOTES, strips: [said(NOTES)] },
    ]),
  ];
};

/** Over the whole width, by the height of the pictures: these, what is set once, and each pass. */
const across = (
  { once, pictures, settings: set, notes: single, inches, terms }: SetupData,
  width: number,
): ((height: number) => Strip[]) => {
  const t = text.drawing.setup;
  const wide = SECTION_SHARE * (width - GAP);
  const section = pictured(pictures.section, wide);
  const blade = pictures.blade && pictured(pictures.blade, width - GAP - wide);
  const notes = [
    t.comes(terms.expectedTitle, set.blade),
    terms.settingsNote,
    ...(set.rows.some(({ reading }) => reading !== '') ? [t.turnsNote] : []),
    ...(inches ? [t.inchesNote] : []),
    t.picturesNote,
  ].join(' ');
  const above = paragraph(text.safety.authority, width, { bold: true, tight: true });
  const said = t.once(once.map(({ name, value }) => `${name}: ${value}`).join('; '));
  const below = [
    paragraph(said, width, { tight: true }),
    ...headed(t.settingsTitle, passes(set, terms, notes, width), width),
    ...bullets(single, width),
  ];
  return (height) => [
    above,
    abreast([
      { x: 0, strips: section(height) },
      { x: wide + GAP, strips: blade?.(height) ?? [] },
    ]),
    ...below,
  ];
};

/** In columns: cautions, what to measure, how zero is found. */
const columned = ({ cautions, measure, zeroing }: SetupData, width: number): Strip[] => {
  const t = text.drawing.setup;
  const usual = text.safety.cautions.flatMap(({ lines }) => lines);
  return [
    ...headed(text.safety.title, bullets([...cautions, ...usual], width), width),
    ...headed(t.measureTitle, bullets(measure, width), width),
    ...headed(t.zeroTitle, steps(zeroing, width), width),
  ];
};

/** Columns lower than this are not begun below the tables, mm. */
const LEAST_COLUMN = 12;

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
  const wide = across(data, width);
  const narrow = columned(data, column);
  const room = roomOf(info, block);
  let pages: Strip[][] = [];
  for (const height of HEIGHTS) {
    pages = pagesOf(wide(height), narrow, room, column + GAP);
    if (pages.length <= MOST_PAGES) break;
  }
  return pouredSheets(pages, info, block, width);
};
