import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import type { Proved, ReachTable } from '../../src/adapt/reach.ts';
import { reachSheet } from '../../src/adapt/reach-sheet.ts';
import { svg } from '../../src/export/svg.ts';

const band = (up: number, across: number, run: Proved['run']): Proved => ({
  up: [up, up + 0.5],
  across: [across, across + 5],
  run,
});

const axis = { label: 'Size', unit: 'mm', from: 0, to: 9, step: 0.1 } as const;

const tableOf = (bands: readonly Proved[]): ReachTable => ({
  format: 'platenwright-reach',
  design: 'A & <B>',
  family: 'Rest',
  scope: 'bars',
  limits: [],
  axes: { across: axis, up: axis, run: axis },
  bands,
});

/** Filled boxes of a tone as (least x, greatest x, least y, greatest y). */
const boxes = (table: ReachTable, tone: 'tint' | 'ink'): number[][] =>
  reachSheet(table).items.flatMap((item) => {
    if (item.kind !== 'fill' || item.tone !== tone) return [];
    const [x, y] = [item.points.map((p) => p[0]), item.points.map((p) => p[1])];
    return [[Math.min(...x), Math.max(...x), Math.min(...y), Math.max(...y)]];
  });

const texts = (table: ReachTable): string[] =>
  reachSheet(table).items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));

describe('the picture of a reach', () => {
  const table = tableOf([band(3, 40, [4, 6]), band(3, 45, [3, 5]), band(3.5, 45, [3, 7])]);

  it('draws every proved band to scale and no other', () => {
    const found = boxes(table, 'tint');
    expect(found).toHaveLength(3);
    const [first = [], second = [], third = []] = found;
    expect(first[1]).toBeCloseTo(second[0] ?? NaN, 9);
    expect(third[2]).toBeCloseTo(second[3] ?? NaN, 9);
    const width = ([x0 = 0, x1 = 0]: number[]): number => x1 - x0;
    expect(width(first)).toBeCloseTo(width(second), 9);
    // Two bands of 5 mm fill the field from end to end.
    expect((second[1] ?? 0) - (first[0] ?? 0)).toBeCloseTo(2 * width(first), 9);
    const field = reachSheet(table).items.flatMap((item) =>
      item.kind === 'polyline' && item.stroke === 'visible' ? item.points : [],
    );
    const ends = (values: readonly number[]) => [Math.min(...values), Math.max(...values)];
    expect([first[0], second[1]]).toEqual(ends(field.map((p) => p[0])));
    expect([second[2], third[3]]).toEqual(ends(field.map((p) => p[1])));
  });

  it('writes the angles into the bands and draws them as bars to one scale', () => {
    expect(texts(table)).toEqual(expect.arrayContaining(['4-6', '3-5', '3-7', '40', '3.5']));
    const bars = boxes(table, 'ink').map(([x0 = 0, x1 = 0]) => x1 - x0);
    // Two, two and four degrees; the bar of 3 to 7 reaches across its whole band.
    expect((bars[0] ?? 0) / (bars[2] ?? 1)).toBeCloseTo(0.5, 9);
    expect((bars[1] ?? 0) / (bars[2] ?? 1)).toBeCloseTo(0.5, 9);
  });

  it('stays on its sheet and well formed, whatever the design is called', () => {
    const sheet = reachSheet(table);
    for (const [x0 = 0, x1 = 0, y0 = 0, y1 = 0] of [
      ...boxes(table, 'tint'),
      ...boxes(table, 'ink'),
    ])
      expect(x0 > 0 && y0 > 0 && x1 < sheet.size[0] && y1 < sheet.size[1]).toBe(true);
    expect(XMLValidator.validate(svg(sheet))).toBe(true);
  });

  it('says so when nothing is proved', () => {
    expect(boxes(tableOf([]), 'tint')).toEqual([]);
    expect(texts(tableOf([])).join()).toMatch(/nothing in the range/);
  });
});
