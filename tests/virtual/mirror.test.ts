import { describe, expect, it } from 'vitest';
import type { Blade } from '../../src/blade/schema.ts';
import { shapeOf } from '../../src/blade/shape.ts';
import { blankField, type Field } from '../../src/virtual/field.ts';
import { runPass } from '../../src/virtual/grind.ts';
import { mirrored, type Made } from '../../src/virtual/mirror.ts';
import type { VirtualPass } from '../../src/virtual/types.ts';
import { bladeOf, passOf } from './blades.ts';

const LENGTH = 110;
const GRID = { step: 3, rows: 16 } as const;

const tapered = bladeOf({
  length: LENGTH,
  thickness: [
    { u: 0, t: 3 },
    { u: LENGTH, t: 1.6 },
  ],
});
const pass = (side: 'left' | 'right', setoff = 4.2) => passOf(side, setoff, LENGTH);

/** Both passes one after the other, the second knowing of the first. */
const both = (blade: Blade, [first, second]: readonly [VirtualPass, VirtualPass]) => {
  const shape = shapeOf(blade);
  const bar = blankField(shape, GRID);
  const made: Made[] = [];
  const after = runPass(shape, bar, bar, first, GRID.step, made).after;
  const alone = runPass(shape, bar, after, second, GRID.step, []);
  return { alone, mirrored: mirrored(made, shape, after, second), made, after, shape };
};

describe('a pass on the other side', () => {
  it('is the earlier one turned over, to the last bit, where all it meets is the same', () => {
    const { alone, mirrored: turned } = both(tapered, [pass('left'), pass('right')]);
    expect(turned?.reached.length).toBeGreaterThan(10);
    expect(turned?.reached.map(({ pose }) => pose)).toEqual(alone.reached.map(({ pose }) => pose));
    expect(turned?.after.right).toEqual(alone.after.right);
    expect(turned?.after.left).toEqual(alone.after.left);
    expect(turned?.volume).toBe(alone.volume);
    expect(turned?.pass.side).toBe('right');
  });

  it('is ground anew at another setoff, on the same side, or to another edge', () => {
    const [left, right] = [pass('left'), pass('right')];
    for (const second of [pass('right', 4.21), left, { ...right, edge: right.edge + 0.01 }])
      expect(both(tapered, [left, second]).mirrored).toBeUndefined();
  });

  it('is ground anew where the edge is shared unevenly', () => {
    const uneven = { ...tapered, edge: { ...tapered.edge, shareLeft: 0.4 } };
    expect(both(uneven, [pass('left'), pass('right')]).mirrored).toBeUndefined();
  });

  it('is ground anew where a face it meets differs: the near one, or the far one at the step', () => {
    const { made, after, shape } = both(tapered, [pass('left'), pass('right')]);
    const middle = Math.floor(after.us.length / 2) * after.rows;
    const without = (side: 'left' | 'right', node: number): Field => {
      const face = after[side].slice();
      face[node] = (face[node] ?? 0) - 1e-6;
      return { ...after, [side]: face };
    };
    const again = (field: Field) => mirrored(made, shape, field, pass('right'));
    expect(again(after)).toBeDefined();
    expect(again(without('right', middle + after.rows - 1))).toBeUndefined();
    expect(again(without('left', middle))).toBeUndefined();
  });
});
