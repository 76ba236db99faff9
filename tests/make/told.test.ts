import { describe, expect, it } from 'vitest';
import type { CheckResult } from '../../src/check/result.ts';
import type { Section, SectionDimension } from '../../src/drawing/belt-section.ts';
import { lengthIn, lengthsInBoth } from '../../src/drawing/in-both.ts';
import type { Fixture, Setting } from '../../src/family/index.ts';
import { polygon } from '../../src/geometry/loop.ts';
import { containsPoint } from '../../src/geometry/loop-measure.ts';
import { sectionOf } from '../../src/make/belt-section.ts';
import { stampFailed } from '../../src/make/failed.ts';
import { reportOf, verdictOf } from '../../src/make/report.ts';
import { setupData } from '../../src/make/setup-data.ts';
import { text } from '../../src/text/index.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

const worked = (family: string, name: string) => {
  const found = examplesOf(family).find(({ file }) => file.startsWith(name));
  if (!found) throw new Error(name);
  return { design: found.design, fixture: solved(found) };
};
const { design, fixture } = worked('spine-rest', 'kitchen');
const [one] = fixture.settings;
if (!one) throw new Error('no setting');
const told = (over: Partial<Fixture>, of = design) =>
  setupData(of, { ...fixture, ...over }, [], '');

/** The first setting with its dial turned so far. */
const dialled = (turnsFromZero: number, turnsFromLast: number, division: number): Setting => ({
  ...one,
  readings: one.readings.map((reading, i) =>
    i === 0 ? { ...reading, dial: { turnsFromZero, turnsFromLast, division } } : reading,
  ),
});

describe('the dial on a set-up sheet', () => {
  // The knob has fifty divisions; more turns open, away from the belt.
  it.each([
    [-0.6, -1.62, 20, '1 t 31 d in', '0 t 30 d in (20)'],
    [2, 0.5, 0, '0 t 25 d out', '2 t 0 d out (0)'],
    [1.98, 0.004, 49, 'as it is', '1 t 49 d out (49)'],
  ] as const)('at %s turns, %s from the last', (zero, last, division, turns, reading) => {
    const [row] = told({ settings: [dialled(zero, last, division)] }).settings.rows;
    expect(row).toMatchObject({ turns, reading });
  });
});

describe('what comes of a pass on a set-up sheet', () => {
  it('is stopped at the depth of a hollow, and told by how it widens', () => {
    const progress = [
      { depth: 0.1, lower: 8, upper: 20 },
      { depth: 0.3, lower: 6, upper: 24 },
    ];
    const hollow = { ...one, hollow: { stop: 0.3, progress } };
    const { making } = design;
    const inches = { ...making, plates: { ...making.plates, inches: 'beside' } } as const;
    const data = told({ settings: [hollow] }, { ...design, making: inches });
    expect(data.settings.rows[0]?.stopAt).toBe(0.3);
    // 0.3 mm are 0.0118 in.
    expect(lengthIn(data.settings.rows[0]?.stopAt ?? NaN, 2, data.inches)).toContain('0.0118');
    // 4 mm for 0.2 mm of depth: 2 mm for a tenth.
    expect(data.progress[0]?.perTenth).toBeCloseTo(2, 9);
  });

  it('is told by a tenth off the edge, from the last two stops', () => {
    const progress = [
      { edge: 0.7, angle: 3, bevelHeight: 10 },
      { edge: 0.5, angle: 3, bevelHeight: 20 },
      { edge: 0.3, angle: 3, bevelHeight: 23 },
    ];
    expect(told({ settings: [{ ...one, progress }] }).progress[0]?.perTenth).toBeCloseTo(1.5, 9);
  });

  it('is of the blades the skin a side, and of used belts alone their scratches', () => {
    const [first, ...others] = design.blades;
    if (!first) throw new Error('no blade');
    const thick = { ...first, edge: { ...first.edge, asHeatTreated: 1.2, wanted: 0.2 } };
    const used = design.sequence.slice(-1);
    const { facts } = told({}, { ...design, blades: [thick, ...others], sequence: used });
    const { skin, scratch } = text.make.setup;
    const called = (names: readonly string[]) => facts.filter(({ name }) => names.includes(name));
    const skins = called(design.blades.map(({ name }) => skin(name)));
    expect(skins).toHaveLength(design.blades.length);
    expect(skins[0]?.value).toBe('0.5 mm');
    const ids = design.grinder.belts.map(({ id }) => id);
    expect(called(ids.map(scratch)).map(({ name }) => name)).toEqual(
      used.map(({ belt }) => scratch(belt)),
    );
  });

  it('spreads by the root of the sum of squares, as its heading says', () => {
    const drawn = valueOf(fixture.budget?.({ draws: 1000, seed: 1 }) ?? expect.fail('no budget'));
    const { budget } = told({});
    expect(budget).toHaveLength(drawn.outputs.length);
    drawn.outputs.forEach(({ rootSumSquare }, i) => {
      const said = Number(/[\d.]+/.exec(budget[i]?.spread ?? '')?.[0]);
      expect(Math.abs(said - rootSumSquare)).toBeLessThan(0.0051);
    });
  });
});

describe('the pictures on a set-up sheet', () => {
  const outline = ({ shapes }: Section) => shapes.find(({ stroke }) => stroke === 'visible');

  it('draw the grind line on the blade', () => {
    const picture = told({}).pictures.blade ?? expect.fail('no picture');
    const blade = polygon(outline(picture)?.points ?? []);
    const line = picture.shapes.find(({ stroke }) => stroke === 'dimension')?.points ?? [];
    expect(line.length).toBeGreaterThan(3);
    const inside = line.filter((p) => containsPoint(blade, p));
    // At the tip the line runs out over the edge.
    expect(inside.length).toBeGreaterThan(0.7 * line.length);
  });

  it('draw a stop on the tang behind the plunge, and one on the blade before it', () => {
    const span = (where: 'tang' | 'tip') => {
      const picture = told({ alongBlade: { collar: where } }).pictures.blade;
      const upright = picture?.dimensions.find(({ kind }) => kind === 'linear') as
        Extract<SectionDimension, { kind: 'linear' }> | undefined;
      return [upright?.a[0], upright?.b[0]];
    };
    const collar = one.readings.find(({ key }) => key === 'collar')?.value ?? NaN;
    expect(span('tang')).toEqual([-collar, 0]);
    expect(span('tip')).toEqual([0, collar]);
  });
});

it('lengths in inches are told as exactly as those in millimetres', () => {
  // 25.4 mm an inch: 0.05 mm are 0.00197 in, of which three decimals would say 0.002.
  expect(lengthsInBoth('a gap of 0.05 mm, a pin of 6 mm')).toBe(
    'a gap of 0.05 mm (0.0020″), a pin of 6 mm (0.236″)',
  );
  expect(lengthsInBoth('1.5 mm')).toBe('1.5 mm (0.059″)');
});

describe('failed checks on a page', () => {
  const check = (label: string, passed: boolean): CheckResult => ({
    id: label,
    label,
    kind: 'range',
    passed,
    unit: 'mm',
    found: 1,
    basis: '',
    message: '',
    fix: '',
  });
  const sheet = { id: 'x', title: 'x', size: [210, 297], items: [] } as const;
  const words = (checks: readonly CheckResult[]) =>
    stampFailed(sheet, checks).items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));

  it('are named, one alone too, and where there is no room their number is', () => {
    expect(words([check('a', true)])).toEqual([]);
    expect(words([check('a', true), check('Gap at the belt', false)])).toEqual([
      'CHECKS FAILED: Gap at the belt',
    ]);
    const many = Array.from({ length: 40 }, (_, i) =>
      check(`Clearance number ${String(i)}`, false),
    );
    const lines = words(many);
    expect(lines).toHaveLength(2);
    const named = lines.join(' ').match(/Clearance/g)?.length ?? 0;
    expect(lines[1]).toContain(`(and ${String(40 - named)} more`);
    expect(named).toBeGreaterThan(4);
  });
});

describe('the section at the belt', () => {
  const square = (x: number, y: number, size: number) =>
    [
      [x, y],
      [x + size, y],
      [x + size, y + size],
      [x, y + size],
    ] as const;

  it('measures from end to end, and points where no other part lies', () => {
    const section = sectionOf({
      title: '',
      lines: [
        { points: square(0, 0, 20), closed: true, role: 'fixture', label: 'Nose' },
        // Covers all of the nose but its right side.
        { points: square(-40, -30, 55), closed: true, role: 'grinder' },
      ],
      dimensions: [
        { from: [1, 2], to: [9, 2], direction: 'horizontal', text: 'h' },
        { from: [1, 2], to: [1, 7], direction: 'vertical', text: 'v' },
      ],
    });
    const [h, v, note] = section.dimensions;
    expect(h).toMatchObject({ axis: 'x', a: [1, 2], b: [9, 2] });
    expect(v).toMatchObject({ axis: 'y', a: [1, 2], b: [1, 7] });
    if (note?.kind !== 'note') throw new Error('no note');
    expect(containsPoint(polygon([...square(-40, -30, 55)]), note.at)).toBe(false);
    expect(note.at[0]).toBeGreaterThan(15);
  });
});

it('what was not checked has not passed', () => {
  expect(verdictOf(design, fixture, []).passed).toBe(false);
  expect(reportOf(design, fixture, [], [], '').passed).toBe(false);
});
