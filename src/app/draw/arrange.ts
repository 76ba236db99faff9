import type { Vec2 } from '../../geometry/vector.ts';
import type { Display } from '../entry/unit.ts';
import type { Measure, Picture } from './picture.ts';
import { measureText, rowCount, rowsOf, type Row } from './rows.ts';

/** Distance between rows of dimensions, px: what a thumb needs. */
export const PITCH = 44;
/** Room around drawing and dimensions, px. */
const MARGIN = 10;
/** From the drawing to the first row, px. */
const STAND = 4;
/** Rounds in which scale and rows, which depend on each other, settle. */
const ROUNDS = 6;

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
  readonly arrows: Row['arrows'];
}

/** A drawing fitted to a width: px = (x, y) of `place`, y down. */
export interface Arranged {
  readonly width: number;
  readonly height: number;
  /** Pixels a millimetre, the same in both directions. */
  readonly scale: number;
  /** Left edge of the drawn thing, px and mm. */
  readonly left: { readonly px: number; readonly mm: number };
  readonly place: (point: Vec2) => Vec2;
  /** The point in mm at a place in px. */
  readonly placeBack: (at: Vec2) => Vec2;
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

interface Rows {
  readonly left: readonly Row[];
  readonly right: readonly Row[];
  readonly above: readonly Row[];
  readonly below: readonly Row[];
}

/** Rows on all four sides at a scale; px along them count from the drawing's upper left corner. */
const rowsAt = (picture: Picture, extent: Extent, scale: number, display: Display): Rows => {
  const of = (along: 'x' | 'y', side: 'low' | 'high') =>
    rowsOf(
      picture.measures.filter((m) => m.along === along && m.side === side),
      display,
      along === 'x' ? (x) => (x - extent.min[0]) * scale : (y) => (extent.max[1] - y) * scale,
    );
  return {
    left: of('y', 'low'),
    right: of('y', 'high'),
    above: of('x', 'high'),
    below: of('x', 'low'),
  };
};

/** How far rows reach before the start and beyond the end of a drawing of this length, px. */
const reach = (rows: readonly Row[], size: number): readonly [number, number] => [
  Math.max(0, ...rows.map(({ low }) => -low)),
  Math.max(0, ...rows.map(({ high }) => high - size)),
];

/**
 * Room on the left and right, px, and how far the upright rows stand off the drawing: beyond the
 * level rows where both reach into a corner.
 */
const sidesOf = (rows: Rows, wide: number, high: number) => {
  const level = [...rows.above, ...rows.below];
  const [before, beyond] = reach(level, wide);
  const stand = (upright: readonly Row[], over: number): number => {
    const [up, down] = reach(upright, high);
    const meets = (up > 0 && rows.above.length > 0) || (down > 0 && rows.below.length > 0);
    return meets ? over : 0;
  };
  const standLeft = stand(rows.left, before);
  const standRight = stand(rows.right, beyond);
  return {
    standLeft,
    standRight,
    left: Math.max(standLeft + rowCount(rows.left) * PITCH, before) + MARGIN,
    right: Math.max(standRight + rowCount(rows.right) * PITCH, beyond) + MARGIN,
  };
};

/**
 * Fits a drawing with its dimensions into `width` px and at most `tall` px for the drawn thing.
 * With `like`, another view of the same thing, it takes that one's scale and left edge.
 */
export const arrange = (
  picture: Picture,
  width: number,
  tall: number,
  display: Display,
  like?: Arranged,
): Arranged => {
  const extent = extentOf(picture);
  const wide = Math.max(extent.max[0] - extent.min[0], 1e-6);
  const high = Math.max(extent.max[1] - extent.min[1], 1e-6);
  let scale = like?.scale ?? Math.min((width - 2 * MARGIN) / wide, tall / high);
  let rows = rowsAt(picture, extent, scale, display);
  let sides = sidesOf(rows, wide * scale, high * scale);
  for (let round = 0; round < ROUNDS; round += 1) {
    sides = sidesOf(rows, wide * scale, high * scale);
    if (like) break;
    scale = Math.max(1e-3, Math.min((width - sides.left - sides.right) / wide, tall / high));
    rows = rowsAt(picture, extent, scale, display);
  }
  const spare = width - sides.left - sides.right - wide * scale;
  const x0 = like
    ? like.left.px + (extent.min[0] - like.left.mm) * scale
    : sides.left + Math.max(0, spare / 2);
  const size: Vec2 = [wide * scale, high * scale];
  const [before, beyond] = reach([...rows.left, ...rows.right], size[1]);
  const y0 = MARGIN + Math.max(rowCount(rows.above) * PITCH, before);
  const place = ([x, y]: Vec2): Vec2 => [
    x0 + (x - extent.min[0]) * scale,
    y0 + (extent.max[1] - y) * scale,
  ];
  const put = (r: Row, upright: boolean, across: number): PlacedMeasure => {
    const from = place(r.measure.from);
    const to = place(r.measure.to);
    const on = (along: number): Vec2 => (upright ? [across, along] : [along, across]);
    const axis = upright ? 1 : 0;
    return {
      measure: r.measure,
      text: r.text,
      a: on(from[axis]),
      b: on(to[axis]),
      from,
      to,
      at: on(r.at + (upright ? y0 : x0)),
      length: r.length,
      arrows: r.arrows,
    };
  };
  const away = (row: number): number => (row + 0.5) * PITCH + STAND;
  const inside = picture.measures
    .filter((m) => m.along === 'at')
    .map((measure): PlacedMeasure => {
      const [a, b] = [place(measure.from), place(measure.to)];
      const at: Vec2 = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      const text = measureText(measure, display);
      return { measure, text, a, b, from: a, to: b, at, length: PITCH, arrows: 'none' };
    });
  return {
    width,
    height: y0 + size[1] + Math.max(rowCount(rows.below) * PITCH, beyond) + MARGIN,
    scale,
    left: { px: x0, mm: extent.min[0] },
    place,
    placeBack: ([px, py]) => [extent.min[0] + (px - x0) / scale, extent.max[1] - (py - y0) / scale],
    measures: [
      ...rows.above.map((r) => put(r, false, y0 - away(r.row))),
      ...rows.below.map((r) => put(r, false, y0 + size[1] + away(r.row))),
      ...rows.left.map((r) => put(r, true, x0 - sides.standLeft - away(r.row))),
      ...rows.right.map((r) => put(r, true, x0 + size[0] + sides.standRight + away(r.row))),
      ...inside,
    ],
  };
};
