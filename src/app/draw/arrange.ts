import type { Vec2 } from '../../geometry/vector.ts';
import { rounded } from '../entry/format.ts';
import type { Display } from '../entry/unit.ts';
import type { Measure, Picture } from './picture.ts';

/** Distance between rows of dimensions, px: what a thumb needs. */
export const PITCH = 44;
/** Room around drawing and dimensions, px. */
const MARGIN = 14;
const CHARACTER = 7.6;
const PADDING = 20;
const LEAST = 44;

export interface PlacedMeasure {
  readonly measure: Measure;
  readonly text: string;
  /** Ends of the dimension line, px. */
  readonly a: Vec2;
  readonly b: Vec2;
  /** Where the extension lines start, px. */
  readonly from: Vec2;
  readonly to: Vec2;
  /** Middle of the label, px, and its length along the dimension line. */
  readonly at: Vec2;
  readonly length: number;
  readonly upright: boolean;
}

/** A drawing fitted to a width: px = (x, y) of `place`, y down. */
export interface Arranged {
  readonly width: number;
  readonly height: number;
  /** Pixels a millimetre, the same in both directions. */
  readonly scale: number;
  readonly place: (point: Vec2) => Vec2;
  readonly measures: readonly PlacedMeasure[];
}

interface Extent {
  readonly min: Vec2;
  readonly max: Vec2;
}

const extentOf = (picture: Picture): Extent => {
  const points = [
    ...picture.lines.flatMap((line) => line.points),
    ...picture.discs.flatMap(({ centre: [x, y], radius: r }): Vec2[] => [
      [x - r, y - r],
      [x + r, y + r],
    ]),
    ...picture.measures.flatMap((m) => [m.from, m.to]),
  ];
  const x = points.map((p) => p[0]);
  const y = points.map((p) => p[1]);
  return { min: [Math.min(...x), Math.min(...y)], max: [Math.max(...x), Math.max(...y)] };
};

const axisOf = (m: Measure): 0 | 1 => (m.along === 'x' ? 0 : 1);

interface Row {
  readonly measure: Measure;
  readonly text: string;
  readonly length: number;
  readonly row: number;
}

/**
 * Rows for the dimensions of one side: short ones next to the drawing, each in the first row
 * where neither line nor label meets another. `scale` turns mm into px along the row.
 */
const rowsOf = (
  measures: readonly Measure[],
  scale: number,
  display: Display,
  flip: boolean,
): Row[] => {
  const spans = measures.map((measure) => {
    const axis = axisOf(measure);
    const sign = flip ? -scale : scale;
    const ends = [measure.from[axis] * sign, measure.to[axis] * sign] as const;
    const text = rounded(measure.value, measure.unit, display);
    const length = Math.max(LEAST, text.length * CHARACTER + PADDING);
    const low = Math.min(...ends);
    const high = Math.max(...ends);
    const middle = (low + high) / 2;
    return {
      measure,
      text,
      length,
      span: high - low,
      low: Math.min(low, middle - length / 2),
      high: Math.max(high, middle + length / 2),
    };
  });
  const taken: { low: number; high: number }[][] = [];
  return spans
    .sort((a, b) => a.span - b.span || a.measure.key.localeCompare(b.measure.key))
    .map(({ measure, text, length, low, high }) => {
      const free = taken.findIndex((row) => row.every((o) => high <= o.low || o.high <= low));
      const row = free < 0 ? taken.length : free;
      (taken[row] ??= []).push({ low, high });
      return { measure, text, length, row };
    });
};

const count = (rows: readonly Row[]): number => Math.max(0, ...rows.map((r) => r.row + 1));

/** How far labels reach beyond the drawing along its width, px. */
const overhang = (rows: readonly Row[], extent: Extent, scale: number): number =>
  Math.max(
    0,
    ...rows.map(({ measure, length }) => {
      const middle = (measure.from[0] + measure.to[0]) / 2;
      const inside = Math.min(middle - extent.min[0], extent.max[0] - middle) * scale;
      return length / 2 - inside;
    }),
  );

/** Fits a drawing with its dimensions into `width` px and at most `tall` px for the drawing itself. */
export const arrange = (
  picture: Picture,
  width: number,
  tall: number,
  display: Display,
): Arranged => {
  const extent = extentOf(picture);
  const wide = Math.max(extent.max[0] - extent.min[0], 1e-6);
  const high = Math.max(extent.max[1] - extent.min[1], 1e-6);
  const of = (along: 'x' | 'y', side: 'low' | 'high') =>
    picture.measures.filter((m) => m.along === along && m.side === side);
  let scale = Math.min((width - 2 * MARGIN) / wide, tall / high);
  let placed = { left: [] as Row[], right: [] as Row[], above: [] as Row[], below: [] as Row[] };
  let spare = 0;
  // Rows depend on the scale and the scale on the rows: a few rounds settle it.
  for (let round = 0; round < 4; round += 1) {
    placed = {
      left: rowsOf(of('y', 'low'), scale, display, true),
      right: rowsOf(of('y', 'high'), scale, display, true),
      above: rowsOf(of('x', 'high'), scale, display, false),
      below: rowsOf(of('x', 'low'), scale, display, false),
    };
    spare = overhang([...placed.above, ...placed.below], extent, scale);
    const sides = (count(placed.left) + count(placed.right)) * PITCH + 2 * spare;
    scale = Math.max(1e-3, Math.min((width - 2 * MARGIN - sides) / wide, tall / high));
  }
  const used = wide * scale + (count(placed.left) + count(placed.right)) * PITCH;
  const x0 = (width - used) / 2 + count(placed.left) * PITCH;
  const y0 = MARGIN + count(placed.above) * PITCH;
  const upright = [...placed.left, ...placed.right];
  // A label longer than its upright dimension may reach beyond the drawing: give it room.
  const reach = Math.max(
    0,
    ...upright.map(({ measure, length }) => {
      const middle = (measure.from[1] + measure.to[1]) / 2;
      return length / 2 - Math.min(extent.max[1] - middle, middle - extent.min[1]) * scale;
    }),
  );
  const above = placed.above.length > 0 ? Math.max(0, reach - PITCH) : reach;
  const below = placed.below.length > 0 ? Math.max(0, reach - PITCH) : reach;
  const place = ([x, y]: Vec2): Vec2 => [
    x0 + (x - extent.min[0]) * scale,
    y0 + above + (extent.max[1] - y) * scale,
  ];
  const bottom = y0 + above + high * scale;
  const right = x0 + wide * scale;
  const put = (r: Row): PlacedMeasure => {
    const { measure } = r;
    const from = place(measure.from);
    const to = place(measure.to);
    const away = (r.row + 0.5) * PITCH + 4;
    const across =
      measure.along === 'x'
        ? measure.side === 'high'
          ? y0 + above - away
          : bottom + away
        : measure.side === 'high'
          ? right + away
          : x0 - away;
    const a: Vec2 = measure.along === 'x' ? [from[0], across] : [across, from[1]];
    const b: Vec2 = measure.along === 'x' ? [to[0], across] : [across, to[1]];
    return {
      measure,
      text: r.text,
      length: r.length,
      a,
      b,
      from,
      to,
      at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
      upright: measure.along === 'y',
    };
  };
  return {
    width,
    height: bottom + below + count(placed.below) * PITCH + MARGIN,
    scale,
    place,
    measures: [...placed.above, ...placed.below, ...upright].map(put),
  };
};
