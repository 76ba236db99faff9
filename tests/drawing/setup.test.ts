import { describe, expect, it } from 'vitest';
import { fittedTable, heightOfAll, pour, table, wrap } from '../../src/drawing/layout.ts';
import type { SetupData } from '../../src/drawing/setup-data.ts';
import type { Section } from '../../src/drawing/belt-section.ts';
import { setupAnnex } from '../../src/drawing/setup-annex.ts';
import { setupSheets } from '../../src/drawing/setup-sheets.ts';
import type { Sheet } from '../../src/drawing/sheet.ts';
import { textWidth } from '../../src/drawing/text-width.ts';
import { text } from '../../src/text/index.ts';
import { clashes, outside } from './overlap.ts';
import { BLOCK } from './random-plate.ts';

const SQUARE: Section = {
  title: 'Seen along the stroke',
  shapes: [
    {
      points: [
        [0, 0],
        [60, 0],
        [60, 40],
        [0, 40],
      ],
      isClosed: true,
      stroke: 'visible',
      fill: 'hatch',
    },
  ],
  dimensions: [
    { kind: 'linear', axis: 'x', a: [0, 0], b: [60, 0], side: 'bottom', text: 'A' },
    { kind: 'note', at: [60, 40], text: 'Nose' },
  ],
};

const data: SetupData = {
  title: 'Spine-referenced rest',
  once: [{ name: 'Gap at the belt (feeler)', value: '1.25 mm' }],
  facts: Array.from({ length: 12 }, (_, i) => ({
    name: `Fact number ${String(i)} with a longer name`,
    value: `${String(i)}.5 mm`,
  })),
  pictures: { section: SQUARE, blade: { ...SQUARE, title: 'Blade' } },
  others: [
    {
      blade: 'Hunter 90',
      picture: { ...SQUARE, title: 'Hunter 90 from its side' },
      places: ['heel, 9 mm', 'tip, 79 mm'],
      bevels: Array.from({ length: 10 }, (_, i) => [17.3 + i, 14.2]),
    },
  ],
  inches: true,
  settings: {
    names: ['A: Step to belt, mm', 'Gap at the belt by feeler, mm'],
    lengths: [true, true],
    derived: ['Step from the pin zero, mm'],
    blade: 'Hunter 115',
    places: ['heel, 12 mm', 'middle, 58 mm', 'tip, 101 mm'],
    rows: Array.from({ length: 10 }, (_, i) => ({
      belt: `P${String(60 * (i + 1))}`,
      side: i % 2 === 0 ? 'left' : 'right',
      stopAt: 0.7 - 0.05 * i,
      values: [4.65 - 0.1 * i, 1],
      derived: [-1.35 - 0.1 * i],
      turns: '1 turn, 12 divisions closer',
      reading: `${String(20 + i)}`,
      bevels: [22.9, 20.4, 18.1],
      volume: 122,
    })),
  },
  bladeRows: [
    {
      blade: 'Hunter 115',
      places: [
        { place: 'heel 12', thickness: '4', height: '29' },
        { place: 'tip 101.3', thickness: '3.5', height: '15.2' },
      ],
      edge: '0.8; 0.3',
      spine: '0.4',
      bevels: '17 mm',
    },
  ],
  progressBlade: 'Told of Hunter 115.',
  notes: ['No. 3: New belt: take the zero again.'],
  progress: Array.from({ length: 4 }, (_, i) => ({
    title: `Setting ${String(i + 1)}`,
    rows: [0.7, 0.5, 0.3].map((edge) => [edge, 3.5 - edge / 2, 24 - 4 * edge] as const),
    perTenth: 0.41,
  })),
  zeroing: ['Isolate the machine and mount the belt.', 'Close the step until the pin is held.'],
  measure: ['Face of the abrasive square to the seat', 'Step parallel to the belt'],
  cautions: ['Never thinner than 0.2 mm at the edge.'],
  terms: text.family.shared.bevelSheet,
  budget: [
    {
      what: 'Bevel height, side ground first',
      spread: '± 0.84 mm',
      worst: '21.1 mm to 24.9 mm',
      most: 'Wear of the belt (41 %); setting of the step (22 %); thickness (9 %)',
      halved: '± 0.61 mm',
    },
  ],
  checks: [{ name: 'Running clearance', value: '1.0 mm, passed' }],
};

const sheets = setupSheets(data, BLOCK);
const annex = setupAnnex(data, BLOCK);
const wordsOf = (pages: readonly Sheet[]): string =>
  pages
    .flatMap((sheet) => sheet.items)
    .flatMap((item) => (item.kind === 'text' ? [item.text] : []))
    .join(' ')
    .replace(/\s+/g, ' ');
const words = wordsOf(sheets);
const told = wordsOf(annex);

describe('set-up sheet', () => {
  it('flows over pages without a text on anything', () => {
    expect(sheets.length).toBeGreaterThan(1);
    for (const pages of [sheets, annex]) {
      expect(pages.flatMap(clashes)).toEqual([]);
      expect(pages.flatMap(outside)).toEqual([]);
    }
  });

  it('tells settings, what comes of them, steps and what to measure; its annex progress', () => {
    for (const part of ['4.65', '22.9', '0.70', 'P600', '1.25 mm']) expect(words).toContain(part);
    for (const step of [...data.zeroing, ...data.measure, ...data.cautions, ...data.notes])
      expect(words).toContain(step);
    for (const part of ['Setting 4', '3.35', '0.41', '-1.35', '122', ...data.measure])
      expect(told).toContain(part);
  });

  it('tells in the annex of every other blade what comes of each pass, with its picture', () => {
    for (const part of ['Hunter 90 from its side', 'tip, 79 mm', '17.3', '26.3', '14.2'])
      expect(told).toContain(part);
  });

  it('tells what is set and measured in inches too where they are wanted, and no angle', () => {
    // An inch is 25.4 mm exactly (ISO 80000-3): 4.65 / 25.4 = 0.18307, 22.9 / 25.4 = 0.90157.
    for (const part of ['4.65 (0.1831″)', 'In brackets after a length'])
      expect(words).toContain(part);
    for (const part of [
      '0.70 (0.0276″)',
      '22.9 (0.902″)',
      '17.3 (0.681″)',
      '0.50 (0.0197″)',
      '0.41 mm (0.0161″)',
    ])
      expect(told).toContain(part);
    expect(told).toMatch(/3\.25 (?!\()/);
    const metric = { ...data, inches: false };
    expect(wordsOf([...setupSheets(metric, BLOCK), ...setupAnnex(metric, BLOCK)])).not.toContain(
      '″',
    );
  });

  it('tells in the annex what errors do, and what halving the greatest of them leaves', () => {
    for (const part of ['± 0.84 mm', 'Wear of the belt (41 %)', '± 0.61 mm'])
      expect(told).toContain(part);
  });

  it('shows the letters of its readings in pictures that stay whole', () => {
    for (const part of ['Seen along the stroke', 'Nose']) expect(words).toContain(part);
    // Beside border and title block, which are on the second page as well: once in each picture.
    const [first, second] = sheets.map(
      ({ items }) => items.filter((item) => item.kind === 'text' && item.text === 'A').length,
    );
    expect((first ?? 0) - (second ?? 0)).toBe(2);
  });

  // The annex is a document of its own since the sheet is to hang at the machine: nothing that is
  // needed there, cautions least of all, may be looked for in it.
  it('has settings, zero and all cautions on its two pages, apart from the annex', () => {
    expect(sheets).toHaveLength(2);
    const all = text.safety.cautions.flatMap(({ lines }) => lines);
    for (const part of ['P600', ...data.zeroing, ...data.cautions, ...all, '1.25 mm'])
      expect(words).toContain(part);
    expect(words).not.toContain(text.drawing.setup.annexTitle);
    expect(told).toContain(text.drawing.setup.annexTitle);
  });

  // The list of cautions that the project promises; the words are ours.
  it.each([
    'eye protection',
    'respirator',
    'fine dust',
    'gloves',
    'push block',
    'cool often',
    'never grind a sharpened edge',
    'splice',
    'rated speed',
    'residual-current device',
    'Isolate the machine',
    'motor off',
    'printed parts',
    'deburr the blade where it rests',
    'manuals of the machine',
    'local codes',
  ])('cautions: %s', (part) => {
    expect(words).toContain(part);
  });

  it('never claims that a fixture is safe', () => {
    const spoken = JSON.stringify(text.safety).replaceAll(
      'does not say that the fixture is safe',
      '',
    );
    const claims = spoken.replaceAll('nothing here says that the fixture is safe', '');
    expect(claims).not.toMatch(/\bis safe\b/);
  });
});

describe('wrapped text', () => {
  const long = 'Set the nose to the belt with a feeler; unbreakable'.concat('x'.repeat(60));

  it('keeps to its width and loses nothing', () => {
    for (const width of [15, 30, 60]) {
      const lines = wrap(long, width, 2.5);
      for (const line of lines) expect(textWidth(line, 2.5)).toBeLessThanOrEqual(width);
      expect(lines.join('').replaceAll(' ', '')).toBe(long.replaceAll(' ', ''));
    }
  });
});

describe('tables', () => {
  const heads = [
    { title: 'Id', align: 'left' },
    { title: 'Purpose', align: 'left' },
  ] as const;
  const rows = Array.from({ length: 30 }, (_, i) => [`A${String(i)}`, 'A passage for a screw']);

  it('are as wide as asked for and keep short columns on one line', () => {
    const [head] = fittedTable(heads, rows, 120);
    const right = head?.items.flatMap((i) =>
      i.kind === 'polyline' ? i.points.map((p) => p[0]) : [],
    );
    expect(Math.max(...(right ?? []))).toBeCloseTo(120);
  });

  it('pour over pages with their head repeated and no row lost or cut', () => {
    const strips = table(
      [
        { title: 'Id', width: 20, align: 'left' },
        { title: 'Purpose', width: 80, align: 'left' },
      ],
      rows,
    );
    const pages = pour(strips, [60, 80]);
    expect(pages.length).toBeGreaterThan(2);
    pages.forEach((page, i) => {
      expect(heightOfAll(page)).toBeLessThanOrEqual(i === 0 ? 60 : 80);
      const first = page[0]?.items.find((item) => item.kind === 'text');
      expect(first?.kind === 'text' && first.text).toBe('Id');
    });
    const ids = pages
      .flat()
      .flatMap((strip) =>
        strip.items.flatMap((i) => (i.kind === 'text' && /^A\d+$/.test(i.text) ? [i.text] : [])),
      );
    expect(ids).toEqual(rows.map((row) => row[0]));
  });
});
