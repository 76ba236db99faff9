import { describe, expect, it } from 'vitest';
import { assemblySheets } from '../../src/drawing/assembly-sheets.ts';
import { cutsOf, cutView, type Cut } from '../../src/drawing/cut-view.ts';
import { hatchings } from '../../src/drawing/hatch.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { clashes, outside } from './overlap.ts';
import { parts, placements } from './parts.ts';
import { BLOCK } from './random-plate.ts';

const [across, along] = cutsOf(
  [
    { through: 'screw-1', across: 'x' },
    { through: 'bar', across: 'y' },
    { through: 'nothing of that name', across: 'x' },
  ],
  parts,
  placements,
);
const cutAt = (cut: Cut | undefined): Cut => cut ?? expect.fail('no cut');

/** Area of rings by the shoelace formula: holes run the other way round. */
const areaOf = (rings: readonly (readonly Vec2[])[]): number =>
  Math.abs(
    rings.reduce(
      (sum, ring) =>
        sum +
        ring.reduce((s, [x, y], i) => {
          const [u, v] = ring[(i + 1) % ring.length] ?? [x, y];
          return s + (x * v - u * y) / 2;
        }, 0),
      0,
    ),
  );

describe('a section through the assembly', () => {
  it('has a letter for every plane through a part that is there', () => {
    expect(cutAt(across)).toMatchObject({ letter: 'A', across: 'x', at: 15 });
    expect(cutAt(along)).toMatchObject({ letter: 'B', across: 'y', at: 65 });
    expect(cutsOf([{ through: 'nothing', across: 'x' }], parts, placements)).toEqual([]);
  });

  // At x = 15 the plane halves the tapped hole of 5 in the base of 80 x 6, and of the nose the
  // hole of 6.6 below the seat of 11, each 6 high, and its rib of 10 x 8.
  it.each([
    ['base', 80 * 6 - 5 * 6],
    ['nose', 40 * 12 - 6.6 * 6 - 11 * 6 + 10 * 8],
  ])('cuts as much of the %s as its dimensions say', (owner, area) => {
    const faces = cutView(parts, placements, cutAt(across))(2).faces;
    const rings = faces.filter((face) => face.owner === owner).flatMap((face) => face.rings);
    expect(areaOf(rings) / 4).toBeCloseTo(area, 0);
    expect(Math.abs(areaOf(rings) / 4 / area - 1)).toBeLessThan(0.002);
  });

  it('leaves a screw along the plane whole and cuts a bar across it', () => {
    const view = cutView(parts, placements, cutAt(across))(1);
    const screw = view.faces.filter(({ owner }) => owner === 'screw-1');
    expect(Math.min(...screw.map(({ box }) => box.y0))).toBeCloseTo(12 - 20, 6);
    expect(view.faces.some(({ owner }) => owner === 'screw-2')).toBe(false);
    const bar = cutView(parts, placements, cutAt({ ...cutAt(along), at: 65 }))(1).faces;
    // The bar of 20 x 20 x 50, hatched: its stock is square, so that it is no shaft.
    expect(areaOf(bar.filter(({ owner }) => owner === 'bar').flatMap((f) => f.rings))).toBeCloseTo(
      20 * 50,
      6,
    );
  });

  it('hatches neighbours differently (ISO 128-3)', () => {
    const box = (x: number, y: number): Vec2[] => [
      [x, y],
      [x + 10, y],
      [x + 10, y + 10],
      [x, y + 10],
    ];
    const [a, b, c, d] = hatchings([[box(0, 0)], [box(10, 0)], [box(5, 10)], [box(40, 0)]]);
    expect(new Set([a, b, c]).size).toBe(3);
    expect(d).toBe(a);
  });

  it('is marked in the view from above and has a sheet, with no text on anything', () => {
    const sheets = assemblySheets(
      parts,
      placements,
      {
        title: 'Little rest',
        files: new Map(),
        order: [],
        notes: [],
        sections: [],
        cuts: [
          { through: 'screw-1', across: 'x' },
          { through: 'bar', across: 'y' },
        ],
      },
      BLOCK,
    );
    const words = sheets.map(({ items }) =>
      items.flatMap((item) => (item.kind === 'text' && item.height === 5 ? [item.text] : [])),
    );
    expect(words[0]?.filter((word) => /^[AB]$/.test(word)).sort()).toEqual(['A', 'A', 'B', 'B']);
    expect(words.flat().filter((word) => word.includes('–'))).toEqual(['A – A', 'B – B']);
    expect(sheets.flatMap(clashes)).toEqual([]);
    expect(sheets.flatMap(outside)).toEqual([]);
  });
});
