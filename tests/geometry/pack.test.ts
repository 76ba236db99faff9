import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pack, type Packed } from '../../src/geometry/pack.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';

const side = fc.integer({ min: 5, max: 300 });
const boxes = fc.array(fc.tuple(side, side), { minLength: 1, maxLength: 25 });
const options = { sheet: [320, 240], gap: 4, margin: 7 } as const;

const placed = (all: readonly Vec2[], { index, at, turned }: Packed): [Vec2, Vec2] => {
  const [w = 0, h = 0] = all[index] ?? [];
  return [at, [at[0] + (turned ? h : w), at[1] + (turned ? w : h)]];
};

describe('boxes on sheets', () => {
  it('lie each once, off the edge by the margin and apart by the gap', () => {
    fc.assert(
      fc.property(boxes, (all) => {
        const { packed, tooLarge } = pack(all, options);
        expect([...packed.map(({ index }) => index), ...tooLarge].sort((a, b) => a - b)).toEqual(
          all.map((_, i) => i),
        );
        packed.forEach((one, i) => {
          const [low, high] = placed(all, one);
          for (const axis of [0, 1] as const) {
            expect(low[axis]).toBeGreaterThanOrEqual(7 - 1e-9);
            expect(high[axis]).toBeLessThanOrEqual((options.sheet[axis] ?? 0) - 7 + 1e-9);
          }
          for (const other of packed.slice(i + 1)) {
            if (other.sheet !== one.sheet) continue;
            const [from, to] = placed(all, other);
            const apart = ([0, 1] as const).some(
              (axis) => from[axis] - high[axis] >= 4 - 1e-9 || low[axis] - to[axis] >= 4 - 1e-9,
            );
            expect(apart).toBe(true);
          }
        });
      }),
      { numRuns: 150, seed: 3 },
    );
  });

  it('are told too large exactly where neither way round fits', () => {
    fc.assert(
      fc.property(boxes, (all) => {
        const room = (w: number, h: number): boolean => w <= 320 - 14 && h <= 240 - 14;
        expect([...pack(all, options).tooLarge].sort((a, b) => a - b)).toEqual(
          all.flatMap(([w, h], i) => (room(w, h) || room(h, w) ? [] : [i])),
        );
      }),
      { numRuns: 150, seed: 4 },
    );
  });

  it('fill a sheet that they fill exactly', () => {
    // Six of 100 by 50 with gaps of 4 on a room of 308 by 104.
    const six = Array.from({ length: 6 }, (): Vec2 => [100, 50]);
    const { packed } = pack(six, { sheet: [318, 114], gap: 4, margin: 5 });
    expect(new Set(packed.map(({ sheet }) => sheet))).toEqual(new Set([0]));
    const tight = pack(six, { sheet: [317.9, 114], gap: 4, margin: 5 });
    expect(new Set(tight.packed.map(({ sheet }) => sheet)).size).toBe(2);
  });
});
