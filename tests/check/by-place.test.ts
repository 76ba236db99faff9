import { describe, expect, it } from 'vitest';
import { createByPlace } from '../../src/check/by-place.ts';
import { frame } from '../../src/geometry/frame.ts';

describe('values by place', () => {
  it('are made once for a place, to the last bit, as long as it is among the latest', () => {
    const made: number[] = [];
    const at = createByPlace<number>(3);
    const ask = (x: number): number =>
      at(frame([x, 0, 0]), () => {
        made.push(x);
        return x;
      });
    for (const x of [1, 2, 3, 1, 3, 2]) expect(ask(x)).toBe(x);
    expect(made).toEqual([1, 2, 3]);
    // One more pushes out the one that was made first.
    for (const x of [4, 2, 3, 4]) expect(ask(x)).toBe(x);
    expect(made).toEqual([1, 2, 3, 4]);
    expect(ask(1)).toBe(1);
    expect(made).toEqual([1, 2, 3, 4, 1]);
    expect(ask(1 + Number.EPSILON)).toBe(1 + Number.EPSILON);
    expect(made).toHaveLength(6);
  });
});
