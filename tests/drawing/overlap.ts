import type { Item, Sheet } from '../../src/drawing/sheet.ts';
import { textWidth } from '../../src/drawing/text-width.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';

/**
 * Finds text that touches a line or another text, with no code of the drawing modules but the
 * font's widths. Stricter than asked for: ALL lines count, the dimension's own among them.
 */

interface Ink {
  readonly text: string;
  readonly points: readonly Vec2[];
}

type TextItem = Extract<Item, { kind: 'text' }>;

/** The rectangle of a text's ink: capitals from the base line, descenders of the letters that have one. */
const ink = (item: TextItem): Ink => {
  const w = textWidth(item.text, item.height, item.bold);
  const x = { left: 0, centre: -w / 2, right: -w }[item.align];
  const y = /[gjpqy,;()Q]/.test(item.text) ? -0.3 * item.height : 0;
  const turn = (item.angle * Math.PI) / 180;
  const rotate = ([p, q]: Vec2): Vec2 => [
    item.at[0] + p * Math.cos(turn) - q * Math.sin(turn),
    item.at[1] + p * Math.sin(turn) + q * Math.cos(turn),
  ];
  const corners: Vec2[] = [
    [x, y],
    [x + w, y],
    [x + w, item.height],
    [x, item.height],
  ];
  return { text: item.text, points: corners.map(rotate) };
};

const strokes = (item: Item): Vec2[] => {
  switch (item.kind) {
    case 'line':
      return [item.a, item.b];
    case 'polyline':
      return [...item.points];
    case 'circle':
    case 'arc': {
      const from = item.kind === 'arc' ? item.from : 0;
      const sweep = item.kind === 'arc' ? (((item.to - from) % 360) + 360) % 360 : 360;
      return Array.from({ length: 49 }, (_, i) => {
        const angle = ((from + (sweep * i) / 48) * Math.PI) / 180;
        return [
          item.centre[0] + item.radius * Math.cos(angle),
          item.centre[1] + item.radius * Math.sin(angle),
        ] as const;
      });
    }
    case 'fill':
      return item.tone === 'ink' ? [...item.points, ...item.points.slice(0, 1)] : [];
    case 'blocks':
      return item.boxes.flatMap(({ x0, y0, x1, y1 }): Vec2[] => [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ]);
    case 'text':
      return [];
  }
};

/** Separating axes of two convex shapes (a stretch is one of two points). */
const apart = (one: readonly Vec2[], other: readonly Vec2[]): boolean =>
  [one, other].some((shape) =>
    shape.some((p, i) => {
      const q = shape[(i + 1) % shape.length] ?? p;
      for (const axis of [
        [q[1] - p[1], p[0] - q[0]],
        [q[0] - p[0], q[1] - p[1]],
      ] as const) {
        const along = (points: readonly Vec2[]): number[] =>
          points.map((r) => r[0] * axis[0] + r[1] * axis[1]);
        const [a, b] = [along(one), along(other)];
        const length = Math.hypot(...axis);
        if (length === 0) continue;
        if (Math.max(...a) <= Math.min(...b) || Math.max(...b) <= Math.min(...a)) return true;
      }
      return false;
    }),
  );

/** A shape with the box around it: most pairs are apart already by their boxes. */
interface Boxed {
  readonly points: readonly Vec2[];
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

const boxed = (points: readonly Vec2[]): Boxed => {
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  return {
    points,
    x0: Math.min(...xs),
    x1: Math.max(...xs),
    y0: Math.min(...ys),
    y1: Math.max(...ys),
  };
};

const touch = (a: Boxed, b: Boxed): boolean =>
  !(a.x1 < b.x0 || b.x1 < a.x0 || a.y1 < b.y0 || b.y1 < a.y0) && !apart(a.points, b.points);

/** Every clash on a sheet, in words. */
export const clashes = (sheet: Sheet): string[] => {
  const texts = sheet.items.flatMap((item) => {
    if (item.kind !== 'text') return [];
    const { text, points } = ink(item);
    return [{ text, shape: boxed(points) }];
  });
  const lines = sheet.items.flatMap((item) => {
    const points = strokes(item);
    return points.slice(1).map((p, i) => boxed([points[i] ?? p, p]));
  });
  return texts.flatMap(({ text, shape }, i) => [
    ...texts
      .slice(i + 1)
      .filter((other) => touch(shape, other.shape))
      .map((other) => `"${text}" touches "${other.text}"`),
    ...lines
      .filter((stretch) => touch(shape, stretch))
      .map(({ points }) => `"${text}" touches a line at ${String(points[0])}`),
  ]);
};

/** Everything that leaves the trimmed sheet. */
export const outside = (sheet: Sheet): string[] =>
  sheet.items.flatMap((item) => {
    const points = item.kind === 'text' ? ink(item).points : strokes(item);
    const isIn = points.every(
      ([x, y]) => x >= 0 && y >= 0 && x <= sheet.size[0] && y <= sheet.size[1],
    );
    return isIn ? [] : [JSON.stringify(item)];
  });
