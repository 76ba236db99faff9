import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import PDFDocument from 'pdfkit';
import { toBytes } from 'pdfkit/output';
import { describe, expect, it, vi } from 'vitest';
import type { Sheet } from '../../src/drawing/sheet.ts';
import { textWidth } from '../../src/drawing/text-width.ts';
import { extractDesign } from '../../src/export/extract.ts';
import { pdf } from '../../src/export/pdf.ts';
import { has, hostile, run } from './samples.ts';
import { fonts, sheet, symbols } from './sheets.ts';

const sheets = [sheet, { ...sheet, title: `Wide ${hostile}`, size: [420, 297] as const }];
const options = { title: hostile, fonts, carry: hostile };
const bytes = await pdf(sheets, options);

/** Points of a millimetre; 100 mm = 283.465 pt. */
const POINT = 72 / 25.4;

const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;

interface Text {
  readonly str: string;
  readonly width: number;
  readonly transform: readonly number[];
}
const texts = async (page: number): Promise<Text[]> => {
  const content = await (
    await document.getPage(page)
  ).getTextContent({ disableNormalization: true });
  return content.items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item] : []));
};

/** Lines as the library sets them by itself, without kerning and ligatures. */
const plainly = async (lines: readonly string[]): Promise<Uint8Array> => {
  const doc = new PDFDocument({ font: '', compress: false, autoFirstPage: false });
  const written = toBytes(doc);
  doc.registerFont('regular', fonts.regular).addPage().font('regular', 10);
  for (const line of lines)
    doc.text(line, 10, 10, {
      lineBreak: false,
      features: { kern: false, liga: false, clig: false } as never,
    });
  doc.end();
  return written;
};

describe('PDF', () => {
  it('has exact pages, a bookmark each, and asks for no scaling', async () => {
    const view = async (page: number): Promise<number[]> => (await document.getPage(page)).view;
    // ISO 216 A4 and A3 at 72 points an inch: 595.276 x 841.890 and 1190.551 x 841.890.
    for (const [page, size] of [
      [1, [595.276, 841.89]],
      [2, [1190.551, 841.89]],
    ] as const) {
      const [x, y, w = 0, h = 0] = await view(page);
      expect([x, y]).toEqual([0, 0]);
      expect(Math.abs(w - size[0])).toBeLessThan(0.001);
      expect(Math.abs(h - size[1])).toBeLessThan(0.001);
    }
    expect(document.numPages).toBe(2);
    const outline = await document.getOutline();
    expect(outline.map((entry) => entry.title)).toEqual([
      'Sample sheet',
      `Wide ${hostile.replace(/\p{Cc}+/gu, ' ')}`,
    ]);
    expect(await document.getViewerPreferences()).toMatchObject({ PrintScaling: 'None' });
  });

  it('draws 100 mm as 283.465 points', () => {
    const content = new TextDecoder('latin1').decode(bytes);
    // The visible line of the sample, from x = 30 mm to 130 mm at y = 30 mm, from the top.
    const [, x0, y0, x1, y1] = (
      /([\d.]+) ([\d.]+) m\n([\d.]+) ([\d.]+) l\nS/.exec(content) ?? []
    ).map(Number);
    expect(Math.abs((x1 ?? 0) - (x0 ?? 0) - 283.465)).toBeLessThan(0.001);
    expect(y0).toBe(y1);
    expect(Math.abs((x0 ?? 0) - 30 * POINT)).toBeLessThan(1e-4);
  });

  it('lets every symbol be read out again', async () => {
    const found = (await texts(1)).map((t) => t.str);
    expect(found).toContain(symbols);
    expect(found).toContain('100 mm upright');
  });

  it('sets text where it belongs and as wide as its measure says', async () => {
    const [line, centred, right] = await Promise.all(
      [symbols, 'Centred AVATAR fi', 'right'].map(async (s) =>
        (await texts(1)).find((t) => t.str === s),
      ),
    );
    const near = (found: number | undefined, mm: number): void =>
      expect(Math.abs((found ?? NaN) / POINT - mm)).toBeLessThan(0.02);
    near(line?.width, textWidth(symbols, 3.5));
    near(centred?.width, textWidth('Centred AVATAR fi', 5, true));
    near(line?.transform[4], 30);
    near(line?.transform[5], 150);
    near(centred?.transform[4], 110 - textWidth('Centred AVATAR fi', 5, true) / 2);
    near(right?.transform[4], 190 - textWidth('right', 2.5));
  });

  it('sets letters one by one as the library sets them together', async () => {
    const signs = Array.from({ length: 0x2600 }, (_, code) => code)
      .filter((code) => code < 0x250 || (code >= 0x370 && code < 0x400) || code >= 0x2010)
      .map((code) => String.fromCodePoint(code))
      .filter((sign) => /[\p{Script=Latin}\p{Script=Greek}\p{N}\p{P}\p{S}]/u.test(sign));
    // Pairs that a typeface joins or moves, a mark on a letter, and all signs.
    const lines = ['ffi fl ij IJ AVATAR To Ly 1/4 f\u0131 e\u0301n', signs.join('')];
    const items = lines.map((text): Sheet['items'][number] => ({
      ...{ kind: 'text', at: [10, 10], text, height: 3.5, align: 'left', angle: 0, bold: false },
    }));
    const [ours, theirs] = [
      await pdf([{ ...sheet, items }], { title: 'x', fonts }),
      plainly(lines),
    ];
    const shown = (content: Uint8Array): string[] =>
      new TextDecoder('latin1').decode(content).match(/^.*\] TJ$/gm) ?? [];
    expect(shown(ours).join('').length).toBeGreaterThan(4 * signs.length);
    expect(shown(ours)).toEqual(shown(await theirs));
  });

  it('says nothing of the day it was written and is the same twice', async () => {
    expect((await document.getMetadata()).info).toMatchObject({
      Creator: 'Platenwright',
      CreationDate: 'D:20000101000000Z',
    });
    expect(await pdf(sheets, options)).toEqual(bytes);
  });

  it('is the same from the engine of the browser', async () => {
    vi.resetModules();
    // The build that the page gets; the package offers it to bundlers only, so by its path.
    const build = '../../node_modules/pdfkit/js/pdfkit.browser.mjs';
    vi.doMock('pdfkit', () => import(build));
    const other = await import('../../src/export/pdf.ts');
    vi.doUnmock('pdfkit');
    expect(other.pdf).not.toBe(pdf);
    expect(await other.pdf(sheets, options)).toEqual(bytes);
  });

  it('carries the design', () => {
    expect(extractDesign(bytes)).toMatchObject({ ok: true, value: hostile });
  });
});

describe.skipIf(!has('pdfinfo', ['-v']))('second reader: poppler (needs poppler-utils)', () => {
  const file = join(mkdtempSync(join(tmpdir(), 'pdf-')), 'sheets.pdf');
  writeFileSync(file, bytes);

  it('agrees on pages, sizes and text, and finds the fonts embedded', () => {
    const info = run('pdfinfo', ['-f', '1', '-l', '2', file]);
    expect(info).toMatch(/Page +1 size: +595\.276 x 841\.89 pts \(A4\)/);
    expect(info).toMatch(/Page +2 size: +1190\.55 x 841\.89 pts \(A3\)/);
    expect(run('pdftotext', ['-layout', file, '-'])).toContain(symbols);
    const rows = run('pdffonts', [file]).trim().split('\n').slice(2);
    expect(rows).toHaveLength(2);
    for (const row of rows)
      expect(row).toMatch(/DejaVuSans\S* +CID TrueType +Identity-H +yes yes yes/);
  });
});
