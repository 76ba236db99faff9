import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import readCode from 'jsqr';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { openAny } from '../../src/adapt/open-any.ts';
import { linkFragment, openLink } from '../../src/document/link.ts';
import { saveDesign } from '../../src/document/save.ts';
import { assemblySheets } from '../../src/drawing/assembly-sheets.ts';
import { codeOf, QUIET } from '../../src/drawing/code.ts';
import { grow, union, NOTHING } from '../../src/drawing/box.ts';
import { itemBox } from '../../src/drawing/items.ts';
import type { Item, Sheet } from '../../src/drawing/sheet.ts';
import { svg } from '../../src/export/index.ts';
import { pdf } from '../../src/export/pdf.ts';
import { has } from '../export/samples.ts';
import { fonts } from '../export/sheets.ts';
import { examplesOf } from '../family/examples.ts';
import { clashes, outside } from './overlap.ts';
import { parts, placements } from './parts.ts';
import { BLOCK } from './random-plate.ts';

const examples = Object.keys(registry.families).flatMap(examplesOf);

const sheetsWith = (link: string, paper: 'iso' | 'us' = 'iso'): Sheet[] =>
  assemblySheets(
    parts,
    placements,
    { title: 'Little rest', files: new Map(), order: [], notes: [], sections: [] },
    { ...BLOCK, paper, link },
  );

type Blocks = Extract<Item, { kind: 'blocks' }>;
const blocksOf = ({ items }: Sheet): Blocks[] =>
  items.flatMap((item) => (item.kind === 'blocks' ? [item] : []));

/** The code's item alone as grey pixels, white around it: a painter that shares no code. */
const painted = (
  { boxes }: Blocks,
  module: number,
): Uint8ClampedArray<ArrayBuffer> & { side?: number } => {
  const box = boxes.reduce(union, NOTHING);
  const scale = 4 / module;
  const side = Math.round((box.x1 - box.x0) * scale) + 8 * QUIET;
  const pixels = new Uint8ClampedArray(4 * side * side).fill(255);
  for (const b of boxes)
    for (let y = Math.round((box.y1 - b.y1) * scale); y < Math.round((box.y1 - b.y0) * scale); y++)
      for (
        let x = Math.round((b.x0 - box.x0) * scale);
        x < Math.round((b.x1 - box.x0) * scale);
        x++
      )
        pixels.fill(
          0,
          4 * ((y + 4 * QUIET) * side + x + 4 * QUIET),
          4 * ((y + 4 * QUIET) * side + x + 4 * QUIET) + 3,
        );
  return Object.assign(pixels, { side });
};

describe('the code to scan', () => {
  it.each(examples)('holds the whole of $file and opens as a link and as a file', ({ design }) => {
    const code = codeOf(`#${linkFragment(design)}`);
    if (!code) throw new Error('no code');
    expect(code.module).toBeGreaterThanOrEqual(0.4);
    const pixels = painted(code.item, code.module);
    const side = pixels.side ?? 0;
    const read = readCode(pixels, side, side)?.data ?? '';
    const whole = saveDesign(design);
    const link = openLink(new URL(`https://example.org/${read}`).hash, registry);
    expect(link.ok && saveDesign(link.value)).toBe(whole);
    const file = openAny(new TextEncoder().encode(`${read}\n`), registry);
    expect(file.ok && saveDesign(file.value)).toBe(whole);
  });

  it.each(['iso', 'us'] as const)('keeps its quiet zone free on one sheet (%s)', (paper) => {
    const link = `#${linkFragment(examples[0]?.design ?? expect.fail('no example'))}`;
    const sheets = sheetsWith(link, paper);
    const blocks = sheets.flatMap(blocksOf);
    expect(blocks).toHaveLength(1);
    const [block] = blocks;
    const sheet = sheets.find((one) => blocksOf(one).length > 0) ?? expect.fail('no sheet');
    const module = codeOf(link)?.module ?? NaN;
    const zone = grow(itemBox(block ?? expect.fail('no code')), QUIET * module - 1e-6);
    // ISO/IEC 18004: four modules of white on every side. The frame stands outside, around all.
    const near = sheet.items.filter((item) => {
      const box = itemBox(item);
      const isApart =
        box.x1 <= zone.x0 || box.x0 >= zone.x1 || box.y1 <= zone.y0 || box.y0 >= zone.y1;
      const isAround = box.x0 < zone.x0 && box.y0 < zone.y0 && box.x1 > zone.x1 && box.y1 > zone.y1;
      return item !== block && !isApart && !isAround;
    });
    expect(near).toEqual([]);
    expect(sheets.flatMap((s) => [...clashes(s), ...outside(s)])).toEqual([]);
  });

  it('of a design too long for paper is left out, which the sheet says', () => {
    const long = `#1.${'Ab3-'.repeat(600)}`;
    expect(codeOf(long)).toBeUndefined();
    const [sheet] = sheetsWith(long);
    expect(sheet && blocksOf(sheet)).toEqual([]);
    const words = sheet?.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
    expect(words?.join(' ')).toContain('2403 characters');
  });
});

/** Page one as pixels: the plain picture format of poppler, read by hand. */
const pixelsOf = (document: string): { data: Uint8ClampedArray; width: number; height: number } => {
  const bytes = execFileSync('pdftoppm', ['-r', '200', '-f', '1', '-l', '1', document], {
    maxBuffer: 2 ** 27,
  });
  const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
  const [width, height] = [Number(head?.[1]), Number(head?.[2])];
  const start = head?.[0].length ?? 0;
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let i = 0; i < width * height; i++)
    for (let c = 0; c < 3; c++) data[4 * i + c] = bytes[start + 3 * i + c] ?? 0;
  return { data, width, height };
};

describe.skipIf(!has('pdftoppm', ['-v']))(
  'the code on a printed page (needs poppler-utils)',
  () => {
    const example = examples[0] ?? expect.fail('no example');
    const sheets = sheetsWith(`#${linkFragment(example.design)}`);

    const restored = (write: (folder: string) => string | Promise<string>) => async () => {
      const folder = mkdtempSync(join(tmpdir(), 'code-'));
      try {
        const { data, width, height } = pixelsOf(await write(folder));
        const read = readCode(data, width, height)?.data ?? '';
        const opened = openLink(read, registry);
        expect(opened.ok && saveDesign(opened.value)).toBe(saveDesign(example.design));
      } finally {
        rmSync(folder, { recursive: true });
      }
    };

    it(
      'is read back from the PDF at 200 dots an inch',
      restored(async (folder) => {
        writeFileSync(join(folder, 'a.pdf'), await pdf(sheets.slice(0, 1), { title: 'a', fonts }));
        return join(folder, 'a.pdf');
      }),
    );

    it.skipIf(!has('rsvg-convert'))(
      'is read back from the SVG (needs librsvg)',
      restored((folder) => {
        const [first] = sheets;
        writeFileSync(join(folder, 'a.svg'), svg(first ?? expect.fail('no sheet')));
        execFileSync('rsvg-convert', [
          '-f',
          'pdf',
          '-o',
          join(folder, 'a.pdf'),
          join(folder, 'a.svg'),
        ]);
        return join(folder, 'a.pdf');
      }),
    );
  },
);
