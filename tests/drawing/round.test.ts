import { describe, expect, it } from 'vitest';
import { roundOf } from '../../src/drawing/corners.ts';
import { path, type Vertex } from '../../src/geometry/loop.ts';
import { cos, sin, tan } from '../../src/core/trigonometry.ts';
import { radians } from '../../src/core/units.ts';

/** A rim of radius 20 about (3, 4) with so many notches, each taking two fifths of its pitch. */
const rim = (notches: number, deep = 1) => {
  const pitch = 360 / notches;
  const at = (angle: number, radius: number, bulge = 0): Vertex => ({
    x: 3 + radius * cos(radians(angle)),
    y: 4 + radius * sin(radians(angle)),
    bulge,
  });
  return path(
    Array.from({ length: notches }, (_, i) => [
      at(i * pitch, 20, tan(radians(0.6 * pitch) / 4)),
      at((i + 0.6) * pitch, 20),
      at((i + 0.8) * pitch, 20 - deep),
    ]).flat(),
  );
};

describe('a notched rim', () => {
  it('is measured across the circle it was cut from', () => {
    const { centre, radius } = roundOf(rim(50)) ?? { centre: [NaN, NaN], radius: NaN };
    expect([...centre, radius].map((value) => value.toFixed(6))).toEqual([
      '3.000000',
      '4.000000',
      '20.000000',
    ]);
  });

  it('is none where it has few corners, which are dimensioned, or corners outside the circle', () => {
    expect(roundOf(rim(3))).toBeUndefined();
    expect(roundOf(rim(50, -1))).toBeUndefined();
  });
});
