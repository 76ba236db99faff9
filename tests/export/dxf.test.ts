import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { cutDxf, dxfName, plateDxf, type DxfOptions } from '../../src/export/dxf/index.ts';
import { findCarried } from '../../src/export/carry.ts';
import { readDxf } from '../../src/export/lint/dxf-reader.ts';
import { circle, polygon, rectangle } from '../../src/geometry/loop.ts';
import { has, hostile, plate, profile, run, square } from './samples.ts';

const write = (options: DxfOptions = {}): string => {
  const result = plateDxf(plate(), options);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};

interface Parsed {
  readonly header: Record<string, unknown>;
  readonly entities: readonly {
    readonly type: string;
    readonly layer: string;
    readonly shape?: boolean;
    readonly radius?: number;
    readonly vertices?: readonly { x: number; y: number; z?: number; bulge?: number }[];
  }[];
}
const parsed = (dxf: string): Parsed => new DxfParser().parseSync(dxf) as unknown as Parsed;

const python = ['/usr/bin/python3', 'python3'].find((p) => has(p, ['-c', 'import ezdxf']));
/** ezdxf's audit and its own reading of box and units: an implementation of the format apart. */
const AUDIT = `
import sys, json, ezdxf
from ezdxf import bbox, recover
doc, auditor = recover.readfile(sys.argv[1])
box = bbox.extents(doc.modelspace(), flatten=0.0001)
print(json.dumps({'version': doc.dxfversion, 'errors': len(auditor.errors), 'fixes': len(auditor.fixes),
  'units': doc.header.get('$INSUNITS', None), 'measurement': doc.header.get('$MEASUREMENT', None),
  'min': list(box.extmin), 'max': list(box.extmax),
  'types': sorted(e.dxftype() for e in doc.modelspace()),
  'layers': sorted({e.dxf.layer for e in doc.modelspace()})}))
`;

describe('default flavour', () => {
  it('is read by dxf-parser as closed polylines and circles in millimetres', () => {
    const dxf = parsed(write({ carry: hostile }));
    expect(dxf.header).toMatchObject({ $INSUNITS: 4, $MEASUREMENT: 1, $ACADVER: 'AC1015' });
    expect(dxf.entities.map((e) => [e.type, e.layer])).toEqual([
      ['LWPOLYLINE', 'CUT'],
      ['CIRCLE', 'CUT'],
      ['CIRCLE', 'CUT'],
      ['LWPOLYLINE', 'CUT'],
    ]);
    const outline = dxf.entities[0];
    expect(outline?.shape).toBe(true);
    expect(outline?.vertices).toHaveLength(10);
    expect(outline?.vertices?.[1]?.bulge).toBeCloseTo(Math.SQRT2 - 1, 8);
    expect(dxf.entities[1]?.radius).toBe(3.3);
  });

  it('writes the same bytes twice and no bare exponent', () => {
    expect(write({ carry: 'x' })).toBe(write({ carry: 'x' }));
    expect(write({ units: 'in' })).not.toMatch(/\d[eE][-+]?\d/);
  });

  it('puts engraving on its own layer, only when asked', () => {
    const part = plate(profile, [
      [
        [10, 40],
        [20, 40],
        [20, 45],
      ],
    ]);
    const without = plateDxf(part);
    const marked = plateDxf(part, { engrave: true });
    expect(without.ok && without.value.includes('ENGRAVE')).toBe(false);
    expect(marked.ok && parsed(marked.value).entities.slice(4)).toMatchObject([
      { type: 'LINE', layer: 'ENGRAVE' },
      { type: 'LINE', layer: 'ENGRAVE' },
    ]);
  });

  it('names unit, flavour and kerf in the file name', () => {
    expect(dxfName('base-plate')).toBe('base-plate_mm.dxf');
    expect(dxfName('base-plate', { flavour: 'r12', units: 'in', kerf: 0.15 })).toBe(
      'base-plate_r12_kerf0.15_in.dxf',
    );
  });
});

describe('inch export', () => {
  it('comes back as the same millimetres', () => {
    const mm = parsed(write());
    const inch = parsed(write({ units: 'in' }));
    expect(inch.header).toMatchObject({ $INSUNITS: 1, $MEASUREMENT: 0 });
    inch.entities.forEach((entity, i) => {
      const other = mm.entities[i];
      if (entity.radius !== undefined)
        expect(Math.abs(entity.radius * 25.4 - (other?.radius ?? NaN))).toBeLessThan(1e-7);
      entity.vertices?.forEach((v, k) => {
        expect(Math.abs(v.x * 25.4 - (other?.vertices?.[k]?.x ?? NaN))).toBeLessThan(1e-7);
        expect(Math.abs(v.y * 25.4 - (other?.vertices?.[k]?.y ?? NaN))).toBeLessThan(1e-7);
      });
    });
  });
});

describe('kerf', () => {
  it('grows the outline and shrinks the holes by exactly itself', () => {
    const nominal = parsed(write());
    const cut = parsed(write({ kerf: 0.3 }));
    const xs = (dxf: Parsed): number[] => (dxf.entities[0]?.vertices ?? []).map((v) => v.x);
    const width = (dxf: Parsed): number => Math.max(...xs(dxf)) - Math.min(...xs(dxf));
    expect(width(cut) - width(nominal)).toBeCloseTo(0.3, 6);
    expect((cut.entities[1]?.radius ?? NaN) * 2).toBeCloseTo(6.6 - 0.3, 6);
    expect(write({ kerf: 0.3 })).toContain('Kerf of 0.3 mm applied');
    expect(write()).toContain('no kerf applied');
  });
});

describe('compatible flavour', () => {
  it('holds lines, arcs and circles whose end points coincide', () => {
    const dxf = write({ flavour: 'r12', carry: hostile });
    const types = parsed(dxf).entities.map((e) => e.type);
    expect(new Set(types)).toEqual(new Set(['LINE', 'ARC', 'CIRCLE']));
    expect(dxf).toContain('AC1009');
    expect(dxf).not.toContain('LWPOLYLINE');
  });
});

describe('carried design', () => {
  for (const flavour of ['r2000', 'r12'] as const)
    it(`comes back from ${flavour}, however hostile its text`, () => {
      const dxf = write({ flavour, carry: hostile });
      expect(findCarried(readDxf(dxf).comments.join(''))).toMatchObject({
        ok: true,
        value: hostile,
      });
      expect(Math.max(...dxf.split('\n').map((line) => line.length))).toBeLessThanOrEqual(255);
    });
});

describe.skipIf(python === undefined)('second reader: ezdxf (needs python3-ezdxf)', () => {
  const audit = (dxf: string): Record<string, unknown> => {
    const file = join(mkdtempSync(join(tmpdir(), 'dxf-')), 'part.dxf');
    writeFileSync(file, dxf);
    return JSON.parse(run(python ?? '', ['-c', AUDIT, file])) as Record<string, unknown>;
  };

  it('finds nothing to fix in the default flavour and the size of the model', () => {
    const found = audit(write({ carry: hostile }));
    expect(found).toMatchObject({
      version: 'AC1015',
      errors: 0,
      fixes: 0,
      units: 4,
      measurement: 1,
      types: ['CIRCLE', 'CIRCLE', 'LWPOLYLINE', 'LWPOLYLINE'],
      layers: ['CUT'],
    });
    const [min, max] = [found.min as number[], found.max as number[]];
    [min, max].flat().forEach((x, i) => {
      expect(Math.abs(x - ([0, 0, 0, 120, 60, 0][i] ?? NaN))).toBeLessThan(1e-3);
    });
  });

  it('finds nothing to fix in the others', () => {
    for (const options of [
      { flavour: 'r12' },
      { flavour: 'r12', units: 'in' },
      { units: 'in' },
    ] as const)
      expect(audit(write(options))).toMatchObject({ errors: 0, fixes: 0, layers: ['CUT'] });
  });
});

describe('refusals', () => {
  it('writes no file whose hole crosses the edge', () => {
    const result = cutDxf({ cut: { ...square, holes: [circle([98, 20], 3)] }, engrave: [] });
    expect(result).toMatchObject({
      ok: false,
      issues: [{ code: 'dxf-contours-touch' }, { code: 'dxf-size' }],
    });
  });

  it('writes no file whose outline crosses itself', () => {
    const bow = polygon([
      [0, 0],
      [50, 50],
      [50, 0],
      [0, 50],
    ]);
    const result = cutDxf({ cut: { outer: bow, holes: [] }, engrave: [] });
    expect(result.ok).toBe(false);
    expect(result.issues.map((i) => i.code)).toContain('dxf-self-intersection');
  });

  it("accepts a hole 0.02 mm from the edge: thin webs are the process profile's business", () => {
    const hole = rectangle([0.02, 10], [10, 20]);
    expect(cutDxf({ cut: { ...square, holes: [hole] }, engrave: [] }).ok).toBe(true);
  });
});
