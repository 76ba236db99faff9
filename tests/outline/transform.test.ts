import { describe, expect, it } from 'vitest';
import { applied, transformOf } from '../../src/outline/affine.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';

// SVG 1.1, 7.6: y grows downwards, which these numbers do not know of; functions of a list are
// applied as if each stood in a group inside the one before; rotate(a cx cy) turns about (cx, cy).
describe("SVG's transform attribute", () => {
  const cases: [string, Vec2, Vec2][] = [
    ['translate(3)', [1, 2], [4, 2]],
    ['translate(3,-4)', [1, 2], [4, -2]],
    ['scale(2)', [1, 2], [2, 4]],
    ['scale(2 5)', [1, 2], [2, 10]],
    ['rotate(90)', [1, 0], [0, 1]],
    ['rotate(90 10 20)', [10, 20], [10, 20]],
    ['rotate(90, 10, 20)', [11, 20], [10, 21]],
    ['rotate(-90 10 20)', [10, 21], [11, 20]],
    ['skewX(45)', [0, 2], [2, 2]],
    ['skewY(45)', [2, 0], [2, 2]],
    ['matrix(1 2 3 4 5 6)', [1, 1], [9, 12]],
    ['translate(10) scale(2)', [1, 1], [12, 2]],
    ['scale(2) translate(10)', [1, 1], [22, 2]],
    ['translate(10 0) rotate(90) scale(2)', [1, 0], [10, 2]],
  ];

  it.each(cases)('%s takes %s to %s', (attribute, from, to) => {
    const map = transformOf(attribute);
    if (!map) throw new Error('not understood');
    applied(map, from).forEach((value, k) => {
      expect(value).toBeCloseTo(to[k] ?? NaN, 9);
    });
  });

  it.each(['perspective(3)', 'matrix(1 2 3)', 'translate(a)'])(
    '%s is not understood, rather than passed over',
    (attribute) => {
      expect(transformOf(attribute)).toBeUndefined();
    },
  );
});
