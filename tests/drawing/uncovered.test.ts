import { describe, expect, it } from 'vitest';
import { bodiesOf } from '../../src/drawing/bodies.ts';
import { circleItem, fill, fillBox, line } from '../../src/drawing/items.ts';
import { ISOMETRIC } from '../../src/drawing/eye.ts';
import { scene } from '../../src/drawing/scene.ts';
import type { Item } from '../../src/drawing/sheet.ts';
import { uncovered } from '../../src/drawing/uncovered.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { parts, placements } from './parts.ts';

const courses = (items: readonly Item[]): Vec2[][] =>
  items.flatMap((item) =>
    item.kind === 'polyline' ? [[...item.points]] : item.kind === 'line' ? [[item.a, item.b]] : [],
  );

describe('a sheet without opaque areas', () => {
  const box = { x0: 10, y0: -5, x1: 20, y1: 5 };

  it('cuts away what an area hides, and only what was drawn before it', () => {
    const before = line([0, 0], [30, 0], 'visible');
    const after = line([0, 1], [30, 1], 'visible');
    const edge = line([10, -5], [10, 5], 'visible');
    const out = uncovered([before, edge, fillBox(box, 'paper'), after]);
    expect(courses(out)).toEqual([
      [
        [0, 0],
        [10, 0],
      ],
      [
        [20, 0],
        [30, 0],
      ],
      [
        [10, -5],
        [10, 5],
      ],
      [
        [0, 1],
        [30, 1],
      ],
    ]);
    expect(out.every((item) => item.kind !== 'fill')).toBe(true);
  });

  it('keeps arrowheads, and whole what nothing hides', () => {
    const arrow = fill(
      [
        [0, 0],
        [3, 1],
        [3, -1],
      ],
      'ink',
    );
    const circle = circleItem([50, 50], 4, 'visible');
    expect(uncovered([circle, arrow, fillBox(box, 'tint')])).toEqual([circle, arrow]);
    const [half = []] = courses(
      uncovered([circleItem([20, 0], 3, 'visible'), fillBox(box, 'paper')]),
    );
    expect(half.length).toBeGreaterThan(30);
    expect(half.every(([x]) => x >= 20 - 1e-9)).toBe(true);
  });

  it('shows of an assembly what painting it shows: no line under a later face', () => {
    const view = scene(bodiesOf(parts, placements), ISOMETRIC, 1);
    const painted = view.items.flatMap((item, i) =>
      item.kind === 'fill' ? [{ i, ring: item.points }] : [],
    );
    // Samples of the painted lines, each told hidden or seen by crossing parity, off the rims.
    const inside = ([x, y]: Vec2, ring: readonly Vec2[]): boolean =>
      ring.reduce((isIn, [x0, y0], n) => {
        const [x1, y1] = ring[(n + 1) % ring.length] ?? [x0, y0];
        return y0 > y !== y1 > y && x < x0 + ((x1 - x0) * (y - y0)) / (y1 - y0) ? !isIn : isIn;
      }, false);
    const near = (p: Vec2, [a, b]: readonly [Vec2, Vec2], reach: number): boolean => {
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const t = Math.max(
        0,
        Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)),
      );
      return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy) < reach;
    };
    const sides = (points: readonly Vec2[]): (readonly [Vec2, Vec2])[] =>
      points.slice(1).map((q, n) => [points[n] ?? q, q]);
    const rims = painted.map(({ i, ring }) => ({ i, sides: sides([...ring, ring[0] ?? [0, 0]]) }));
    const left = courses(uncovered(view.items)).flatMap(sides);
    let [shown, hidden] = [0, 0];
    view.items.forEach((item, i) => {
      if (item.kind !== 'polyline') return;
      for (const [a, b] of sides(item.points)) {
        const p: Vec2 = [a[0] * 0.37 + b[0] * 0.63, a[1] * 0.37 + b[1] * 0.63];
        if (rims.some((rim) => rim.i > i && rim.sides.some((side) => near(p, side, 0.1)))) continue;
        const isHidden = painted.some((face) => face.i > i && inside(p, face.ring));
        if (isHidden) hidden++;
        else shown++;
        // A hidden place may still lie on a line of something in front of it.
        if (!isHidden) expect(left.some((side) => near(p, side, 1e-6))).toBe(true);
        else if (
          !view.items.some(
            (other, n) =>
              n > i &&
              other.kind === 'polyline' &&
              sides(other.points).some((side) => near(p, side, 0.05)),
          )
        )
          expect(left.some((side) => near(p, side, 1e-6))).toBe(false);
      }
    });
    expect(shown).toBeGreaterThan(50);
    expect(hidden).toBeGreaterThan(50);
  });
});
