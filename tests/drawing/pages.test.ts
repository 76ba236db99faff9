import { describe, expect, it } from 'vitest';
import { bounds, frameItem } from '../../src/drawing/items.ts';
import { paragraph } from '../../src/drawing/layout.ts';
import { drawnOnce, laidOut, type Page } from '../../src/drawing/pages.ts';
import { landscape, spaceOf } from '../../src/drawing/paper.ts';
import { FULL_SIZE, type Scale } from '../../src/drawing/scales.ts';

const HALF: Scale = { paper: 1, real: 2 };
const A3 = landscape('A3');
const BLOCK = 60;

/** A frame so wide and tall in the real, mm. */
const page = (wide: number, tall: number, strips: Page['strips'] = []): Page => ({
  draw: drawnOnce((k) => [frameItem({ x0: 0, y0: 0, x1: k * wide, y1: k * tall }, 'visible')]),
  scales: [FULL_SIZE, HALF],
  strips,
});
const note = paragraph('a word beside the picture', 100);

describe('pictures on their sheets', () => {
  it('stand side by side where none gets smaller, and within the space of the sheet', () => {
    const laid = laidOut([page(120, 150), page(150, 100), page(300, 150)], [A3], BLOCK);
    expect(laid.map(({ scale, items }) => [scale, items.length])).toEqual([
      [FULL_SIZE, 2],
      [FULL_SIZE, 1],
    ]);
    const space = spaceOf(A3);
    for (const { items } of laid) {
      const box = bounds(items);
      expect(box.x0).toBeGreaterThan(space.x0);
      expect(box.x1).toBeLessThan(space.x1);
      expect(box.y0).toBeGreaterThan(space.y0 + BLOCK);
      expect(box.y1).toBeLessThan(space.y1);
    }
  });

  it('keep beside a column of words, and go over the title block where there is none', () => {
    const [withWords, alone] = laidOut([page(300, 150, [note]), page(300, 150)], [A3], BLOCK);
    // 300 mm are wider than what a column leaves of an A3 sheet (ISO 5457: 390 mm within the frame).
    expect(withWords?.scale).toEqual(HALF);
    expect(alone?.scale).toEqual(FULL_SIZE);
  });
});
