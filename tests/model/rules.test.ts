import { describe, expect, it } from 'vitest';
import { circle, polygon, rectangle, slot, type Loop } from '../../src/geometry/loop.ts';
import type { Hole, PlatePart, PrintPart } from '../../src/model/part.ts';
import { PROCESS } from '../../src/model/process.ts';
import { plateRules, printRules } from '../../src/model/rules.ts';
import { steel } from '../check/shapes.ts';

const hole = (id: string, x: number, y: number, size: number): Hole => ({
  id,
  loop: circle([x, y], size / 2),
  at: [x, y],
  size,
  purpose: 'test',
});

const base = {
  ...steel,
  id: 'base',
  name: 'Base',
} as const;

const plateOf = (
  process: PlatePart['process'],
  thickness: number,
  holes: readonly Hole[],
  outer: Loop = rectangle([0, 0], [100, 50]),
): PlatePart => ({
  ...base,
  kind: 'plate',
  process,
  holes,
  engraving: [],
  layers: [{ profile: { outer, holes: holes.map(({ loop }) => loop) }, from: 0, to: thickness }],
});

const codes = (part: PlatePart): string[] =>
  plateRules(part).map(({ code, severity }) => `${code} ${severity}`);

describe('rules of cutting processes', () => {
  // Job-shop design guides for laser cutting, the laxer of two: hole 0.7 t, web 0.7 t, edge t.
  it('advises what the guides for laser cutting advise', () => {
    const { hole: bore, web, edge, slot: long, kerf } = PROCESS.laser;
    expect(bore.advised(10)).toBeCloseTo(7, 9);
    expect(bore.advised(1)).toBe(1);
    expect(web.advised(10)).toBeCloseTo(7, 9);
    expect(edge.advised(10)).toBeCloseTo(10, 9);
    expect(long.advised(10)).toBeCloseTo(10, 9);
    expect(kerf).toEqual([0.13, 0.38]);
  });

  it('never allows less than it advises', () => {
    for (const { hole: bore, web, edge, slot: long } of Object.values(PROCESS))
      for (const limit of [bore, web, edge, long])
        for (const t of [1, 3, 6, 12])
          expect(limit.advised(t)).toBeGreaterThanOrEqual(limit.least(t));
  });

  it('passes a sound plate and names what is too small, its value and the limit', () => {
    expect(codes(plateOf('laser', 6, [hole('a', 20, 25, 6.6), hole('b', 60, 25, 6.6)]))).toEqual(
      [],
    );
    const small = plateRules(plateOf('laser', 6, [hole('a', 20, 25, 2.5)]));
    expect(small).toHaveLength(1);
    expect(small[0]).toMatchObject({ code: 'feature-small', severity: 'error', path: 'base.a' });
    expect(small[0]?.message).toMatch(/"a".*2\.5 mm.*3 mm/);
    expect(codes(plateOf('laser', 6, [hole('a', 20, 25, 3.5)]))).toEqual(['feature-small warning']);
    expect(codes(plateOf('plasma', 6, [hole('a', 20, 25, 3.5)]))).toEqual(['feature-small error']);
  });

  it('measures webs and edges exactly', () => {
    const near = plateRules(plateOf('laser', 6, [hole('a', 6, 25, 6.6)]));
    expect(near.map(({ code }) => code)).toEqual(['edge-thin']);
    expect(near[0]?.message).toContain('2.7 mm');
    const two = plateRules(plateOf('laser', 6, [hole('a', 40, 25, 6.6), hole('b', 49, 25, 6.6)]));
    expect(two.map(({ code }) => code)).toEqual(['web-thin']);
    expect(two[0]?.message).toContain('2.4 mm');
  });

  it('judges slots by their width', () => {
    const long: Hole = {
      ...hole('s', 50, 25, 2),
      loop: slot([40, 25], [60, 25], 2),
      slotLength: 22,
    };
    expect(codes(plateOf('laser', 6, [long]))).toEqual(['slot-narrow error']);
  });

  it('notes inner corners that come out rounded, not outer ones', () => {
    const notched = polygon([
      [0, 0],
      [100, 0],
      [100, 50],
      [60, 50],
      [60, 40],
      [40, 40],
      [40, 50],
      [0, 50],
    ]);
    const notes = plateRules(plateOf('waterjet', 6, [], notched));
    expect(notes).toMatchObject([{ code: 'inner-corner', severity: 'note' }]);
    expect(notes[0]?.message).toContain('2 inner corners');
    const window: Hole = { ...hole('w', 50, 25, 20), loop: rectangle([40, 15], [60, 35]) };
    expect(plateRules(plateOf('laser', 6, [window]))[0]?.message).toContain('4 inner corners');
  });
});

describe('rules of printing', () => {
  const printOf = (holes: readonly Hole[], outer: Loop): PrintPart => ({
    ...base,
    kind: 'print',
    holes,
    layers: [{ profile: { outer, holes: holes.map(({ loop }) => loop) }, from: 0, to: 5 }],
  });

  // Print design guides: walls 0.8 mm at least and 1.2 mm to serve with a 0.4 mm nozzle, holes
  // from 2 mm, posts from 3 mm.
  it('judges walls, holes and posts', () => {
    const box = rectangle([0, 0], [20, 20]);
    const found = (part: PrintPart, nozzle = 0.4): string[] =>
      printRules(part, nozzle).map(({ code, severity }) => `${code} ${severity}`);
    expect(found(printOf([hole('a', 10, 10, 6)], box))).toEqual([]);
    expect(found(printOf([hole('a', 4, 10, 6)], box))).toEqual(['wall-thin warning']);
    expect(found(printOf([hole('a', 3.5, 10, 6)], box))).toEqual(['wall-thin error']);
    expect(found(printOf([hole('a', 4, 10, 6)], box), 0.6)).toEqual(['wall-thin error']);
    expect(found(printOf([hole('a', 10, 10, 1.5)], box))).toEqual(['feature-small error']);
    expect(found(printOf([], circle([0, 0], 1.2)))).toEqual(['post-thin warning']);
    expect(found(printOf([], circle([0, 0], 0.7)))).toEqual(['post-thin error']);
  });
});
