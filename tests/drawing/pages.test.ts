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
const mark = frameItem({ x0: 0, y0: -60, x1: 60, y1: 0 }, 'visible');
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

  it('stand over what belongs below only where they do not get smaller by it', () => {
    const foot = () => ({ height: 60, items: [mark], keep: false });
    const marked = (pages: readonly Page[]): readonly (readonly [Scale, boolean])[] =>
      laidOut(pages, [A3], BLOCK).map(({ scale, items }) => [scale, items.length > 1]);
    // 277 mm within the frame of an A3 sheet: 250 leave no room for 60 more, 150 do.
    const tall = { ...page(100, 250), foot };
    expect(marked([tall, page(100, 150)])).toEqual([
      [FULL_SIZE, false],
      [FULL_SIZE, true],
    ]);
    expect(marked([tall])).toEqual([[HALF, true]]);
    expect(marked([{ ...page(100, 150), foot }, page(100, 250)])).toEqual([
      [FULL_SIZE, true],
      [FULL_SIZE, false],
    ]);
  });
});
