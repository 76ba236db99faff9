import { describe, expect, it } from 'vitest';
import { plateDxf } from '../../src/export/index.ts';
import { valueOf } from '../family/examples.ts';
import { readCutFile, type Contour } from './cut-file.ts';
import { differences, near } from './differences.ts';
import { BLOCK, randomPlate } from './random-plate.ts';
import { partSheets } from '../../src/drawing/part-sheets.ts';
import { defects, fieldOf } from './fields.ts';
import { clashes, outside } from './overlap.ts';
import type { Item } from '../../src/drawing/sheet.ts';
import { readPlate } from './reader.ts';
import { worked } from './worked.ts';

const designs = worked();

describe('plates of worked designs, read from their drawing alone', () => {
  it.each(designs)('$name agrees with its cut files within 0.005 mm', ({ parts }) => {
    const plates = parts().flatMap(({ part, sheets }) =>
      part.kind === 'plate' ? [{ part, sheets }] : [],
    );
    expect(plates.length).toBeGreaterThan(0);
    for (const { part, sheets } of plates) {
      const drawing = readPlate(sheets);
      expect({ id: part.id, missing: drawing.missing }).toEqual({ id: part.id, missing: [] });
      const file = readCutFile(valueOf(plateDxf(part)));
      expect({ id: part.id, off: differences(drawing, file) }).toEqual({ id: part.id, off: [] });
      expect(near(drawing.thickness, part.layers[0]?.to ?? NaN)).toBe(true);
    }
  });

  it('are told apart from a file with a hole, a corner or a radius elsewhere', () => {
    const plate = randomPlate(2);
    const drawing = readPlate(partSheets(plate, BLOCK));
    const file = readCutFile(valueOf(plateDxf(plate)));
    const [outer] = file.contours;
    if (!outer) throw new Error('This plate has an outline of straight edges.');
    const moved = outer.vertices.map((v, i): Contour['vertices'][0] =>
      i === 0 ? { ...v, at: [v.at[0] + 0.01, v.at[1]] } : v,
    );
    expect(
      differences(drawing, { ...file, contours: [{ vertices: moved }, ...file.contours.slice(1)] }),
    ).not.toEqual([]);
    const wide = file.circles.map((c) => ({ ...c, radius: c.radius + 0.01 }));
    expect(differences(drawing, { ...file, circles: wide })).not.toEqual([]);
  });
});

describe('every part sheet of worked designs', () => {
  // Drills for coarse threads, ISO 2306: from memory.
  const TAP_DRILLS: Record<string, number> = {
    M3: 2.5,
    M4: 3.3,
    M5: 4.2,
    M6: 5,
    M8: 6.8,
    M10: 8.5,
  };

  it.each(designs)('$name: has every field, to scale, and no text on anything', ({ parts }) => {
    for (const { part, sheets } of parts()) {
      expect({ id: part.id, sheets: sheets.length > 0 }).toEqual({ id: part.id, sheets: true });
      for (const sheet of sheets) {
        const found = [...defects(sheet), ...clashes(sheet), ...outside(sheet)];
        expect({ id: sheet.id, found }).toEqual({ id: sheet.id, found: [] });
        expect(fieldOf(sheet, 'Material')).toContain(part.material);
        expect(fieldOf(sheet, 'Finish')).toBe(part.finish);
        expect(part.finish).not.toBe(part.material);
        expect(fieldOf(sheet, 'Quantity')).toBe(String(part.quantity));
      }
    }
  });

  it.each(designs)(
    '$name: calls every thread with its drill, and what must be nearer',
    ({ parts }) => {
      for (const { part, sheets } of parts()) {
        if (part.kind === 'hardware') continue;
        const written = sheets
          .flatMap(({ items }) => items)
          .flatMap((item) => (item.kind === 'text' ? [item.text] : []))
          .join(' ');
        const holes = [...part.holes, ...(part.kind === 'stock' ? part.crossHoles : [])];
        for (const { id, thread, size } of holes) {
          expect(written).toContain(id);
          if (thread === undefined) continue;
          expect(written).toMatch(new RegExp(`tap\\s+${thread},`));
          expect({ id, size }).toEqual({ id, size: TAP_DRILLS[thread] });
        }
        for (const { thread, note, size } of sheets
          .flatMap((sheet) => readPlate([sheet]).holes)
          .map((row) => ({
            ...row,
            thread: /tap (M\d+)/.exec(row.note)?.[1],
          })))
          if (thread !== undefined)
            expect({ note, size }).toEqual({ note, size: TAP_DRILLS[thread] });
        const squeezed = written.replace(/\s+/g, ' ');
        for (const feature of part.tight)
          expect(squeezed).toContain(`Closer than the general tolerance: ${feature}.`);
      }
    },
  );

  it('of a folded lip shows its profile in an enlarged detail, or is as large itself', () => {
    const lips = designs
      .flatMap(({ parts }) => parts())
      .filter(({ part }) => /^lip-(strip|pad)$/.test(part.id));
    expect(lips.length).toBeGreaterThan(0);
    for (const { sheets } of lips) {
      const [sheet] = sheets;
      if (!sheet) throw new Error('It is drawn.');
      const texts = sheet.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
      const detail = texts.find((text) => /^Z \(\d+:1\)$/.test(text));
      expect(detail ?? fieldOf(sheet, 'Scale')).toMatch(/(2|5|10):1/);
      // The letter stands at the circle, and again over the detail.
      if (detail !== undefined) expect(texts).toContain('Z');
    }
  });

  it('is missed where a field, the symbol or the scale is not there', () => {
    const [drawn] = designs[0]?.parts() ?? [];
    const [sheet] = drawn?.sheets ?? [];
    if (!sheet) throw new Error('The first worked design has a drawing.');
    const without = (leave: (item: Item) => boolean) =>
      defects({ ...sheet, items: sheet.items.filter((item) => !leave(item)) });
    const says = (text: string) => (item: Item) => item.kind === 'text' && item.text === text;
    expect(defects(sheet)).toEqual([]);
    for (const text of ['Rev.', 'ISO 2768-m', 'mm', fieldOf(sheet, 'Scale') ?? ''])
      expect(without(says(text))).not.toEqual([]);
    expect(without((item) => item.kind === 'circle')).not.toEqual([]);
  });
});

// What hangs at a machine is seen at once and read from an arm's length: two pages, letters of at
// least 2.5 mm, which is the least of ISO 3098-1 for prints of this size (from memory).
describe('every set-up sheet of worked designs', () => {
  const PAPERS = ['iso', 'us'] as const;

  it.each(designs.flatMap((one) => PAPERS.map((paper) => ({ ...one, paper }))))(
    '$name on $paper paper: two pages at most, nothing small, no word left out',
    ({ setUp, paper }) => {
      const { sheet, annex, words } = setUp(paper);
      expect(sheet.length).toBeLessThanOrEqual(2);
      const texts = [...sheet, ...annex]
        .flatMap(({ items }) => items)
        .flatMap((item) => (item.kind === 'text' ? [item] : []));
      expect(Math.min(...texts.map(({ height }) => height))).toBeGreaterThanOrEqual(2.5);
      const written = sheet[0]?.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
      expect(words.filter((word) => written?.includes(word) !== true)).toEqual([]);
      expect([...sheet, ...annex].flatMap((one) => [...clashes(one), ...outside(one)])).toEqual([]);
      // What is set is read from 600 mm: 16 minutes of arc there are 2.8 mm (legibility rules of
      // displays, from memory). Paper of the second kind carries all lengths in inches as well.
      const cells = sheet.flatMap(({ items }) =>
        items.flatMap((item) =>
          item.kind === 'text' && (item.text === 'left' || item.text === 'right')
            ? [item.height]
            : [],
        ),
      );
      if (paper === 'iso') expect(Math.min(...cells)).toBeGreaterThanOrEqual(2.8);
    },
  );
});
