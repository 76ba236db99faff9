import { cos, sin } from '../core/trigonometry.ts';
import { radians } from '../core/units.ts';
import { onCircle } from '../geometry/arc.ts';
import { boundingBox } from '../geometry/loop-measure.ts';
import type { Loop } from '../geometry/loop.ts';
import { add2, distance2, scale2, sub2, type Vec2 } from '../geometry/vector.ts';
import { shapeOf } from './hole-rows.ts';
import { line } from './items.ts';
import type { Item } from './sheet.ts';

/** Centre lines run this far beyond the contour they belong to, mm on the paper. */
export const OVER = 1.5;

const cross = (at: Vec2, half: Vec2, angle = 0): Item[] => {
  const u: Vec2 = [cos(radians(angle)), sin(radians(angle))];
  const v: Vec2 = [-u[1], u[0]];
  return [
    line(sub2(at, scale2(u, half[0])), add2(at, scale2(u, half[0])), 'centre'),
    line(sub2(at, scale2(v, half[1])), add2(at, scale2(v, half[1])), 'centre'),
  ];
};

/** Centre lines of a hole on the paper, `k` times as large: a cross, for a slot along its own axis. */
export const centreLines = (loop: Loop, k: number): Item[] => {
  if (loop.kind === 'circle') {
    const half = loop.radius * k + OVER;
    return cross(scale2(loop.centre, k), [half, half]);
  }
  const shape = shapeOf(loop);
  if (shape.kind === 'slot') {
    const [a, b] = shape.ends;
    const half = (shape.width / 2) * k + OVER;
    const middle = scale2(add2(a, b), k / 2);
    return cross(middle, [(distance2(a, b) / 2) * k + half, half], shape.angle);
  }
  const { min, max } = boundingBox(loop);
  const half: Vec2 = [((max[0] - min[0]) / 2) * k + OVER, ((max[1] - min[1]) / 2) * k + OVER];
  return cross(scale2(add2(min, max), k / 2), half);
};

/** Thread of a tapped hole seen along its axis: three quarters of a narrow circle (ISO 6410-1). */
export const threadItem = (at: Vec2, thread: string, k: number): Item[] => {
  const nominal = Number(/^M(\d+(?:\.\d+)?)/.exec(thread)?.[1] ?? 0);
  const centre = scale2(at, k);
  return nominal > 0
    ? [{ kind: 'arc', centre, radius: (nominal / 2) * k, from: -80, to: 170, stroke: 'dimension' }]
    : [];
};

/** The datum mark: a circle with two opposite quarters filled, on the corner it marks. */
export const datumMark = (at: Vec2): Item[] => {
  const radius = 1.7;
  const quarter = (from: number): Item => ({
    kind: 'fill',
    tone: 'ink',
    points: [at, ...Array.from({ length: 7 }, (_, i) => onCircle(at, radius, from + i * 15))],
  });
  return [quarter(0), quarter(180), { kind: 'circle', centre: at, radius, stroke: 'dimension' }];
};
