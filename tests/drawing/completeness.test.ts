import { describe, expect, it } from 'vitest';
import { partSheets } from '../../src/drawing/part-sheets.ts';
import { boundingBox } from '../../src/geometry/loop-measure.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import type { PlatePart } from '../../src/model/part.ts';
import { BLOCK, randomPlate } from './random-plate.ts';
import { readPlate } from './reader.ts';
import { valueOf } from '../family/examples.ts';
import { plateDxf } from '../../src/export/index.ts';
import { readCutFile } from './cut-file.ts';
import { differences, WITHIN } from './differences.ts';
import { rebuilt } from './rebuilt.ts';

const seeds = Array.from({ length: 40 }, (_, i) => i + 1);

const outlineOf = (plate: PlatePart, origin: Vec2): Vec2[] => {
  const outer = plate.layers[0]?.profile.outer;
  return outer?.kind === 'path'
    ? outer.vertices.map(({ x, y }): Vec2 => [x - origin[0], y - origin[1]])
    : [];
};

const nearest = (p: Vec2, points: readonly Vec2[]): number =>
  Math.min(...points.map((q) => Math.hypot(p[0] - q[0], p[1] - q[1])));

describe('a reader given only the drawing', () => {
  it.each(seeds)('rebuilds plate %i within 0.005 mm, as the cut file has it', (seed) => {
    const plate = randomPlate(seed);
    const read = readPlate(partSheets(plate, BLOCK));
    expect(read.missing).toEqual([]);
    const outer = plate.layers[0]?.profile.outer;
    if (!outer) throw new Error('A plate has one layer.');
    const origin = boundingBox(outer).min;
    expect(differences(read, readCutFile(valueOf(plateDxf(plate))))).toEqual([]);

    const wanted = outlineOf(plate, origin);
    const found = rebuilt(read);
    expect(found).toHaveLength(wanted.length);
    for (const p of wanted) expect(nearest(p, found)).toBeLessThanOrEqual(WITHIN);
    if (outer.kind === 'circle') {
      expect(Math.abs((read.circle?.diameter ?? NaN) - 2 * outer.radius)).toBeLessThan(WITHIN);
    }

    expect(read.holes.map((hole) => hole.id)).toEqual(plate.holes.map((hole) => hole.id));
    plate.holes.forEach((hole, i) => {
      const got = read.holes[i];
      expect(Math.abs((got?.at[0] ?? NaN) - (hole.at[0] - origin[0]))).toBeLessThanOrEqual(WITHIN);
      expect(Math.abs((got?.at[1] ?? NaN) - (hole.at[1] - origin[1]))).toBeLessThanOrEqual(WITHIN);
      expect(Math.abs((got?.size ?? NaN) - hole.size)).toBeLessThanOrEqual(WITHIN);
      expect(got?.note).toBe(hole.thread ? `tap ${hole.thread}, through` : 'through');
      if (hole.loop.kind === 'path') {
        const { min, max } = boundingBox(hole.loop);
        const [w, h] = [max[0] - min[0], max[1] - min[1]];
        expect(Math.abs((got?.slot?.length ?? NaN) - Math.max(w, h))).toBeLessThanOrEqual(WITHIN);
        expect(got?.slot?.angle).toBe(w > h ? 0 : 90);
      }
    });
    expect(Math.abs(read.thickness - (plate.layers[0]?.to ?? NaN))).toBeLessThanOrEqual(WITHIN);
  });

  it('notices a dimension that is taken away', () => {
    const plate = randomPlate(2);
    const [sheet] = partSheets(plate, BLOCK);
    if (!sheet) throw new Error('There is a sheet.');
    const items = sheet.items.filter((item) => item.kind !== 'text' || !item.text.includes('R'));
    const whole = readPlate([sheet]);
    expect(whole.missing).toEqual([]);
    expect(readPlate([{ ...sheet, items }]).missing.length).toBeGreaterThan(0);
  });
});
