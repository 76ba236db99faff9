import { text } from '../text/index.ts';
import { codeStrip } from './code.ts';
import { TEXT } from './items.ts';
import {
  abreast,
  blank,
  fittedTable,
  leastWidth,
  paragraph,
  pour,
  space,
  table,
  type Column,
  type Strip,
} from './layout.ts';
import { lengthIn, lengthsInBoth } from './in-both.ts';
import { left, right, section, type Head } from './lists.ts';
import { pictured } from './pictured.ts';
import { POURED_WIDTH as WIDTH, pouredSheets, roomOf } from './poured.ts';
import type {
  BladeRow,
  BudgetRow,
  Fact,
  OtherBlade,
  Progress,
  SettingsTable,
  SetupData,
  SetupTerms,
} from './setup-data.ts';
import type { Sheet } from './sheet.ts';
import type { TitleBlock } from './title-block.ts';

/** From this many on facts stand side by side. */
const MANY_FACTS = 8;

/** Width of the names of values that stand side by side, mm: most names are longer. */
const NAMES = 54;

const column = (head: Head, width: number): Column => ({ ...head, width });

/** Names and values: in two columns, or side by side in four where there are many. */
const facts = (list: readonly Fact[]): Strip[] => {
  const t = text.drawing.setup;
  if (list.length === 0) return [];
  const pairs = list.map((fact) => [fact.name, fact.value]);
  if (list.length < MANY_FACTS) return fittedTable([left(t.what), left(t.value)], pairs, WIDTH);
  const half = Math.ceil(pairs.length / 2);
  const rows = pairs.slice(0, half).map((pair, i) => [...pair, ...(pairs[half + i] ?? ['', ''])]);
  const columns = [left(t.what), left(t.value), left(t.what), left(t.value)].map((head, i) =>
    column(head, i % 2 === 0 ? NAMES : WIDTH / 2 - NAMES),
  );
  return table(columns, rows);
};

type Row = SettingsTable['rows'][number];

/** A line for every pass: its number, belt and side, then more columns. */
const byPass = (
  rows: readonly Row[],
  heads: readonly Head[],
  cellsOf: (row: Row, i: number) => readonly string[],
): Strip[] => {
  const t = text.drawing.setup.columns;
  const cells = rows.map((row, i) => [String(i + 1), row.belt, row.side, ...cellsOf(row, i)]);
  return fittedTable([left(t.pass), left(t.belt), left(t.side), ...heads], cells, WIDTH);
};

/** What follows from the settings of every pass, and the way to them from the pass before. */
const further = ({ derived, rows }: SettingsTable): Strip[] => {
  const t = text.drawing.setup.columns;
  // A fixture that is not turned to its settings, or holds no blade, has none of these to tell.
  const turned = rows.some(({ turns }) => turns !== '');
  const ground = rows.some(({ volume }) => volume > 0);
  const heads = [
    ...derived.map(right),
    ...(turned ? [left(t.turns)] : []),
    ...(ground ? [right(t.volume)] : []),
  ];
  if (heads.length === 0) return [];
  return byPass(rows, heads, (row) => [
    ...row.derived.map((value) => value.toFixed(2)),
    ...(turned ? [row.turns] : []),
    ...(ground ? [row.volume.toFixed(0)] : []),
  ]);
};

/**
 * What should come of every pass (where inches are wanted, at what to stop as well), with a place
 * beside every height for what was measured.
 */
const record = (
  rows: readonly Row[],
  places: readonly string[],
  bevels: OtherBlade['bevels'],
  { inches, terms }: SetupData,
): Strip[] => {
  const t = text.drawing.setup.columns;
  if (places.length === 0) return [];
  const heads = [
    ...(inches ? [right(terms.stopAt)] : []),
    ...places.flatMap((place) => [right(t.bevel(place)), left(t.measured)]),
  ];
  const cellsOf = ({ stopAt }: Row, i: number): string[] => [
    ...(inches ? [lengthIn(stopAt, 2, inches)] : []),
    ...(bevels[i] ?? []).flatMap((bevel) => [lengthIn(bevel, 1, inches), '']),
  ];
  return byPass(rows, heads, cellsOf);
};

/** Height of the picture of a blade without its words, mm. */
const PICTURE = 26;

/** A blade after the first: from its side, and what should come of every pass. */
const otherBlade = (
  { picture, places, bevels }: OtherBlade,
  rows: readonly Row[],
  data: SetupData,
): Strip[] => [
  ...pictured(picture, WIDTH)(PICTURE).map((strip) => ({ ...strip, keep: true })),
  ...record(rows, places, bevels, data),
];

/** Below this a tenth off the edge moves nothing a maker can see, mm. */
const LEAST_CHANGE = 0.005;

/** So many progress tables stand beside each other, as long as no word in them is broken. */
const MOST_ABREAST = 4;

/** The head of a column of lengths ends with their unit. */
const isLength = (head = ''): boolean => head.endsWith(' mm');

/** Progress tables, several beside each other. */
const progress = (
  list: readonly Progress[],
  terms: SetupTerms,
  inches: boolean | undefined,
): Strip[] => {
  const gap = 4;
  const heads = terms.progress.map(right);
  const told = inches ? lengthsInBoth : (sentence: string) => sentence;
  const cellsOf = ({ rows }: Progress): string[][] =>
    rows.map((row) =>
      row.map((value, i) => lengthIn(value, i < 2 ? 2 : 1, inches && isLength(terms.progress[i]))),
    );
  const least = leastWidth(heads, list.flatMap(cellsOf));
  const beside = Math.min(MOST_ABREAST, Math.floor((WIDTH + gap) / (least + gap)));
  const width = (WIDTH - (beside - 1) * gap) / beside;
  const blocks = list.map((one): Strip[] => [
    paragraph(one.title, width, { bold: true }),
    ...fittedTable(heads, cellsOf(one), width),
    space(1),
    paragraph(
      one.perTenth < LEAST_CHANGE
        ? text.drawing.setup.lineStays
        : told(terms.perTenth(one.perTenth.toFixed(2))),
      width,
    ),
    space(2),
  ]);
  const bands: Strip[] = [];
  for (let i = 0; i < blocks.length; i += beside)
    bands.push(
      abreast(blocks.slice(i, i + beside).map((strips, n) => ({ x: n * (width + gap), strips }))),
    );
  return bands;
};

/** The blades before grinding, a line for every place; what holds all along stands in the first. */
const blades = (list: readonly BladeRow[]): Strip[] => {
  const t = text.drawing.setup;
  if (list.length === 0) return [];
  const { blade, place, thickness, height, edge, spine, bevels } = t.blades;
  const heads = [
    left(blade),
    left(place),
    right(thickness),
    right(height),
    left(edge),
    right(spine),
    left(bevels),
  ];
  const cells = list.flatMap((row) =>
    row.places.map((at, i) => {
      const all = i === 0 ? [row.edge, row.spine, row.bevels] : ['', '', ''];
      return [i === 0 ? row.blade : '', at.place, at.thickness, at.height, ...all];
    }),
  );
  return [paragraph(t.bladesNote, WIDTH, { keep: true }), ...fittedTable(heads, cells, WIDTH)];
};

/** What errors of setting, belt and blade do, an output a row. */
const budget = (rows: readonly BudgetRow[]): Strip[] => {
  const t = text.drawing.setup;
  if (rows.length === 0) return [];
  const widths = { what: 30, spread: 21, worst: 34, halved: 21 } as const;
  const { what, spread, worst, halved } = widths;
  const columns = [
    column(left(t.budget.what), what),
    column(right(t.budget.spread), spread),
    column(left(t.budget.worst), worst),
    column(left(t.budget.most), WIDTH - what - spread - worst - halved),
    column(right(t.budget.halved), halved),
  ];
  const cells = rows.map((row) => [row.what, row.spread, row.worst, row.most, row.halved]);
  return [paragraph(t.budgetNote, WIDTH, { keep: true }), ...table(columns, cells)];
};

const strips = (data: SetupData, { link, designId }: TitleBlock): Strip[] => {
  const t = text.drawing.setup;
  const { terms, inches } = data;
  const { blade, places, rows } = data.settings;
  const part = (title: string, list: readonly Strip[]): Strip[] => section(title, list, WIDTH);
  return [
    paragraph(t.annexTitle, WIDTH, { height: TEXT.heading, bold: true, keep: true }),
    paragraph(t.annexNote, WIDTH),
    ...part(t.bladesTitle, blades(data.bladeRows)),
    ...part(t.progressTitle, [
      paragraph([terms.progressNote, data.progressBlade ?? ''].join(' ').trim(), WIDTH, {
        keep: true,
      }),
      ...progress(data.progress, terms, inches),
    ]),
    ...part(t.furtherTitle, further(data.settings)),
    ...part(
      t.expectedOf(terms.expectedTitle, blade),
      record(
        rows,
        places,
        rows.map(({ bevels }) => bevels),
        data,
      ),
    ),
    ...data.others.flatMap((other) =>
      part(t.expectedOf(terms.expectedTitle, other.blade), otherBlade(other, rows, data)),
    ),
    ...part(
      t.recordTitle,
      [...data.measure, ...t.record].map((what) => blank(what, WIDTH)),
    ),
    ...part(t.budgetTitle, budget(data.budget)),
    ...part(t.factsTitle, [paragraph(t.factsNote, WIDTH, { keep: true }), ...facts(data.facts)]),
    ...part(t.checksTitle, [paragraph(t.checksNote, WIDTH, { keep: true }), ...facts(data.checks)]),
    ...part(text.drawing.code.title, link === undefined ? [] : [codeStrip(link, designId)(WIDTH)]),
  ];
};

/** What is looked up and kept, apart from what hangs at the machine: as many pages as it takes. */
export const setupAnnex = (data: SetupData, block: TitleBlock): Sheet[] => {
  const info = {
    id: 'annex',
    title: data.title,
    documentType: text.drawing.documentTypes.annex,
  };
  return pouredSheets(pour(strips(data, block), [roomOf(info, block)]), info, block);
};
