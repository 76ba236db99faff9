import { describe, expect, it } from 'vitest';
import { scaledTo } from '../../src/blade/scaled.ts';
import { shapeOf } from '../../src/blade/shape.ts';
import { plainBlade } from './arbitrary.ts';

describe('an outline at another length', () => {
  const curves = {
    ...plainBlade,
    outline: {
      kind: 'curves' as const,
      spine: [
        [0, 0],
        [60, 1],
        [140, 8],
      ] as [number, number][],
      edge: [
        [0, 28],
        [80, 27],
        [140, 8],
      ] as [number, number][],
    },
  };
  it.each([
    ['dimensions', plainBlade],
    ['points', curves],
  ])('by %s has all its heights in proportion; stock and bevels stay', (_, blade) => {
    const [was, is] = [shapeOf(blade), shapeOf(scaledTo(blade, 2 * shapeOf(blade).length))];
    expect(is.length).toBeCloseTo(2 * was.length, 2);
    for (const share of [0, 0.2, 0.5, 0.8, 0.95])
      for (const side of ['spine', 'edge'] as const)
        expect(is[side].value(share * is.length), `${side} at ${share}`).toBeCloseTo(
          2 * was[side].value(share * was.length),
          1,
        );
    const plainly = ({ bevels, edge, quantity }: typeof blade) => ({ bevels, edge, quantity });
    expect(plainly(is.blade)).toEqual(plainly(was.blade));
    expect(is.blade.tang.drop).toBeCloseTo(2 * was.blade.tang.drop, 2);
    expect(is.blade.tang).toEqual({ ...was.blade.tang, drop: is.blade.tang.drop });
    expect(is.blade.thickness.map(({ t }) => t)).toEqual(was.blade.thickness.map(({ t }) => t));
  });
});
