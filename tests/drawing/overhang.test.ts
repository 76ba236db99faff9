import { describe, expect, it } from 'vitest';
import { overhangs } from '../../src/drawing/overhang.ts';
import { partSheets } from '../../src/drawing/part-sheets.ts';
import { circle, rectangle, type Loop } from '../../src/geometry/loop.ts';
import type { Layer } from '../../src/model/part.ts';
import { nose } from './parts.ts';
import { BLOCK } from './random-plate.ts';

const layer = (from: number, to: number, outer: Loop, ...holes: Loop[]): Layer => ({
  profile: { outer, holes },
  from,
  to,
});
const block = rectangle([0, 0], [40, 30]);

describe('overhangs of a print as it lies', () => {
  it('are none where every layer lies on the one below', () => {
    expect(overhangs(nose.layers)).toEqual([]);
  });

  it('are half the span of a blind hole that opens to the bed', () => {
    const stack = [layer(0, 5, block, circle([20, 15], 6)), layer(5, 9, block)];
    expect(overhangs(stack)).toEqual([{ z: 5, reach: expect.closeTo(6, 2) as number }]);
  });

  it('are the ring of a counterbore from below, and a ledge to one side', () => {
    const bored = [
      layer(2, 7, block, circle([20, 15], 6)),
      layer(7, 12, block, circle([20, 15], 3.5)),
      layer(12, 15, rectangle([0, 0], [47, 30]), circle([20, 15], 3.5)),
    ];
    expect(overhangs(bored)).toEqual([
      { z: 5, reach: expect.closeTo(2.5, 1) as number },
      { z: 10, reach: expect.closeTo(7, 6) as number },
    ]);
  });

  it('are told on the drawing of a print', () => {
    const words = (layers: readonly Layer[]): string =>
      partSheets({ ...nose, layers, holes: [] }, BLOCK)
        .flatMap(({ items }) => items)
        .flatMap((item) => (item.kind === 'text' ? [item.text] : []))
        .join(' ');
    expect(words(nose.layers)).toContain('No layer begins over air');
    const ledge = [layer(0, 5, block), layer(5, 9, rectangle([0, 0], [47, 30]))];
    expect(words(ledge)).toContain('z = 5, up to 7 mm');
  });
});
