import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import DxfParser from 'dxf-parser';
import { is } from 'valibot';
import { beforeAll, describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { saveDesign } from '../../src/document/save.ts';
import { extractDesign, type PackageFile } from '../../src/export/index.ts';
import { manifestSchema, reportSchema } from '../../src/make/output-schema.ts';
import { makePackage } from '../../src/make/package.ts';
import { text } from '../../src/text/index.ts';
import { examplesOf, valueOf, type Example } from '../family/examples.ts';
import { hasPoppler, readPdf, written } from './outside.ts';

const font = (name: string): Uint8Array =>
  readFileSync(join('node_modules', 'dejavu-fonts-ttf', 'ttf', `${name}.ttf`));
const fonts = { regular: font('DejaVuSans'), bold: font('DejaVuSans-Bold') };

const made = new Map<string, Promise<PackageFile[]>>();

/** The package of an example, made once for all tests of this file. */
const packageOf = ({ file, design }: Example): Promise<PackageFile[]> => {
  const known =
    made.get(file) ??
    makePackage(design, { registry, fonts, acceptFailing: false }).then((result) =>
      valueOf(result),
    );
  made.set(file, known);
  return known;
};

const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');
const named = (files: readonly PackageFile[], ending: string): PackageFile[] =>
  files.filter(({ path }) => path.endsWith(ending));
const json = (files: readonly PackageFile[], path: string): unknown =>
  JSON.parse(Buffer.from(files.find((file) => file.path === path)?.bytes ?? []).toString('utf8'));

/** Trimmed sheets of ISO 216 and the two US ones, points (72 an inch); check-values 3.1. */
const SHEETS_PT = [
  [595.276, 841.89],
  [841.89, 1190.551],
  [1190.551, 1683.78],
  [612, 792],
  [792, 1224],
  [1224, 1584],
];

const everyExample = Object.keys(registry.families).flatMap((family) => examplesOf(family));

describe.each(everyExample)('the package of $file', (example) => {
  let files: PackageFile[] = [];
  beforeAll(async () => {
    files = await packageOf(example);
  }, 300_000);

  it('tells what it holds by the published schemas', () => {
    expect(is(manifestSchema, json(files, 'manifest.json'))).toBe(true);
    expect(is(reportSchema, json(files, 'report.json'))).toBe(true);
  });

  it('carries the identical design in every drawing, cut file and print', () => {
    const design = saveDesign(example.design);
    const carriers = ['.svg', '.pdf', '.dxf', '.3mf'].flatMap((ending) => named(files, ending));
    expect(carriers.length).toBeGreaterThan(10);
    for (const { path, bytes } of carriers)
      expect([path, valueOf(extractDesign(bytes)) === design]).toEqual([path, true]);
  });

  it('cuts closed contours in stated millimetres and nothing else', () => {
    const cut = named(files, '.dxf').filter(({ path }) => !/^drawings\/|engrave/.test(path));
    expect(cut.length).toBeGreaterThan(0);
    for (const { path, bytes } of cut) {
      expect(path).toMatch(/_mm\.dxf$/);
      const drawing = new DxfParser().parseSync(latin(bytes));
      const compatible = path.includes('_r12_');
      if (!compatible) expect(drawing?.header.$INSUNITS).toBe(4);
      const allowed = compatible ? ['LINE', 'ARC', 'CIRCLE'] : ['LWPOLYLINE', 'CIRCLE'];
      for (const entity of drawing?.entities ?? []) {
        expect(allowed).toContain(entity.type);
        expect(entity.layer).toBe('CUT');
      }
    }
  });

  it('writes every sheet of what is built as DXF with the same words, nothing referenced', () => {
    const words = (content: string, pattern: RegExp): string[] =>
      [...content.matchAll(pattern)].map((match) => match[1] ?? '').sort();
    const sheets = named(files, '_mm.dxf').filter(({ path }) => path.startsWith('drawings/'));
    expect(sheets.map(({ path }) => path)).toContain('drawings/assembly-1_mm.dxf');
    for (const { path, bytes } of sheets) {
      const drawing = new DxfParser().parseSync(latin(bytes));
      expect(drawing?.header.$INSUNITS).toBe(4);
      const entities = drawing?.entities ?? [];
      const kinds = new Set(entities.map(({ type }) => type));
      for (const kind of kinds)
        expect(['LINE', 'LWPOLYLINE', 'ARC', 'CIRCLE', 'SOLID', 'TEXT']).toContain(kind);
      const picture = files.find((file) => file.path === path.replace('_mm.dxf', '.svg'));
      const drawn = words(latin(picture?.bytes ?? new Uint8Array()), /<text[^>]*>([^<]*)</g);
      const letters = entities.filter(({ type }) => type === 'TEXT') as unknown as {
        readonly text: string;
      }[];
      // Where the picture has a code to scan, a sheet for a CAD program says where to find it.
      const elsewhere = letters.filter((one) => one.text === text.exporting.codeElsewhere);
      expect(elsewhere.length).toBeLessThanOrEqual(1);
      expect(letters).toHaveLength(drawn.length + elsewhere.length);
    }
  });

  it('draws on standard sheets that ask for no scaling', () => {
    for (const { bytes } of named(files, '.pdf')) {
      const content = latin(bytes);
      expect(content).toContain('/PrintScaling /None');
      const boxes = [...content.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
      expect(boxes.length).toBeGreaterThan(0);
      for (const [, w, h] of boxes) {
        const sides = [Number(w), Number(h)].sort((a, b) => a - b);
        const isSheet = SHEETS_PT.some((sheet) =>
          sheet.every((side, i) => Math.abs(side - (sides[i] ?? 0)) < 0.01),
        );
        expect([w, h, isSheet]).toEqual([w, h, true]);
      }
    }
    for (const { bytes } of named(files, '.svg')) {
      const head = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(
        Buffer.from(bytes).toString('utf8'),
      );
      expect([head?.[1], head?.[2]]).toEqual([head?.[3], head?.[4]]);
      expect(head).not.toBeNull();
    }
  });

  it.skipIf(!hasPoppler)(
    'is read by poppler: sheet sizes exact, text to extract (needs poppler-utils)',
    () => {
      for (const path of written(named(files, '.pdf'))) {
        const { complaints, sizes, text } = readPdf(path);
        expect(complaints).toBe('');
        expect(sizes.length).toBeGreaterThan(0);
        for (const size of sizes) {
          const sides = [...size].sort((a, b) => a - b);
          const isSheet = SHEETS_PT.some((sheet) =>
            sheet.every((side, i) => Math.abs(side - (sides[i] ?? 0)) < 0.01),
          );
          expect([path, size, isSheet]).toEqual([path, size, true]);
        }
        // The short name of exactly this design stands on every page.
        expect((text.match(/PW-[0-9A-F]{8}/g) ?? []).length).toBeGreaterThanOrEqual(sizes.length);
      }
    },
  );

  it('lists every part in the report with what a maker has to know of it', () => {
    const report = json(files, 'report.json') as { parts: { name: string; mass: number }[] };
    expect(report.parts.length).toBeGreaterThan(5);
    for (const { name, mass } of report.parts) expect([name, mass > 0]).toEqual([name, true]);
  });
});

describe('the sample package', () => {
  const sample = join('exports', 'kitchen-210');

  it('is what this code makes, byte for byte', async () => {
    const example = examplesOf('spine-rest').find(({ file }) => file.startsWith('kitchen-210'));
    if (!example) throw new Error('the worked design is missing');
    const files = await packageOf(example);
    const differing = files
      .filter(({ path }) => !existsSync(join(sample, path)))
      .map(({ path }) => `${path} is missing`)
      .concat(
        files
          .filter(({ path }) => existsSync(join(sample, path)))
          .filter(({ path, bytes }) => !Buffer.from(bytes).equals(readFileSync(join(sample, path))))
          .map(({ path }) => `${path} differs`),
      );
    // Where the change is meant: npm start -- --once writes the sample anew.
    expect(differing).toEqual([]);
  }, 300_000);
});
