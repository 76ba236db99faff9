import { text } from '../text/index.ts';
import { border } from './border.ts';
import { move, TEXT } from './items.ts';
import {
  blank,
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
import type { Fact, Progress, SettingsTable, SetupData } from './setup-data.ts';
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

/** Names and values in two columns. */
const facts = (list: readonly Fact[]): Strip[] => {
  const t = text.drawing.setup;
  const columns: Column[] = [
    { title: t.what, width: 56, align: 'left' },
    { title: t.value, width: WIDTH - 56, align: 'left' },
  ];
  return list.length === 0
    ? []
    : table(
        columns,
        list.map((fact) => [fact.name, fact.value]),
      );
};

const settings = ({ names, places, rows }: SettingsTable): Strip[] => {
  const t = text.drawing.setup.columns;
  const [belt, side, stop, turns, reading, read] = [30, 12, 14, 24, 15, 16];
  const fixed = belt + side + stop + turns + reading + read;
  // What is set has longer names than the places where bevels are compared.
  const each = (WIDTH - fixed) / Math.max(1, 1.5 * names.length + places.length);
  const columns: Column[] = [
    { title: t.belt, width: belt, align: 'left' },
    { title: t.side, width: side, align: 'left' },
    { title: t.stopAt, width: stop, align: 'right' },
    ...names.map((title): Column => ({ title, width: 1.5 * each, align: 'right' })),
    { title: t.turns, width: turns, align: 'right' },
    { title: t.reading, width: reading, align: 'right' },
    { title: t.read, width: read, align: 'right' },
    ...places.map((place): Column => ({ title: t.bevel(place), width: each, align: 'right' })),
  ];
  const cells = rows.map((row) => [
    row.belt,
    row.side,
    row.stopAt.toFixed(2),
    ...row.values.map((value) => value.toFixed(2)),
    row.turns,
    row.reading,
    '',
    ...row.bevels.map((bevel) => bevel.toFixed(1)),
  ]);
  return table(columns, cells);
};

/** Progress tables, three beside each other. */
const progress = (list: readonly Progress[]): Strip[] => {
  const t = text.drawing.setup.progress;
  const gap = 4;
  const width = (WIDTH - 2 * gap) / 3;
  const columns: Column[] = [t.edge, t.angle, t.bevel].map((title) => ({
    title,
    width: width / 3,
    align: 'right',
  }));
  const blocks = list.map(({ title, rows, perTenth }): Strip[] => [
    paragraph(title, width, { bold: true }),
    ...table(
      columns,
      rows.map((row) => [row.edge.toFixed(2), row.angle.toFixed(2), row.bevel.toFixed(1)]),
    ),
    space(1),
    paragraph(t.perTenth(perTenth.toFixed(2)), width),
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

const body = (data: SetupData): Strip[] => {
  const t = text.drawing.setup;
  return [
    paragraph(data.title, WIDTH, { height: TEXT.heading, bold: true, keep: true }),
    ...facts(data.facts),
    ...section(text.safety.title, cautions(data.cautions)),
    ...section(t.measureTitle, data.measure.map(toMeasure)),
    ...section(t.zeroTitle, steps(data.zeroing)),
    ...section(t.settingsTitle, [
      ...settings(data.settings),
      space(1.5),
      paragraph(t.settingsNote, WIDTH),
    ]),
    ...section(t.progressTitle, [paragraph(t.progressNote, WIDTH), ...progress(data.progress)]),
    ...section(t.checksTitle, [paragraph(t.checksNote, WIDTH), ...facts(data.checks)]),
    ...section(
      t.recordTitle,
      t.record.map((what) => blank(what, WIDTH)),
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
  const pages = pour(body(data), [room]);
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
