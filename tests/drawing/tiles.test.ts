import { describe, expect, it } from 'vitest';
import { markedOut } from '../../src/drawing/marking.ts';
import { page } from '../../src/drawing/paper.ts';
import { templateSheets } from '../../src/drawing/template-sheets.ts';
import { tilesOf, windowOf } from '../../src/drawing/tiles.ts';
import { slot } from '../../src/geometry/loop.ts';
import type { Hole, StockPart } from '../../src/model/part.ts';
import { bar, hole, plateOf } from './parts.ts';
import { BLOCK } from './random-plate.ts';

describe('the tiles of a template', () => {
  it('show all of it whatever its size, and share a strip wide enough for their crosses', () => {
    const window = windowOf(page('iso'), 20);
    const [w, h] = [window.x1 - window.x0, window.y1 - window.y0];
    for (let size = 20; size < 700; size += 7.3) {
      const extent = { x0: -3, y0: 5, x1: -3 + size, y1: 5 + 1.3 * size };
      const tiles = tilesOf(window, extent);
      expect(Math.max(...tiles.map(({ area }) => area.x1))).toBeGreaterThanOrEqual(
        extent.x1 - 1e-9,
      );
      expect(Math.max(...tiles.map(({ area }) => area.y1))).toBeGreaterThanOrEqual(
        extent.y1 - 1e-9,
      );
      expect(tiles[0]?.area).toMatchObject({ x0: extent.x0, y0: extent.y0 });
      for (const { row, column, area } of tiles) {
        expect([area.x1 - area.x0, area.y1 - area.y0]).toEqual([
          expect.closeTo(w, 9),
          expect.closeTo(h, 9),
        ]);
        // Crosses have arms of 4 mm to either side.
        const right = tiles.find((one) => one.row === row && one.column === column + 1);
        if (right) expect(area.x1 - right.area.x0).toBeGreaterThanOrEqual(8);
        const above = tiles.find((one) => one.column === column && one.row === row + 1);
        if (above) expect(area.y1 - above.area.y0).toBeGreaterThanOrEqual(8);
      }
    }
  });

  it('are one where the page, upright or lying, takes the whole', () => {
    for (const size of [
      [200, 60],
      [60, 180],
    ] as const)
      expect(
        templateSheets(plateOf('one', size, 6, [hole('A1', [20, 20], 5)]), BLOCK),
      ).toHaveLength(1);
  });
});

describe('what is punched', () => {
  it('is either end of a slot, and every face of a bar that is drilled', () => {
    const long: Hole = {
      ...hole('S1', [30, 20], 6),
      loop: slot([20, 20], [40, 20], 6),
      slotLength: 26,
    };
    const plate = plateOf('slotted', [60, 40], 6, [long]);
    const punched = (part: Parameters<typeof markedOut>[0]) =>
      markedOut(part).items.flatMap((item) =>
        item.kind === 'circle' && item.radius === 0.6 ? [item.centre] : [],
      );
    expect(punched(plate)).toEqual(
      expect.arrayContaining([
        [20, 20],
        [40, 20],
      ]),
    );
    const above: StockPart = { ...bar, holes: [hole('H1', [12, 9], 5)] };
    expect(punched(bar)).toHaveLength(2);
    expect(punched(above)).toHaveLength(3);
    expect(punched(above)).toContainEqual([12, 9]);
  });
});
