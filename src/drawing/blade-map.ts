import type { Vec2 } from '../geometry/vector.ts';
import { hatch } from './hatch.ts';
import { fill, frameItem, fillBox, label, line, polyline, TEXT } from './items.ts';
import type { Item, Stroke } from './sheet.ts';
import { textWidth } from './text-width.ts';

/** A map of a blade: its outline, regions between levels in order, and lines; mm, y up. */
export interface MappedBlade {
  readonly outline: readonly Vec2[];
  readonly bands: readonly {
    readonly from: number;
    readonly to: number;
    readonly loops: readonly (readonly Vec2[])[];
  }[];
  readonly lines: readonly {
    readonly role: 'ground' | 'wanted';
    readonly points: readonly Vec2[];
  }[];
}

export interface MapWords {
  readonly title: string;
  /** What the levels of a band say, by its limits. */
  readonly band: (from: number, to: number) => string;
  readonly line: { readonly ground: string; readonly wanted: string };
}

/** Patterns in order: they tell the bands apart without any colour. */
const PATTERNS: readonly ((ring: readonly Vec2[]) => Item[])[] = [
  (ring) => hatch([ring]),
  (ring) => [...hatch([ring]), ...hatch([ring], { leaning: 'left' })],
  (ring) => [fill(ring, 'tint')],
  (ring) => [fill(ring, 'tint'), ...hatch([ring], { leaning: 'left' })],
  (ring) => [fill(ring, 'tint'), ...hatch([ring]), ...hatch([ring], { leaning: 'left' })],
  (ring) => hatch([ring], { leaning: 'left' }),
  (ring) => [fill(ring, 'ink')],
];

const STROKES: Readonly<Record<'ground' | 'wanted', Stroke>> = {
  ground: 'visible',
  wanted: 'centre',
};

const SWATCH = { width: 10, height: 5, gap: 2, row: 8, column: 8 } as const;

/** A row of swatches with their words, as many beside one another as there is room for. */
const legend = (
  entries: readonly { readonly text: string; readonly draw: (at: Vec2) => Item[] }[],
  width: number,
): Item[] => {
  const widest = Math.max(...entries.map(({ text }) => textWidth(text, TEXT.small)));
  const column = SWATCH.width + SWATCH.gap + widest + SWATCH.column;
  const across = Math.max(1, Math.floor((width + SWATCH.column) / column));
  return entries.flatMap(({ text, draw }, i) => {
    const at: Vec2 = [(i % across) * column, -(Math.floor(i / across) + 1) * SWATCH.row];
    const beside: Vec2 = [at[0] + SWATCH.width + SWATCH.gap, at[1] + 1.2];
    return [...draw(at), label(beside, text, { height: TEXT.small })];
  });
};

/**
 * A blade's map on the paper, `width` mm wide, its lower left corner's legend below: every band with
 * a pattern of its own, grind lines drawn through, wanted lines as centre lines.
 */
export const mapItems = (
  { outline, bands, lines }: MappedBlade,
  words: MapWords,
  width: number,
): Item[] => {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const [left, bottom] = [Math.min(...xs), Math.min(...ys)];
  const k = width / (Math.max(...xs) - left);
  const put = (points: readonly Vec2[]): Vec2[] =>
    points.map(([x, y]): Vec2 => [(x - left) * k, (y - bottom) * k]);
  const used = bands.filter(({ loops }) => loops.length > 0);
  // The band that holds nothing, 0, stays white: what is as it should be needs no ink.
  const pattern = (i: number): ((ring: readonly Vec2[]) => Item[]) => {
    const [from, to] = [used[i]?.from ?? 0, used[i]?.to ?? 0];
    const whole = (from < 0 && to > 0) || from === 0;
    return whole ? () => [] : (PATTERNS[i % PATTERNS.length] ?? (() => []));
  };
  const ring = put(outline);
  const top = (Math.max(...ys) - bottom) * k;
  const swatch =
    (i: number) =>
    ([x, y]: Vec2): Item[] => {
      const box = { x0: x, y0: y, x1: x + SWATCH.width, y1: y + SWATCH.height };
      const corners: Vec2[] = [
        [box.x0, box.y0],
        [box.x1, box.y0],
        [box.x1, box.y1],
        [box.x0, box.y1],
      ];
      return [fillBox(box, 'paper'), ...pattern(i)(corners), frameItem(box, 'table')];
    };
  const dash =
    (stroke: Stroke) =>
    ([x, y]: Vec2): Item[] => [
      line([x, y + SWATCH.height / 2], [x + SWATCH.width, y + SWATCH.height / 2], stroke),
    ];
  return [
    ...used.flatMap(({ loops }, i) => loops.flatMap((loop) => pattern(i)(put(loop)))),
    ...lines.map(({ role, points }) => polyline(put(points), STROKES[role])),
    polyline([...ring, ring[0] ?? [0, 0]], 'visible'),
    label([0, top + 3], words.title, { height: TEXT.normal, bold: true }),
    ...legend(
      [
        ...used.map(({ from, to }, i) => ({ text: words.band(from, to), draw: swatch(i) })),
        ...(['ground', 'wanted'] as const)
          .filter((role) => lines.some((l) => l.role === role))
          .map((role) => ({ text: words.line[role], draw: dash(STROKES[role]) })),
      ],
      width,
    ),
  ];
};
