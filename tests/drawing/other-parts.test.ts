import { describe, expect, it } from 'vitest';
import { partSheets } from '../../src/drawing/part-sheets.ts';
import type { Sheet } from '../../src/drawing/sheet.ts';
import { path, polygon, rectangle, type Vertex } from '../../src/geometry/loop.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import type { PlatePart, PrintPart } from '../../src/model/part.ts';
import { clashes, outside } from './overlap.ts';
import { bar, base, nose, plateOf, screw } from './parts.ts';
import { BLOCK } from './random-plate.ts';

const textsOf = (sheets: readonly Sheet[]): string[] =>
  sheets.flatMap((s) => s.items).flatMap((item) => (item.kind === 'text' ? [item.text] : []));

const withOutline = (id: string, outer: PlatePart['layers'][0]['profile']['outer']): PlatePart => ({
  ...plateOf(id, [1, 1], 6, []),
  layers: [{ profile: { outer, holes: [] }, from: 0, to: 6 }],
});

/** Rows of the table of corners on all sheets: number, x, y and what else is in the row. */
const cornerRows = (sheets: readonly Sheet[]): number[][] =>
  sheets.flatMap((sheet) => {
    const texts = sheet.items.flatMap((item) => (item.kind === 'text' ? [item] : []));
    const head = texts.find((t) => t.text === 'No.' && t.bold);
    if (!head) return [];
    return texts
      .filter((t) => t.at[0] === head.at[0] && /^\d+$/.test(t.text) && t.at[1] < head.at[1])
      .map((t) =>
        texts
          .filter((other) => Math.abs(other.at[1] - t.at[1]) < 1e-9 && other.at[0] >= t.at[0])
          .sort((p, q) => p.at[0] - q.at[0])
          .map((other) => Number(other.text)),
      );
  });

describe('drawings of other parts', () => {
  it.each([
    ['a print of several layers', nose],
    ['a bar with holes in two faces', bar],
    ['a plate', base],
  ] as const)('of %s have no text on anything', (_, part) => {
    const sheets = partSheets(part, BLOCK);
    expect(sheets).toHaveLength(1);
    expect(sheets.flatMap(clashes)).toEqual([]);
    expect(sheets.flatMap(outside)).toEqual([]);
  });

  it('of bought parts are not made', () => {
    expect(partSheets(screw, BLOCK)).toEqual([]);
  });

  it('carry everything that a shop asks for', () => {
    const texts = textsOf(partSheets(base, BLOCK));
    // ISO 7200 fields and what the project's own list for drawings wants.
    for (const wanted of [
      'Steel S235',
      'Thickness',
      'Quantity',
      'oiled',
      'ISO 2768-m',
      'ISO 13715: −0.2/−0.4',
      'mm',
      'Scale',
      'Legal owner',
      'Title',
      'Created by',
      'Approved by',
      'Date of issue',
      'Document type',
      'Identification number',
      'PW-0123AB-base',
      '1/1',
      'Spine-referenced rest',
    ])
      expect(texts).toContain(wanted);
    expect(texts.join(' ')).toContain('motor off');
  });

  it('of a print tell its levels and the depth of its holes', () => {
    const texts = textsOf(partSheets(nose, BLOCK));
    for (const wanted of ['6', '12', '20', 'z 0 to 6', 'z 6 to 12', 'Height'])
      expect(texts).toContain(wanted);
  });

  it('of a bar locate cross holes from the datum, with thread and depth', () => {
    const texts = textsOf(partSheets(bar, BLOCK));
    for (const wanted of ['D1', 'E1', 'front', 'left', 'Ø6.6', 'Ø5', '30', '12', '8'])
      expect(texts).toContain(wanted);
    expect(texts.join(' ')).toMatch(/tap M6, 10\s+deep/);
  });
});

describe('outlines with many corners', () => {
  const wave: Vec2[] = Array.from({ length: 60 }, (_, i): Vec2 => {
    const angle = (i * Math.PI) / 30;
    const radius = i % 2 === 0 ? 60.123 : 52.5;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });

  it('of plates are listed corner by corner, in order, within 0.0005 mm', () => {
    const rows = cornerRows(partSheets(withOutline('wave', polygon(wave)), BLOCK));
    expect(rows.map((row) => row[0])).toEqual(wave.map((_, i) => i + 1));
    const [x0, y0] = [0, 1].map((i) => Math.min(...wave.map((p) => p[i as 0 | 1]))) as [
      number,
      number,
    ];
    const listed = rows.map((row): Vec2 => [(row[1] ?? NaN) + x0, (row[2] ?? NaN) + y0]);
    const start = wave.findIndex(
      ([x, y]) => Math.hypot(x - (listed[0]?.[0] ?? NaN), y - (listed[0]?.[1] ?? NaN)) < 0.001,
    );
    listed.forEach(([x, y], i) => {
      const [u, v] = wave[(start + i) % wave.length] ?? [NaN, NaN];
      expect(Math.abs(x - u)).toBeLessThan(0.00051);
      expect(Math.abs(y - v)).toBeLessThan(0.00051);
    });
  });

  it('tell the arcs between corners with their sense', () => {
    // Half circles of radius 3 along one edge, bulging out and in by turns.
    const bumps: Vertex[] = Array.from({ length: 30 }, (_, i) => ({
      x: 180 - 6 * i,
      y: 40,
      bulge: i % 2 === 0 ? 1 : -1,
    }));
    const outer = path([
      { x: 0, y: 0, bulge: 0 },
      { x: 180, y: 0, bulge: 0 },
      ...bumps,
      { x: 0, y: 40, bulge: 0 },
    ]);
    const rows = cornerRows(partSheets(withOutline('comb', outer), BLOCK));
    const arcs = rows.filter((row) => row.length === 4).map((row) => row[3]);
    expect(rows).toHaveLength(33);
    expect(arcs).toEqual(bumps.map((b) => 3 * b.bulge));
  });

  it('of prints are left to the file, which a note says', () => {
    const print = {
      ...nose,
      layers: [{ profile: { outer: polygon(wave), holes: [] }, from: 0, to: 8 }],
      holes: [],
    };
    const sheets = partSheets(print, BLOCK);
    expect(sheets).toHaveLength(1);
    expect(textsOf(sheets).join(' ')).toContain('take it from the file');
    expect(cornerRows(sheets)).toEqual([]);
  });

  it('of a print that is high for its foot ask for a brim, and of others do not', () => {
    const bar4 = (height: number): PrintPart => ({
      ...nose,
      layers: [{ profile: { outer: rectangle([0, 0], [5, 4]), holes: [] }, from: 0, to: height }],
      holes: [],
    });
    const told = (height: number): string => textsOf(partSheets(bar4(height), BLOCK)).join(' ');
    expect(told(50)).toContain('50 mm high on a foot 4 mm wide: print it with a brim');
    expect(told(9)).not.toContain('brim');
  });
});
