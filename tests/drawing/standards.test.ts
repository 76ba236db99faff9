import { describe, expect, it } from 'vitest';
import { border } from '../../src/drawing/border.ts';
import { dimensionText } from '../../src/drawing/dimension.ts';
import { TEXT } from '../../src/drawing/items.ts';
import { landscape, portrait, sizeOf, spaceOf, type Paper } from '../../src/drawing/paper.ts';
import { factor, SCALES, scaleText } from '../../src/drawing/scales.ts';
import { STROKES } from '../../src/drawing/strokes.ts';
import { BLOCK_WIDTH, projectionSymbol } from '../../src/drawing/title-block.ts';

describe('sheets', () => {
  // Trimmed sizes of ISO 216; 8.5 x 11, 11 x 17 and 17 x 22 in of ASME Y14.1 (from memory).
  it.each([
    [portrait('A4'), 210, 297],
    [landscape('A3'), 420, 297],
    [landscape('A2'), 594, 420],
    [portrait('Letter'), 8.5 * 25.4, 11 * 25.4],
    [landscape('Tabloid'), 17 * 25.4, 11 * 25.4],
    [landscape('C'), 22 * 25.4, 17 * 25.4],
  ] as const)('%o has its size', (paper, width, height) => {
    expect(sizeOf(paper)[0]).toBeCloseTo(width, 9);
    expect(sizeOf(paper)[1]).toBeCloseTo(height, 9);
  });

  // Drawing spaces of ISO 5457:1999 as transcribed in an open (CC0) set of sheet templates.
  it.each([
    [portrait('A4'), 180, 277],
    [landscape('A3'), 390, 277],
    [landscape('A2'), 564, 400],
  ] as const)('%o leaves its drawing space', (paper, width, height) => {
    const space = spaceOf(paper);
    expect(space.x0).toBe(20);
    expect(space.x1 - space.x0).toBe(width);
    expect(space.y1 - space.y0).toBe(height);
  });

  const fields = (paper: Paper): { columns: number; rows: string } => {
    const texts = border(paper).flatMap((item) => (item.kind === 'text' ? [item.text] : []));
    return {
      columns: Math.max(...texts.filter((t) => /^\d+$/.test(t)).map(Number)),
      rows: [...new Set(texts.filter((t) => /^[A-Z]$/.test(t)))].sort().join(''),
    };
  };

  // A4 and A3 from the same templates; A2 (12 x 8) from memory of ISO 5457. I and O are not used.
  it.each([
    [portrait('A4'), 4, 'ABCDEF'],
    [landscape('A3'), 8, 'ABCDEF'],
    [landscape('A2'), 12, 'ABCDEFGH'],
  ] as const)('%o has its grid fields', (paper, columns, rows) => {
    expect(fields(paper)).toEqual({ columns, rows });
  });

  it('has a title block of 180 mm (ISO 7200)', () => {
    expect(BLOCK_WIDTH).toBe(180);
  });
});

describe('scales', () => {
  // ISO 5455: 1, 2 and 5 with their tens; 1:3, 1:4 and 1:2.5 are not in the series.
  it('are those of ISO 5455, in falling order', () => {
    expect(SCALES.map(scaleText)).toEqual([
      '10:1',
      '5:1',
      '2:1',
      '1:1',
      '1:2',
      '1:5',
      '1:10',
      '1:20',
      '1:50',
    ]);
    const factors = SCALES.map(factor);
    expect(factors).toEqual([...factors].sort((a, b) => b - a));
  });
});

describe('lines and letters', () => {
  it('have widths of the ISO 128 series, wide to narrow as 2 to 1', () => {
    const series = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2];
    for (const { width } of Object.values(STROKES)) expect(series).toContain(width);
    expect(STROKES.visible.width / STROKES.hidden.width).toBe(2);
    for (const name of ['centre', 'dimension', 'hatch', 'phantom'] as const)
      expect(STROKES[name].width).toBe(STROKES.hidden.width);
  });

  it('have the line types of ISO 128: hidden dashed, centre dash-dot, the rest continuous', () => {
    expect(STROKES.hidden.dashes).toHaveLength(2);
    expect(STROKES.centre.dashes).toHaveLength(4);
    expect(STROKES.phantom.dashes).toHaveLength(6);
    for (const name of ['visible', 'dimension', 'frame', 'table', 'cut'] as const)
      expect(STROKES[name].dashes).toEqual([]);
  });

  // Letter heights of ISO 3098-1, from memory.
  it('have heights of the ISO 3098 series, none under 2.5 mm', () => {
    for (const height of Object.values(TEXT)) {
      expect([2.5, 3.5, 5, 7, 10, 14, 20]).toContain(height);
    }
  });

  // Proportions from the same CC0 templates: ends 5 and 10, length 10, circles 7 beyond the large end.
  it('has the first-angle symbol: cone with its small end to the left, circles to the right', () => {
    const items = projectionSymbol({ x0: 0, y0: 0, x1: 40, y1: 10 });
    const circles = items.flatMap((i) => (i.kind === 'circle' ? [i] : []));
    const cone = items.flatMap((i) => (i.kind === 'polyline' ? [i.points] : []))[0] ?? [];
    const radii = circles.map((c) => c.radius).sort((a, b) => a - b);
    const xs = cone.map((p) => p[0]);
    const [left, right] = [Math.min(...xs), Math.max(...xs)];
    const heightAt = (x: number): number => {
      const ys = cone.filter((p) => p[0] === x).map((p) => p[1]);
      return Math.max(...ys) - Math.min(...ys);
    };
    const unit = (right - left) / 10;
    expect(radii.map((r) => (2 * r) / unit)).toEqual([expect.closeTo(5), expect.closeTo(10)]);
    expect(heightAt(left) / unit).toBeCloseTo(5);
    expect(heightAt(right) / unit).toBeCloseTo(10);
    expect(((circles[0]?.centre[0] ?? 0) - right) / unit).toBeCloseTo(7);
  });
});

describe('written values', () => {
  it.each([
    [120, '120'],
    [6.6, '6.6'],
    [4.25, '4.25'],
    [4.2501, '4.25'],
    [4.2537, '4.254'],
    [-3.5, '-3.5'],
    [0, '0'],
  ])('%f is written %s', (value, written) => {
    expect(dimensionText(value)).toBe(written);
  });

  it('are never more than 0.0005 mm off', () => {
    for (let i = 0; i < 2000; i++) {
      const value = i * 0.0617283951;
      expect(Math.abs(Number(dimensionText(value)) - value)).toBeLessThanOrEqual(5.0001e-4);
    }
  });
});
