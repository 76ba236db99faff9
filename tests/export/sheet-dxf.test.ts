import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { extractDesign, sheetDxf } from '../../src/export/index.ts';
import { has, hostile, run } from './samples.ts';
import { sheet, symbols } from './sheets.ts';

const dxf = sheetDxf(sheet, { carry: hostile });
const python = ['/usr/bin/python3', 'python3'].find((p) => has(p, ['-c', 'import ezdxf']));

describe('a sheet as DXF', () => {
  it('is read by dxf-parser, a layer for each kind of line', () => {
    const entities = new DxfParser().parseSync(dxf)?.entities ?? [];
    const kinds = new Set(entities.map((e) => `${e.type} ${e.layer}`));
    expect([...kinds].sort()).toEqual([
      'ARC HIDDEN',
      'ARC VISIBLE',
      'CIRCLE VISIBLE',
      'LINE CENTRE',
      'LINE DIMENSION',
      'LINE HIDDEN',
      'LINE PHANTOM',
      'LINE VISIBLE',
      'LWPOLYLINE FRAME',
      'SOLID DIMENSION',
      'TEXT TEXT',
    ]);
  });

  it('is ASCII throughout, carries the design and is the same twice', () => {
    expect(dxf).toMatch(/^[\n\x20-\x7e]*$/);
    expect(extractDesign(new TextEncoder().encode(dxf))).toMatchObject({
      ok: true,
      value: hostile,
    });
    expect(sheetDxf(sheet, { carry: hostile })).toBe(dxf);
  });
});

describe.skipIf(python === undefined)('second reader: ezdxf (needs python3-ezdxf)', () => {
  it('finds nothing to fix and reads every text as it was', () => {
    const file = join(mkdtempSync(join(tmpdir(), 'dxf-')), 'sheet.dxf');
    writeFileSync(file, dxf);
    const script = `
import sys, json
from ezdxf import recover
doc, auditor = recover.readfile(sys.argv[1])
space = doc.modelspace()
print(json.dumps({'errors': len(auditor.errors), 'fixes': len(auditor.fixes),
  'texts': [t.plain_text() for t in space.query('TEXT')],
  'hidden': list(doc.linetypes.get('HIDDEN').pattern_tags.tags.get_first_value(40) for _ in [0]),
  'width': doc.layers.get('VISIBLE').dxf.lineweight}))
`;
    const found = JSON.parse(run(python ?? '', ['-c', script, file])) as {
      readonly errors: number;
      readonly fixes: number;
      readonly texts: readonly string[];
      readonly hidden: readonly number[];
      readonly width: number;
    };
    expect(found).toMatchObject({ errors: 0, fixes: 0, hidden: [3.75], width: 50 });
    expect(found.texts[0]).toBe(symbols);
    expect(found.texts).toContain('100 mm upright');
    const spoken = found.texts.join('');
    for (const piece of ['<script>', '%PDF', "'q'", '⅜']) expect(spoken).toContain(piece);
  });
});
