import { describe, expect, it } from 'vitest';
import { thinnest } from '../../src/check/rules-walls.ts';
import { rounded } from '../../src/geometry/fillet.ts';
import type { Loop } from '../../src/geometry/loop.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';

const loopOf = (points: readonly Vec2[], radii: readonly number[]): Loop => {
  const loop = rounded(points, radii);
  if (!loop.ok) throw new Error(JSON.stringify(loop.issues));
  return loop.value;
};

const wall = (points: readonly Vec2[], radii: readonly number[] = points.map(() => 0)) =>
  thinnest({ outer: loopOf(points, radii), holes: [] })?.value;

const plate: Vec2[] = [
  [0, 0],
  [60, 0],
  [60, 20],
  [0, 20],
];

// Plain geometry: widths as they are drawn.
describe('the thinnest place of an outline', () => {
  it('is the width of a plate, however its corners are rounded or chamfered', () => {
    for (const r of [0.5, 3, 8]) expect(wall(plate, [r, r, r, r])).toBeCloseTo(20, 9);
    const chamfered: Vec2[] = [
      [2, 0],
      [60, 0],
      [60, 20],
      [0, 20],
      [0, 2],
    ];
    const small = chamfered.map((_, i) => (i % 2 === 0 ? 0.2 : 0.4));
    // From the end of the chamfer, not across it, which would be 2.8.
    expect(wall(chamfered, small)).toBeGreaterThan(18);
    expect(wall([...chamfered].reverse(), small)).toBeGreaterThan(18);
  });

  it('is the width of a plate with square ends, and the height of a trapezium', () => {
    expect(wall(plate)).toBeCloseTo(20, 9);
    const trapezium: Vec2[] = [
      [0, 0],
      [5, 0],
      [5, 3],
      [0.2, 3],
    ];
    expect(wall(trapezium)).toBeCloseTo(3, 9);
  });

  it('is the width of a tab, whether its end is square or round', () => {
    const tabbed: Vec2[] = [
      [0, 0],
      [60, 0],
      [60, 20],
      [32, 20],
      [32, 30],
      [28, 30],
      [28, 20],
      [0, 20],
    ];
    expect(wall(tabbed)).toBeCloseTo(4, 9);
    expect(wall(tabbed, [0, 0, 0, 0, 1.9, 1.9, 0, 0])).toBeCloseTo(4, 9);
  });

  it('is what is left beside a notch', () => {
    const notched: Vec2[] = [
      [0, 0],
      [60, 0],
      [60, 20],
      [31, 20],
      [31, 3],
      [29, 3],
      [29, 20],
      [0, 20],
    ];
    expect(wall(notched)).toBeCloseTo(3, 9);
  });
});
