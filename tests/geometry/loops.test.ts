import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anticlockwise, arcOf, bulgeOf } from '../../src/geometry/arc.ts';
import { rounded } from '../../src/geometry/fillet.ts';
import { flatten } from '../../src/geometry/flatten.ts';
import { selfCrossings } from '../../src/geometry/intersect.ts';
import { circle, path, polygon, rectangle, slot, type Loop } from '../../src/geometry/loop.ts';
import {
  boundingBox,
  insideOf,
  containsPoint,
  distanceToLoop,
  loopGap,
  perimeter,
  shortEdges,
  signedArea,
} from '../../src/geometry/loop-measure.ts';
import {
  mirrored,
  oriented,
  reversed,
  rotated,
  translated,
} from '../../src/geometry/loop-transform.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';

/** Shoelace area of a polygon: the textbook sum, written out apart from the code under test. */
const shoelace = (points: readonly Vec2[]): number =>
  points.reduce((sum, [x, y], i) => {
    const [u, v] = points[(i + 1) % points.length] ?? [0, 0];
    return sum + (x * v - u * y) / 2;
  }, 0);

/** Ray casting on a polygon, apart from the winding rule under test. */
const rayInside = (points: readonly Vec2[], [px, py]: Vec2): boolean =>
  points.reduce((inside, [x, y], i) => {
    const [u, v] = points[(i + 1) % points.length] ?? [0, 0];
    const crosses = y > py !== v > py && px < x + ((py - y) * (u - x)) / (v - y);
    return crosses ? !inside : inside;
  }, false);

const value = <T>(result: { ok: true; value: T } | { ok: false }): T => {
  if (!result.ok) throw new Error('expected a value');
  return result.value;
};

describe('arcs and bulges', () => {
  // Rows computed with the open CAD library ezdxf 0.18.1, bulge_to_arc, chord (0,0) to (10,0).
  it.each([
    [0.26794919243, [5, 8.660254], -120, -60, 10],
    [0.41421356237, [5, 5], -135, -45, 7.071068],
    [1, [5, 0], 180, 0, 5],
    [-0.41421356237, [5, -5], 45, 135, 7.071068],
  ] as const)('bulge %f agrees with ezdxf', (bulge, [cx, cy], start, end, radius) => {
    const arc = arcOf([0, 0], [10, 0], bulge);
    expect(arc.centre[0]).toBeCloseTo(cx, 6);
    expect(arc.centre[1]).toBeCloseTo(cy, 6);
    expect(arc.radius).toBeCloseTo(radius, 6);
    expect(anticlockwise(arc).start).toBeCloseTo(start, 6);
    expect(anticlockwise(arc).end).toBeCloseTo(end, 6);
  });

  // "Segments of circles for radius = 1" (handbook table layout), computed to 20 digits with
  // mpmath from A = r^2 (theta - sin theta) / 2, c = 2 r sin(theta/2), bulge = tan(theta/4).
  it.each([
    [1, 0.017453293, 0.017453071, 4.4304133e-7, 0.0043633508],
    [10, 0.17453293, 0.17431149, 0.00044237377, 0.043660943],
    [30, 0.52359878, 0.51763809, 0.011799388, 0.1316525],
    [45, 0.78539816, 0.76536686, 0.039145691, 0.19891237],
    [60, 1.0471976, 1, 0.090586074, 0.26794919],
    [75, 1.3089969, 1.2175229, 0.17153556, 0.33945426],
    [90, 1.5707963, 1.4142136, 0.28539816, 0.41421356],
    [120, 2.0943951, 1.7320508, 0.61418485, 0.57735027],
    [150, 2.6179939, 1.9318517, 1.0589969, 0.76732699],
    [180, 3.1415927, 2, 1.5707963, 1],
  ])('the %f degree segment of the unit circle', (angle, length, chord, area, bulge) => {
    expect(bulgeOf(angle)).toBeCloseTo(bulge, 7);
    const loop = path([
      { x: 0, y: 0, bulge: bulgeOf(angle) },
      { x: 2 * Math.sin((angle * Math.PI) / 360), y: 0, bulge: 0 },
    ]);
    expect(signedArea(loop)).toBeCloseTo(area, 7);
    expect(perimeter(loop)).toBeCloseTo(length + chord, 6);
  });
});

describe('measures of contours', () => {
  it('gives area and perimeter of the stadium in closed form', () => {
    const stadium = slot([0, 5], [40, 5], 10);
    expect(signedArea(stadium)).toBeCloseTo(400 + 25 * Math.PI, 9);
    expect(perimeter(stadium)).toBeCloseTo(80 + 10 * Math.PI, 9);
    expect(boundingBox(stadium).min[0]).toBeCloseTo(-5, 9);
    expect(boundingBox(stadium).max[0]).toBeCloseTo(45, 9);
  });

  it('keeps length, turns area with direction, and mirrors bulges rightly', () => {
    const d = path([
      { x: 0, y: 0, bulge: 0 },
      { x: 10, y: 0, bulge: 1 },
      { x: 10, y: 20, bulge: 0 },
      { x: 0, y: 20, bulge: -0.3 },
    ]);
    const area = signedArea(d);
    expect(signedArea(reversed(d))).toBeCloseTo(-area, 9);
    expect(signedArea(mirrored(d, 'x', 3))).toBeCloseTo(area, 9);
    expect(boundingBox(mirrored(d, 'x', 3)).min[0]).toBeCloseTo(6 - boundingBox(d).max[0], 9);
    expect(signedArea(rotated(d, 33, [7, -2]))).toBeCloseTo(area, 9);
    expect(perimeter(translated(reversed(d), [5, 6]))).toBeCloseTo(perimeter(d), 9);
    expect(signedArea(oriented(d, false))).toBeCloseTo(-area, 9);
  });

  it('tells inside from outside by exact arcs, as a fine polygon does', () => {
    const shapes: Loop[] = [
      slot([0, 0], [30, 12], 9),
      path([
        { x: 0, y: 0, bulge: -0.8 },
        { x: 20, y: 0, bulge: 0.4 },
        { x: 20, y: 20, bulge: 1.7 },
        { x: 0, y: 20, bulge: 0 },
      ]),
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...shapes, ...shapes.map(reversed)),
        fc.double({ min: -20, max: 50, noNaN: true }),
        fc.double({ min: -20, max: 50, noNaN: true }),
        (loop, x, y) => {
          // Within the chord error the polygon may differ.
          if (distanceToLoop([x, y], loop) < 0.002) return;
          expect(containsPoint(loop, [x, y])).toBe(rayInside(flatten(loop, 0.001), [x, y]));
        },
      ),
      { numRuns: 500, seed: 1 },
    );
  });

  it('tells inside where the point is level with corners and chords', () => {
    const notched = path([
      { x: 0, y: 0, bulge: -1 },
      { x: 10, y: 0, bulge: 0 },
      { x: 10, y: 20, bulge: 0 },
      { x: 0, y: 20, bulge: 0 },
    ]);
    expect(containsPoint(notched, [5, 0])).toBe(false);
    expect(containsPoint(notched, [5, 4.9])).toBe(false);
    expect(containsPoint(notched, [5, 5.1])).toBe(true);
    const bulged = path(notched.vertices.map((v, i) => ({ ...v, bulge: i === 0 ? 1 : 0 })));
    expect(containsPoint(bulged, [5, 0])).toBe(true);
    expect(containsPoint(bulged, [5, -4.9])).toBe(true);
    expect(containsPoint(bulged, [5, -5.1])).toBe(false);
    expect(
      containsPoint(
        polygon([
          [0, 0],
          [10, 10],
          [20, 0],
          [10, 20],
        ]),
        [-5, 10],
      ),
    ).toBe(false);
  });

  it('measures webs exactly', () => {
    expect(loopGap(circle([0, 0], 3), circle([10, 0], 4))).toBeCloseTo(3, 12);
    expect(loopGap(circle([0, 0], 10), circle([2, 0], 3))).toBeCloseTo(5, 12);
    expect(loopGap(slot([0, 0], [20, 0], 6), slot([0, 10], [20, 10], 6))).toBeCloseTo(4, 12);
    expect(loopGap(rectangle([0, 0], [100, 50]), circle([20, 8], 2.75))).toBeCloseTo(5.25, 12);
    expect(loopGap(rectangle([0, 0], [10, 10]), rectangle([5, 5], [20, 20]))).toBe(0);
    expect(insideOf(rectangle([0, 0], [100, 50]))(circle([20, 8], 2.75))).toBe(true);
    expect(insideOf(rectangle([0, 0], [100, 50]))(circle([20, 2.75], 2.75))).toBe(false);
  });

  it('finds a web between arbitrary contours as dense sampling does', () => {
    const angle = fc.double({ min: 0, max: 360, noNaN: true });
    const at = fc.double({ min: -4, max: 4, noNaN: true });
    fc.assert(
      fc.property(
        angle,
        angle,
        at,
        at,
        fc.double({ min: -0.9, max: 0.9, noNaN: true }),
        (a, b, x, y, bulge) => {
          const one = rotated(slot([-8, 0], [8, 0], 5), a);
          const raw = path([
            { x: -6, y: -3, bulge },
            { x: 6, y: -3, bulge: 0 },
            { x: 0, y: 4, bulge: -bulge },
          ]);
          const two = translated(rotated(raw, b), [22 + x, y]);
          const dense = flatten(two, 1e-4).flatMap((p, i, all) => {
            const q = all[(i + 1) % all.length] ?? p;
            return Array.from({ length: 40 }, (_, k): Vec2 => [
              p[0] + ((q[0] - p[0]) * k) / 40,
              p[1] + ((q[1] - p[1]) * k) / 40,
            ]);
          });
          const sampled = Math.min(...dense.map((p) => distanceToLoop(p, one)));
          const gap = loopGap(one, two);
          expect(gap).toBeLessThanOrEqual(sampled + 2e-4);
          expect(gap).toBeGreaterThanOrEqual(sampled - 0.02);
        },
      ),
      { numRuns: 60, seed: 2 },
    );
  });

  it('finds contours that cross or fold onto themselves', () => {
    expect(selfCrossings(slot([0, 0], [10, 3], 4))).toEqual([]);
    expect(selfCrossings(rectangle([0, 0], [4, 3]))).toEqual([]);
    expect(
      selfCrossings(
        polygon([
          [0, 0],
          [10, 10],
          [10, 0],
          [0, 10],
        ]),
      ),
    ).toHaveLength(1);
    expect(
      selfCrossings(
        polygon([
          [0, 0],
          [10, 0],
          [5, 0],
          [5, 5],
        ]),
      ).length,
    ).toBeGreaterThan(0);
    const lens = path([
      { x: 0, y: 0, bulge: 0.5 },
      { x: 10, y: 0, bulge: 0.5 },
    ]);
    expect(selfCrossings(lens)).toEqual([]);
    const doubled = path([
      { x: 0, y: 0, bulge: 0.5 },
      { x: 10, y: 0, bulge: -0.5 },
    ]);
    expect(selfCrossings(doubled).length).toBe(0);
    expect(signedArea(doubled)).toBeCloseTo(0, 9);
  });

  it('names edges that are too short', () => {
    const loop = polygon([
      [0, 0],
      [10, 0],
      [10, 0.05],
      [10, 10],
      [0, 10],
    ]);
    expect(shortEdges(loop, 0.1)).toEqual([1]);
    expect(shortEdges(rectangle([0, 0], [1, 1]), 0.1)).toEqual([]);
  });
});

describe('straight replacements of curves', () => {
  it('keeps within the chord error on the asked side', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 200, noNaN: true }),
        fc.double({ min: 0.002, max: 0.1, noNaN: true }),
        (radius, chord) => {
          const inner = flatten(circle([3, 4], radius), chord);
          for (const [i, p] of inner.entries()) {
            const q = inner[(i + 1) % inner.length] ?? p;
            const middle = Math.hypot((p[0] + q[0]) / 2 - 3, (p[1] + q[1]) / 2 - 4);
            expect(Math.hypot(p[0] - 3, p[1] - 4)).toBeCloseTo(radius, 9);
            expect(radius - middle).toBeLessThanOrEqual(chord + 1e-9);
          }
          const outer = flatten(circle([3, 4], radius), chord, 'circumscribed');
          for (const [i, p] of outer.entries()) {
            const q = outer[(i + 1) % outer.length] ?? p;
            const middle = Math.hypot((p[0] + q[0]) / 2 - 3, (p[1] + q[1]) / 2 - 4);
            expect(middle).toBeCloseTo(radius, 9);
            expect(Math.hypot(p[0] - 3, p[1] - 4) - radius).toBeLessThanOrEqual(chord + 1e-9);
          }
        },
      ),
      { numRuns: 50, seed: 3 },
    );
  });

  it('lies inside or round a slot as asked, by area', () => {
    const loop = slot([0, 0], [20, 5], 6.6);
    expect(shoelace(flatten(loop, 0.01))).toBeLessThan(signedArea(loop));
    expect(shoelace(flatten(loop, 0.01, 'circumscribed'))).toBeGreaterThan(signedArea(loop));
  });
});

describe('rounded corners', () => {
  it('takes (4 - pi) r^2 off a rectangle and 8 r - 2 pi r off its contour', () => {
    const loop = value(
      rounded(
        [
          [0, 0],
          [100, 0],
          [100, 50],
          [0, 50],
        ],
        6,
      ),
    );
    expect(signedArea(loop)).toBeCloseTo(5000 - (4 - Math.PI) * 36, 9);
    expect(perimeter(loop)).toBeCloseTo(300 - 48 + 12 * Math.PI, 9);
    expect(selfCrossings(loop)).toEqual([]);
  });

  it('rounds corners one by one, inner ones too, and drops edges used up', () => {
    const corners: Vec2[] = [
      [0, 0],
      [40, 0],
      [40, 40],
      [20, 40],
      [20, 20],
      [0, 20],
    ];
    const loop = value(rounded(corners, [0, 0, 0, 0, 5, 0]));
    // An inner corner gains what an outer one loses.
    expect(signedArea(loop)).toBeCloseTo(1200 + (1 - Math.PI / 4) * 25, 9);
    const round = value(
      rounded(
        [
          [0, 0],
          [20, 0],
          [20, 20],
          [0, 20],
        ],
        10,
      ),
    );
    expect(round.vertices).toHaveLength(4);
    expect(signedArea(round)).toBeCloseTo(100 * Math.PI, 9);
  });

  it('refuses radii that do not fit, naming value and room', () => {
    const result = rounded(
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
      6,
    );
    expect(result.ok).toBe(false);
    expect(result.issues[0]?.message).toContain('6 mm');
    expect(result.issues[0]?.message).toContain('12 mm');
  });
});
