import { describe, expect, it } from 'vitest';
import { depthText, sizeText } from '../../src/drawing/hole-rows.ts';
import { circle, hexagon, rectangle, slot, type Loop } from '../../src/geometry/loop.ts';
import type { Hole, Layer } from '../../src/model/part.ts';

const hole = (loop: Loop, over: Partial<Hole> = {}): Hole => ({
  id: 'a',
  at: [0, 0],
  size: 11,
  loop,
  purpose: 'x',
  ...over,
});

// A hole's size on a drawing is its diameter, a slot's its width over its whole length
// (ISO 129-1, 7.4, from memory).
describe('a row of the hole table', () => {
  it.each([
    ['Ø6.6', circle([3, 4], 3.3)],
    ['slot 6.6 × 20, 90°', slot([0, 0], [0, 13.4], 6.6)],
    ['slot 5 × 15, 0°', slot([10, 2], [0, 2], 5)],
    ['slot 4 × 14, 45°', slot([0, 0], [Math.SQRT1_2 * 10, Math.SQRT1_2 * 10], 4)],
    ['12 × 8', rectangle([1, 1], [13, 9])],
    ['11 wide, see view', hexagon([0, 0], 11)],
  ])('tells the size %s', (told, loop) => {
    expect(sizeText(hole(loop))).toBe(told);
  });

  const [bore, pocket] = [circle([5, 5], 3), circle([20, 5], 4)];
  const layer = (from: number, to: number, holes: Loop[]): Layer => ({
    from,
    to,
    profile: { outer: rectangle([0, 0], [30, 10]), holes },
  });
  const layers = [layer(0, 4, [bore]), layer(4, 10, [bore, pocket])];

  it('tells a hole through every layer from one that ends in the part', () => {
    expect(depthText(hole(bore), layers)).toBe('through');
    expect(depthText(hole(pocket), layers)).toBe('z 4 to 10');
    expect(depthText(hole(pocket), [layer(0, 4, [pocket]), layer(4, 10, [])])).toBe('z 0 to 4');
    expect(depthText(hole(circle([25, 5], 1)), layers)).toBe('see view');
    expect(depthText(hole(bore, { thread: 'M6' }), layers)).toMatch(/M6.*through$/);
  });
});
