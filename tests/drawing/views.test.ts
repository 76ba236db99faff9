import { describe, expect, it } from 'vitest';
import { elevation, turnedLeft } from '../../src/drawing/elevation.ts';
import { planItems } from '../../src/drawing/plan.ts';
import type { Item } from '../../src/drawing/sheet.ts';
import { circle, polygon, rectangle } from '../../src/geometry/loop.ts';
import type { Segment } from '../../src/geometry/segment.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import type { Layer } from '../../src/model/part.ts';
import { base, nose } from './parts.ts';

const key = ({ a, b }: Pick<Segment, 'a' | 'b'>): string =>
  [a, b]
    .map((p) => p.map((v) => (v + 0).toFixed(2)).join(','))
    .sort()
    .join(' ');

const keys = (edges: readonly Segment[]): string[] => edges.map(key).sort();
const lines = (...pairs: readonly [Vec2, Vec2][]): string[] =>
  pairs.map(([a, b]) => key({ a, b })).sort();

/** Lengths on which a hidden edge runs along a visible one, by sampling both. */
const coinciding = (hidden: readonly Segment[], visible: readonly Segment[]): number =>
  hidden.filter((h) =>
    [0.1, 0.3, 0.5, 0.7, 0.9].some((t) => {
      const p: Vec2 = [h.a[0] + (h.b[0] - h.a[0]) * t, h.a[1] + (h.b[1] - h.a[1]) * t];
      return visible.some(({ a, b }) => {
        const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
        const off =
          Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length;
        const along = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length;
        return off < 1e-6 && along > 0 && along < length;
      });
    }),
  ).length;

describe('elevation', () => {
  it('of a plate is its rectangle with the sides of its holes hidden', () => {
    const { visible, hidden } = elevation(base.layers);
    expect(keys(visible)).toEqual(
      lines(
        [
          [0, 0],
          [120, 0],
        ],
        [
          [0, 6],
          [120, 6],
        ],
        [
          [0, 0],
          [0, 6],
        ],
        [
          [120, 0],
          [120, 6],
        ],
      ),
    );
    expect(keys(hidden)).toEqual(
      lines(
        [
          [12.5, 0],
          [12.5, 6],
        ],
        [
          [17.5, 0],
          [17.5, 6],
        ],
        [
          [102.5, 0],
          [102.5, 6],
        ],
        [
          [107.5, 0],
          [107.5, 6],
        ],
      ),
    );
  });

  it('shows no edge where two layers are flush, and the floor of a counterbore hidden', () => {
    const { visible, hidden } = elevation(nose.layers);
    expect(keys(visible)).toEqual(
      lines(
        [
          [0, 0],
          [90, 0],
        ],
        [
          [0, 0],
          [0, 12],
        ],
        [
          [90, 0],
          [90, 12],
        ],
        [
          [0, 12],
          [90, 12],
        ],
        [
          [10, 12],
          [10, 20],
        ],
        [
          [80, 12],
          [80, 20],
        ],
        [
          [10, 20],
          [80, 20],
        ],
      ),
    );
    expect(keys(hidden)).toEqual(
      lines(
        [
          [11.7, 0],
          [11.7, 6],
        ],
        [
          [18.3, 0],
          [18.3, 6],
        ],
        [
          [9.5, 6],
          [9.5, 12],
        ],
        [
          [20.5, 6],
          [20.5, 12],
        ],
        [
          [9.5, 6],
          [20.5, 6],
        ],
      ),
    );
  });

  it('from the left has the front at its right', () => {
    const { visible } = elevation(turnedLeft(nose.layers));
    // The rib stands at y 25 to 35 of 40: across it runs from -35 to -25.
    expect(keys(visible)).toContain(key({ a: [-35, 12], b: [-35, 20] }));
    expect(keys(visible)).toContain(key({ a: [-25, 12], b: [-25, 20] }));
    expect(keys(visible)).toContain(key({ a: [-40, 0], b: [0, 0] }));
  });

  it('hides edges behind material and keeps those in front', () => {
    const layer = (points: readonly Vec2[]): Layer => ({
      profile: { outer: polygon(points), holes: [] },
      from: 0,
      to: 10,
    });
    // A step at the back: its corner at x = 30 is hidden from the front.
    const back = layer([
      [0, 0],
      [60, 0],
      [60, 20],
      [30, 20],
      [30, 40],
      [0, 40],
    ]);
    const seen = elevation([back]);
    expect(keys(seen.hidden)).toEqual(
      lines([
        [30, 0],
        [30, 10],
      ]),
    );
    // The same step turned to the front is seen.
    const front = layer([
      [0, 0],
      [30, 0],
      [30, 20],
      [60, 20],
      [60, 40],
      [0, 40],
    ]);
    expect(keys(elevation([front]).visible)).toContain(key({ a: [30, 0], b: [30, 10] }));
    expect(elevation([front]).hidden).toEqual([]);
  });

  it('shows a cylinder as a rectangle, without lines at its facets', () => {
    const { visible, hidden } = elevation([
      { profile: { outer: circle([20, 20], 20), holes: [] }, from: 0, to: 5 },
    ]);
    expect(keys(visible)).toEqual(
      lines(
        [
          [0, 0],
          [40, 0],
        ],
        [
          [0, 5],
          [40, 5],
        ],
        [
          [0, 0],
          [0, 5],
        ],
        [
          [40, 0],
          [40, 5],
        ],
      ),
    );
    expect(hidden).toEqual([]);
  });

  it('never draws a hidden line along a visible one', () => {
    for (const layers of [base.layers, nose.layers, turnedLeft(nose.layers)]) {
      const { visible, hidden } = elevation(layers);
      expect(coinciding(hidden, visible)).toBe(0);
    }
  });
});

describe('plan', () => {
  const straight = (items: readonly Item[], stroke: string): string[] =>
    items.flatMap((i) => (i.kind === 'line' && i.stroke === stroke ? [key(i)] : [])).sort();

  it('shows outlines and holes whole where nothing lies over them', () => {
    const items = planItems(nose.layers, 1);
    const circles = items.flatMap((i) => (i.kind === 'circle' ? [[i.radius, i.stroke]] : []));
    // The narrow hole is seen at the bottom of the counterbore.
    expect(circles).toEqual(
      expect.arrayContaining([
        [3.3, 'visible'],
        [5.5, 'visible'],
      ]),
    );
    expect(circles).toHaveLength(2);
    expect(straight(items, 'hidden')).toEqual([]);
    expect(straight(items, 'visible')).toHaveLength(8);
  });

  it('cuts lower edges where they pass under material', () => {
    const layers: Layer[] = [
      { profile: { outer: rectangle([0, 0], [100, 20]), holes: [] }, from: 0, to: 5 },
      { profile: { outer: rectangle([40, -10], [60, 30]), holes: [] }, from: 5, to: 10 },
    ];
    const items = planItems(layers, 1);
    expect(straight(items, 'hidden')).toEqual(
      lines(
        [
          [40, 0],
          [60, 0],
        ],
        [
          [40, 20],
          [60, 20],
        ],
      ),
    );
    expect(straight(items, 'visible')).toEqual(
      expect.arrayContaining(
        lines(
          [
            [0, 0],
            [40, 0],
          ],
          [
            [60, 0],
            [100, 0],
          ],
          [
            [0, 20],
            [40, 20],
          ],
          [
            [60, 20],
            [100, 20],
          ],
        ),
      ),
    );
  });

  it('draws an edge that two layers share once, and visible', () => {
    const layers: Layer[] = [
      { profile: { outer: rectangle([0, 0], [50, 20]), holes: [] }, from: 0, to: 5 },
      { profile: { outer: rectangle([0, 0], [30, 20]), holes: [] }, from: 5, to: 10 },
    ];
    const items = planItems(layers, 1);
    expect(straight(items, 'hidden')).toEqual([]);
    expect(straight(items, 'visible')).toEqual(
      lines(
        [
          [0, 0],
          [30, 0],
        ],
        [
          [30, 0],
          [30, 20],
        ],
        [
          [0, 20],
          [30, 20],
        ],
        [
          [0, 0],
          [0, 20],
        ],
        [
          [30, 0],
          [50, 0],
        ],
        [
          [50, 0],
          [50, 20],
        ],
        [
          [30, 20],
          [50, 20],
        ],
      ),
    );
  });
});
