import { text } from '../text/index.ts';
import { border } from './border.ts';
import { codeStrip } from './code.ts';
import { move, TEXT } from './items.ts';
import {
  blank,
  fittedTable,
  heading,
  heightOfAll,
  paragraph,
  pour,
  space,
  stack,
  table,
  type Column,
  type Strip,
} from './layout.ts';
import { page, sizeOf, spaceOf } from './paper.ts';
import type { Fact, Progress, SettingsTable, SetupData, SetupTerms } from './setup-data.ts';
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

/** Names and values: in two columns, or side by side in four where there are many. */
const facts = (list: readonly Fact[]): Strip[] => {
  const t = text.drawing.setup;
  if (list.length === 0) return [];
  const pairs = list.map((fact) => [fact.name, fact.value]);
  if (list.length < MANY_FACTS) return fittedTable([left(t.what), left(t.value)], pairs, WIDTH);
  const half = Math.ceil(pairs.length / 2);
  const rows = pairs.slice(0, half).map((pair, i) => [...pair, ...(pairs[half + i] ?? ['', ''])]);
  return fittedTable([left(t.what), left(t.value), left(t.what), left(t.value)], rows, WIDTH);
};

/** What is set, with a place to write what was read back. */
const settings = ({ names, rows }: SettingsTable, stopAt: string): Strip[] => {
  const t = text.drawing.setup.columns;
  const heads = [
    left(t.belt),
    left(t.side),
    right(stopAt),
    ...names.map(right),
    left(t.turns),
    left(t.reading),
    left(t.read),
  ];
  const cells = rows.map((row) => [
    row.belt,
    row.side,
    row.stopAt.toFixed(2),
    ...row.values.map((value) => value.toFixed(2)),
    row.turns,
    row.reading,
    '',
  ]);
  return fittedTable(heads, cells, WIDTH);
};

/** What should come of it, with a place beside every height for what was measured. */
const expected = ({ places, rows }: SettingsTable): Strip[] => {
  const t = text.drawing.setup.columns;
  const heads = [
    left(t.belt),
    left(t.side),
    ...places.flatMap((place) => [right(t.bevel(place)), left(t.measured)]),
  ];
  const cells = rows.map((row) => [
    row.belt,
    row.side,
    ...row.bevels.flatMap((bevel) => [bevel.toFixed(1), '']),
  ]);
  return places.length === 0 ? [] : fittedTable(heads, cells, WIDTH);
};

/** Progress tables, three beside each other. */
const progress = (list: readonly Progress[], terms: SetupTerms): Strip[] => {
  const gap = 4;
  const width = (WIDTH - 2 * gap) / 3;
  const columns: Column[] = terms.progress.map((title) => ({
    title,
    width: width / 3,
    align: 'right',
  }));
  const blocks = list.map(({ title, rows, perTenth }): Strip[] => [
    paragraph(title, width, { bold: true }),
    ...table(
      columns,
      rows.map(([stop, second, third]) => [stop.toFixed(2), second.toFixed(2), third.toFixed(1)]),
    ),
    space(1),
    paragraph(terms.perTenth(perTenth.toFixed(2)), width),
    space(2),
  ]);
  const bands: Strip[] = [];
  for (let i = 0; i < blocks.length; i += 3) {
    const band = blocks.slice(i, i + 3);
    bands.push({
      height: Math.max(...band.map(heightOfAll)),
      items: band.flatMap((strips, n) => move(stack(strips, [0, 0]), [n * (width + gap), 0])),
      keep: false,
    });
  }
  return bands;
};

const cautions = (own: readonly string[]): Strip[] => {
  const t = text.safety;
  return [
    paragraph(t.authority, WIDTH, { bold: true }),
    ...bullets(own),
    ...t.cautions.flatMap((group) => [
      paragraph(group.title, WIDTH, { bold: true, keep: true }),
      ...bullets(group.lines),
    ]),
  ];
};

/** What a sheet of bevels by edge thickness calls things. */
const bevels = (): SetupTerms => {
  const t = text.drawing.setup;
  const { edge, angle, bevel, perTenth } = t.progress;
  return {
    stopAt: t.columns.stopAt,
    settingsNote: t.settingsNote,
    expectedTitle: t.expectedTitle,
    progressNote: t.progressNote,
    progress: [edge, angle, bevel],
    perTenth,
  };
};

const body = (data: SetupData, { link, designId }: TitleBlock): Strip[] => {
  const t = text.drawing.setup;
  const terms = data.terms ?? bevels();
  return [
    paragraph(data.title, WIDTH, { height: TEXT.heading, bold: true, keep: true }),
    ...facts(data.facts),
    ...section(text.safety.title, cautions(data.cautions)),
    ...section(t.measureTitle, data.measure.map(toMeasure)),
    ...section(t.zeroTitle, steps(data.zeroing)),
    ...section(t.settingsTitle, [
      ...settings(data.settings, terms.stopAt),
      space(1.5),
      paragraph(terms.settingsNote, WIDTH),
    ]),
    ...section(terms.expectedTitle, expected(data.settings)),
    ...section(t.progressTitle, [
      paragraph(terms.progressNote, WIDTH, { keep: true }),
      ...progress(data.progress, terms),
    ]),
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
      link === undefined ? [] : [codeStrip(link, designId, WIDTH)],
    ),
  ];
};

/**
 * The set-up sheet: what is measured first, how zero is found, what is set belt by belt and what
 * should come of it, with cautions and places to write, poured over as many pages as it takes.
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
  const pages = pour(body(data, block), [room]);
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
