import PDFDocument from 'pdfkit';
import { describe, expect, it } from 'vitest';
import { fontSize, textWidth } from '../../src/drawing/text-width.ts';
import { fonts } from './sheets.ts';

/** The font file read by another program: the PDF library's font engine. */
const doc = new PDFDocument({ autoFirstPage: false, font: '' });
doc.registerFont('regular', fonts.regular).registerFont('bold', fonts.bold);

const range = (from: number, to: number): string =>
  Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i)).join('');
const characters = `${range(0x20, 0x7e)}${range(0xa0, 0xff)}ΑΒΓΔΩαβγδθμπφω–—‘’“”…′″⁄−≤≥≈⅓⅔⅛⅜⅝⅞←↑→↓∠√∞⌀□△○☐⚠`;

describe('widths of drawing text', () => {
  it.each(['regular', 'bold'] as const)('are those of the font file, %s', (weight) => {
    doc.font(weight).fontSize(fontSize(10));
    const off = [...characters].filter(
      (c) => Math.abs(doc.widthOfString(c) - textWidth(c, 10, weight === 'bold')) > 1e-4,
    );
    expect(off).toEqual([]);
  });

  it('put a capital at the letter height', () => {
    // Height of H in DejaVu Sans: 1493 of 2048 units (glyf table, read with a font viewer).
    expect((fontSize(3.5) * 1493) / 2048).toBeCloseTo(3.5, 9);
  });

  it('add up along a line and give a character the font lacks the width of its box', () => {
    expect(textWidth('AV', 5)).toBeCloseTo(textWidth('A', 5) + textWidth('V', 5), 9);
    doc.font('regular').fontSize(fontSize(5));
    expect(textWidth('漢', 5)).toBeCloseTo(doc.widthOfString('漢'), 4);
  });
});
