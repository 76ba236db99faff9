import { readFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';
import { beforeAll, describe, expect, it } from 'vitest';
import { bevelGauge } from '../../jigs/template/index.ts';
import type { PackageFile } from '../../src/export/index.ts';
import { checkDesign } from '../../src/make/engine.ts';
import { makePackage } from '../../src/make/package.ts';
import { familySuite } from '../family/suite.ts';
import { fonts, gaugeDesign, gaugeRegistry } from './gauge.ts';
import { lintPackage } from './lint.ts';

const RADIAN = Math.PI / 180;

/** The lean of the slanted edges of a cut file, degrees, by a reader of its own. */
const leansOf = (dxf: string): { left: number; right: number } => {
  const read = new DxfParser().parseSync(dxf);
  const outline = read?.entities.find(({ type }) => type === 'LWPOLYLINE');
  const points = (outline as unknown as { vertices: { x: number; y: number }[] }).vertices;
  const slanted = points
    .map((p, i) => {
      const q = points[(i + 1) % points.length] ?? p;
      const up = q.y > p.y ? { from: p, to: q } : { from: q, to: p };
      return { run: up.to.x - up.from.x, rise: up.to.y - up.from.y };
    })
    .filter(({ rise }) => rise > 1);
  const angles = slanted.map(({ run, rise }) => Math.atan(run / rise) / RADIAN);
  return { left: Math.max(...angles), right: -Math.min(...angles) };
};

/** What the family suite asks for: three worked designs, each from sheet that its workshop has. */
familySuite(
  bevelGauge,
  [{ file: 'kitchen-210' }, { file: 'paring-80', sheet: 4 }, { file: 'hunting-115', sheet: 5 }].map(
    ({ file, sheet }) => ({ file, design: gaugeDesign(file, sheet), from: gaugeRegistry }),
  ),
);

describe('a family made from the template', () => {
  const design = gaugeDesign();
  let files: readonly PackageFile[] = [];
  beforeAll(async () => {
    const made = await makePackage(design, {
      registry: gaugeRegistry,
      fonts,
      acceptFailing: false,
    });
    if (!made.ok) throw new Error(JSON.stringify(made.issues));
    files = made.value;
  });

  it('passes every check and measures what it promises', () => {
    const checked = checkDesign(design, gaugeRegistry);
    if (!checked.ok) throw new Error(JSON.stringify(checked.issues));
    expect(checked.value.checks.length).toBeGreaterThan(8);
    expect(checked.value.checks.filter(({ passed }) => !passed)).toEqual([]);
    const measured = checked.value.fixture.measured();
    if (!measured.ok) throw new Error('not measured');
    expect(measured.value).toHaveLength(2 * design.blades.length);
    for (const { blade, side, angle } of measured.value) {
      const setting = checked.value.fixture.settings.find(
        (s) => s.side === side && s.expected[0]?.blade === blade,
      );
      expect(angle).toBeCloseTo(setting?.angle ?? NaN, 9);
    }
  });

  it('cuts edges at the lean that the blade asks for, by a reader of its own', () => {
    // Kitchen 210: T 3, e 0.2 shared evenly, bevel 23 mm high: tan a = (1.5 - 0.1) / 23.
    const wanted = Math.atan(1.4 / 23) / RADIAN;
    const cut = files.find(({ part, kind }) => part === 'gauge-1' && kind === 'cut-file');
    const { left, right } = leansOf(new TextDecoder().decode(cut?.bytes));
    expect(left).toBeCloseTo(wanted, 5);
    expect(right).toBeCloseTo(wanted, 5);
  });

  it('adds the lean of the platen', () => {
    const leaning = { ...design, grinder: { ...design.grinder, lean: 2 } };
    const checked = checkDesign(leaning, gaugeRegistry);
    const tilts = checked.ok
      ? checked.value.fixture.settings.map(
          ({ angle, readings }) => (readings[0]?.value ?? 0) - angle,
        )
      : [];
    expect(tilts).toHaveLength(4);
    for (const more of tilts) expect(more).toBeCloseTo(2, 9);
  });

  it('makes a package that is clean when it is read back', () => {
    const checked = checkDesign(design, gaugeRegistry);
    expect(lintPackage(files, checked.ok ? checked.value.parts : [], 0)).toEqual([]);
    expect(files.filter(({ kind }) => kind === 'cut-file')).toHaveLength(4);
    expect(files.map(({ path }) => path)).toContain('drawings.pdf');
    expect(files.map(({ path }) => path)).toContain('set-up.pdf');
  });

  it('says what it cannot do by parameter, value, range, reason and mend', () => {
    const hollow = structuredClone(design);
    const [blade] = hollow.blades;
    if (blade) blade.bevels.left = { kind: 'hollow', depth: 0.3, centre: 20 };
    const refused = checkDesign(hollow, gaugeRegistry);
    expect(refused.ok).toBe(false);
    expect(refused.issues).toMatchObject([{ code: 'not-flat', path: 'blades.0.bevels.left' }]);
    expect(refused.issues[0]?.message).toContain('hollow');
    const thick = {
      ...design,
      fixture: { ...design.fixture, parameters: { ...design.fixture.parameters, thickness: 7 } },
    };
    expect(checkDesign(thick, gaugeRegistry).issues).toMatchObject([
      { code: 'thickness-missing', path: 'fixture.parameters.thickness' },
    ]);
  });

  it('is the family that the guide tells of, file by file', () => {
    const guide = readFileSync('jigs/README.md', 'utf8');
    for (const file of [
      'parameters',
      'lean',
      'gauge',
      'numbers',
      'checks',
      'fixture',
      'card',
      'index',
    ])
      expect(guide).toContain(`${file}.ts`);
  });
});
