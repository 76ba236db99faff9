import { text } from '../text/index.ts';
import { border } from './border.ts';
import { codeStrip } from './code.ts';
import { move, TEXT } from './items.ts';
import {
  blank,
  fittedTable,
  heading,
  heightOfAll,
  leastWidth,
  paragraph,
  pour,
  space,
  stack,
  table,
  type Column,
  type Strip,
} from './layout.ts';
import { page, sizeOf, spaceOf } from './paper.ts';
import type {
  BudgetRow,
  Fact,
  Progress,
  SettingsTable,
  SetupData,
  SetupTerms,
} from './setup-data.ts';
import type { Sheet } from './sheet.ts';
import {
  BLOCK_WIDTH,
  titleBlock,
  titleBlockHeight,
  type SheetInfo,
  type TitleBlock,
} from './title-block.ts';

const INSET = 6;
const WIDTH = BLOCK_WIDTH - 2 * INSET;

type Head = Omit<Column, 'width'>;

/** From this many on facts stand side by side. */
const MANY_FACTS = 8;

/** Lists are set in by this much, mm. */
const INDENT = 6;

const steps = (lines: readonly string[]): Strip[] =>
  lines.map((line, i) => paragraph(line, WIDTH, { mark: String(i + 1), indent: INDENT }));

const bullets = (lines: readonly string[]): Strip[] =>
  lines.map((line) => paragraph(line, WIDTH, { mark: '–', indent: INDENT }));

const section = (title: string, strips: readonly Strip[]): Strip[] =>
  strips.length === 0 ? [] : [space(2), heading(title, WIDTH), ...strips];

/** What to measure, with a ruled place for the reading beside it. */
const toMeasure = (what: string): Strip => {
  const written = paragraph(what, 100, { mark: '–', indent: INDENT });
  const ruled = blank(text.drawing.setup.measured, 62);
  return {
    height: Math.max(written.height, ruled.height),
    items: [...written.items, ...move(ruled.items, [106, 3])],
    keep: false,
  };
};

const left = (title: string): Head => ({ title, align: 'left' });
const right = (title: string): Head => ({ title, align: 'right' });

const column = (head: Head, width: number): Column => ({ ...head, width });

/** Width of the names of values that stand side by side, mm: most names are longer. */
const NAMES = 54;

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

/** So many values stand in the table of settings; what there is more stands in one below it. */
const MAIN_VALUES = 3;
/** Widths of the columns of settings, mm: what is left is for writing. */
const COLUMNS = { belt: 21, side: 11, stopAt: 12, value: 21, turns: 20, reading: 28 } as const;

/** What is set, with a place to write what was read back. */
const settings = ({ names, rows }: SettingsTable, stopAt: string): Strip[] => {
  const t = text.drawing.setup.columns;
  const main = names.slice(0, MAIN_VALUES);
  const more = names.slice(MAIN_VALUES);
  const { belt, side, value, turns, reading } = COLUMNS;
  const taken = belt + side + COLUMNS.stopAt + main.length * value + turns + reading;
  const columns = [
    column(left(t.belt), belt),
    column(left(t.side), side),
    column(right(stopAt), COLUMNS.stopAt),
    ...main.map((name) => column(right(name), value)),
    column(left(t.turns), turns),
    column(left(t.reading), reading),
    column(left(t.read), WIDTH - taken),
  ];
  const cells = rows.map((row) => [
    row.belt,
    row.side,
    row.stopAt.toFixed(2),
    ...row.values.slice(0, MAIN_VALUES).map((one) => one.toFixed(2)),
    row.turns,
    row.reading,
    '',
  ]);
  const others = rows.map((row) => [
    row.belt,
    row.side,
    ...row.values.slice(MAIN_VALUES).map((one) => one.toFixed(2)),
  ]);
  const rest = (WIDTH - belt - side) / Math.max(1, more.length);
  return [
    ...table(columns, cells),
    ...(more.length === 0
      ? []
      : [
          space(2),
          ...table(
            [
              column(left(t.belt), belt),
              column(left(t.side), side),
              ...more.map((name) => column(right(name), rest)),
            ],
            others,
          ),
        ]),
  ];
};

/** What should come of it, with a place beside every height for what was measured. */
const expected = ({ places, rows }: SettingsTable): Strip[] => {
  const t = text.drawing.setup.columns;
  const heads = [
    left(t.belt),
    left(t.side),
    ...places.flatMap((place) => [right(t.bevel(place)), left(t.measured)]),
    right(t.volume),
  ];
  const cells = rows.map((row) => [
    row.belt,
    row.side,
    ...row.bevels.flatMap((bevel) => [bevel.toFixed(1), '']),
    row.volume.toFixed(0),
  ]);
  return places.length === 0 ? [] : fittedTable(heads, cells, WIDTH);
};

/** Below this a tenth off the edge moves nothing a maker can see, mm. */
const LEAST_CHANGE = 0.005;

/** A page filled by less than this part of its height is gone on with. */
const HARDLY = 0.3;

/** So many progress tables stand beside each other, as long as no word in them is broken. */
const MOST_ABREAST = 4;

/** Progress tables, several beside each other. */
const progress = (list: readonly Progress[], terms: SetupTerms): Strip[] => {
  const gap = 4;
  const heads = terms.progress.map((title) => ({ title, align: 'right' }) as const);
  const cellsOf = ({ rows }: Progress): string[][] =>
    rows.map(([stop, second, third]) => [stop.toFixed(2), second.toFixed(2), third.toFixed(1)]);
  const least = leastWidth(heads, list.flatMap(cellsOf));
  const abreast = Math.min(MOST_ABREAST, Math.floor((WIDTH + gap) / (least + gap)));
  const width = (WIDTH - (abreast - 1) * gap) / abreast;
  const blocks = list.map((one): Strip[] => [
    paragraph(one.title, width, { bold: true }),
    ...fittedTable(heads, cellsOf(one), width),
    space(1),
    paragraph(
      one.perTenth < LEAST_CHANGE
        ? text.drawing.setup.lineStays
        : terms.perTenth(one.perTenth.toFixed(2)),
      width,
    ),
    space(2),
  ]);
  const bands: Strip[] = [];
  for (let i = 0; i < blocks.length; i += abreast) {
    const band = blocks.slice(i, i + abreast);
    bands.push({
      height: Math.max(...band.map(heightOfAll)),
      items: band.flatMap((strips, n) => move(stack(strips, [0, 0]), [n * (width + gap), 0])),
      keep: false,
    });
  }
  return bands;
};

/** What holds for every fixture, after the cautions of this one. */
const general = (): Strip[] =>
  text.safety.cautions.flatMap((group) => [
    paragraph(group.title, WIDTH, { bold: true, keep: true }),
    ...bullets(group.lines),
  ]);

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

/** What is needed at the machine: settings, zero, the cautions of this fixture. */
const essentials = (data: SetupData, terms: SetupTerms): Strip[] => {
  const t = text.drawing.setup;
  return [
    paragraph(data.title, WIDTH, { height: TEXT.heading, bold: true, keep: true }),
    paragraph(text.safety.authority, WIDTH, { bold: true }),
    ...section(t.settingsTitle, [
      ...settings(data.settings, terms.stopAt),
      space(1.5),
      paragraph(terms.settingsNote, WIDTH),
      ...(data.settings.rows.some(({ reading }) => reading !== '')
        ? [paragraph(t.turnsNote, WIDTH)]
        : []),
    ]),
    ...section(t.onceTitle, [
      paragraph(data.once.map(({ name, value }) => `${name}: ${value}`).join('; '), WIDTH),
    ]),
    ...section(t.zeroTitle, steps(data.zeroing)),
    ...section(text.safety.title, bullets(data.cautions)),
  ];
};

/** What is looked up: general cautions, what to expect, numbers, budget, checks, places to write. */
const annex = (data: SetupData, terms: SetupTerms, { link, designId }: TitleBlock): Strip[] => {
  const t = text.drawing.setup;
  return [
    paragraph(t.annexTitle, WIDTH, { height: TEXT.heading, bold: true, keep: true }),
    ...general(),
    ...section(t.measureTitle, data.measure.map(toMeasure)),
    ...section(terms.expectedTitle, expected(data.settings)),
    ...section(t.progressTitle, [
      paragraph(terms.progressNote, WIDTH, { keep: true }),
      ...progress(data.progress, terms),
    ]),
    ...section(t.budgetTitle, budget(data.budget)),
    ...section(t.factsTitle, [paragraph(t.factsNote, WIDTH, { keep: true }), ...facts(data.facts)]),
    ...section(t.checksTitle, [
      paragraph(t.checksNote, WIDTH, { keep: true }),
      ...facts(data.checks),
    ]),
    ...section(
      t.recordTitle,
      t.record.map((what) => blank(what, WIDTH)),
    ),
    ...section(
      text.drawing.code.title,
      link === undefined ? [] : [codeStrip(link, designId)(WIDTH)],
    ),
  ];
};

/**
 * The set-up sheet, poured over as many pages as it takes. The first pages are what lies at the
 * machine: what is set belt by belt, how zero is found, cautions. The annex begins on a page of its
 * own, or on a further one that is hardly begun: what should come of it, numbers, tolerance budget and places
 * to write.
 */
export const setupSheets = (data: SetupData, block: TitleBlock): Sheet[] => {
  const paper = page(block.paper);
  const area = spaceOf(paper);
  const info = (sheet: number, sheets: number): SheetInfo => ({
    title: data.title,
    documentType: text.drawing.documentTypes.setup,
    number: `${block.designId}-setup`,
    sheet,
    sheets,
  });
  const room = area.y1 - area.y0 - titleBlockHeight(block, info(1, 1)) - 2 * INSET;
  const { terms } = data;
  const first = pour(essentials(data, terms), [room]);
  const last = first.at(-1) ?? [];
  const isBegun = first.length < 2 || heightOfAll(last) > HARDLY * room;
  const further = annex(data, terms, block);
  const pages = isBegun
    ? [...first, ...pour(further, [room])]
    : [...first.slice(0, -1), ...pour([...last, space(4), ...further], [room])];
  return pages.map((strips, i) => ({
    id: `setup-${String(i + 1)}`,
    title: data.title,
    size: sizeOf(paper),
    items: [
      ...border(paper),
      ...titleBlock(paper, block, info(i + 1, pages.length)),
      ...stack(strips, [area.x1 - BLOCK_WIDTH + INSET, area.y1 - INSET]),
    ],
  }));
};
