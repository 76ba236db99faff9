import { describe, expect, it } from 'vitest';
import { partSheets } from '../../src/drawing/part-sheets.ts';
import { clashes, outside } from './overlap.ts';
import { BLOCK, randomPlate } from './random-plate.ts';

const seeds = Array.from({ length: 40 }, (_, i) => i + 1);

describe('the checker', () => {
  const text = (x: number, y: number) =>
    ({
      kind: 'text',
      at: [x, y],
      text: '12.5',
      height: 3.5,
      align: 'left',
      angle: 0,
      bold: false,
    }) as const;
  const sheet = (...items: Parameters<typeof clashes>[0]['items']) => ({
    id: 's',
    title: '',
    size: [210, 297] as const,
    items,
  });

  it('finds text on text, text on a line and text off the sheet, and nothing else', () => {
    const line = { kind: 'line', a: [0, 12], b: [50, 12], stroke: 'dimension' } as const;
    expect(clashes(sheet(text(10, 10), text(13, 12)))).toHaveLength(1);
    expect(clashes(sheet(text(10, 10), line))).toHaveLength(1);
    expect(clashes(sheet(text(10, 13), line))).toEqual([]);
    expect(outside(sheet(text(205, 10)))).toHaveLength(1);
  });
});

describe('part drawings of random plates', () => {
  it.each(seeds)('plate %i: no text touches a line or another text', (seed) => {
    const sheets = partSheets(randomPlate(seed), BLOCK);
    expect(sheets.length).toBeGreaterThan(0);
    expect(sheets.flatMap(clashes)).toEqual([]);
    expect(sheets.flatMap(outside)).toEqual([]);
  });
});
