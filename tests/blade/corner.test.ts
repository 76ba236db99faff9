import { describe, expect, it } from 'vitest';
import { cornerOf } from '../../src/blade/corner.ts';
import type { Blade } from '../../src/blade/schema.ts';
import { shapeOf } from '../../src/blade/shape.ts';
import { examplesOf } from '../family/examples.ts';

const [blade] = examplesOf('spine-rest')[0]?.design.blades ?? [];
if (blade === undefined) throw new Error('no blade');

/** A spine that falls from `from` to the tip in an arc of `radius`: (run^2 + drop^2) / (2 drop). */
const falling = (from: number, radius: number): Blade => {
  const [length, run] = [180, 180 - from];
  const tipDrop = radius - Math.sqrt(radius ** 2 - run ** 2);
  const [bellyStart, heelHeight, bellyHeight] = [150, 50, 50];
  const outline = { kind: 'dimensions', length, heelHeight, bellyStart, bellyHeight } as const;
  return { ...blade, outline: { ...outline, spineDropStart: from, tipDrop, spineSagitta: 0 } };
};

describe('where a spine ends in a corner', () => {
  it('is where an arc begins that is tighter than 25 mm, within a step along the blade', () => {
    for (const radius of [12, 18, 24]) {
      const corner = cornerOf(shapeOf(falling(180 - radius / 2, radius))) ?? NaN;
      expect(Math.abs(corner - (180 - radius / 2))).toBeLessThanOrEqual(180 / 72);
    }
  });

  it('is nowhere on a spine that falls in wider arcs, down to 26 mm', () => {
    for (const radius of [26, 40, 130])
      expect(cornerOf(shapeOf(falling(180 - Math.min(20, radius / 2), radius)))).toBeUndefined();
  });
});
